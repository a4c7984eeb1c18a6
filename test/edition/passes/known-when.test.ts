/**
 * Judging then equals judging now as of then: for generated records, what was known on a day is the same whether
 * the records end there, or go on and are asked about it.
 */
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join, resolve } from 'node:path'
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { withTexts } from '../../../src/core/measure/texts-of-times.ts'
import { judgeLot } from '../../../src/edition/passes/judge-lot.ts'
import { type SourceState, sourceStates } from '../../../src/edition/passes/source-state.ts'
import { loadRecords } from '../../../src/records/load.ts'
import type { Records } from '../../../src/records/records.ts'
import { dateText, type Day, filesOf, type GeneratedLot, generatedLots, LAST } from './generated-history.ts'

const BASE = resolve(import.meta.dirname, '../../diagnostics/base')
const CRITERION = `title: Known when
edition: trial
kinds: [raw-natural-pozzolan]
decision-rule: { guarded: 1, agreed-in: "the test" }
clauses:
  - { clause: index, property: strength-activity-index, condition: warm, age: 7 d, at-least: 66 %, set-by: { user: test } }
  - { clause: full, property: strength-activity-index, condition: warm, age: 28 d, at-least: 70 %, set-by: { user: test } }
`
const UNIFORMITY = `title: Uniform
edition: trial
kinds: [raw-natural-pozzolan]
clauses:
  - { clause: loss, property: loss-on-ignition, at-most: 6.0 %, set-by: { user: test } }
  - { clause: density, property: density, deviation-from: { preceding: 10 }, relative: yes, magnitude-at-most: 5 %, set-by: { user: test } }
  - { clause: sampling, sampling: { properties: [density, strength-activity-index], every: 1500 t, or-every: 14 d }, set-by: { user: test } }
`

function recordsOf(lots: readonly GeneratedLot[], cut: Day, shuffled = false): Records {
  const folder = join(mkdtempSync(join(tmpdir(), 'known-')), 'content')
  cpSync(BASE, folder, { recursive: true })
  rmSync(join(folder, 'lots'), { recursive: true })
  rmSync(join(folder, 'controls'), { recursive: true })
  const site = `title: Known\nunits: SI\nas-of: ${dateText(LAST + 60)}\ncriteria: [guarded, uniform]\ngrace: 3 d\n`
  const files = new Map([
    ['site.yaml', site],
    ['criteria/guarded.yaml', CRITERION],
    ['criteria/uniform.yaml', UNIFORMITY],
    ...filesOf(lots, cut, shuffled),
  ])
  for (const [path, text] of files) {
    mkdirSync(dirname(join(folder, path)), { recursive: true })
    writeFileSync(join(folder, path), text)
  }
  const { records, diagnostics } = loadRecords(folder)
  // Revisions are written without their documents: nothing is judged by them but the withdrawal.
  expect(diagnostics.filter(({ code }) => code !== 'issued-missing')).toEqual([])
  rmSync(dirname(folder), { recursive: true })
  return records
}

const END = readMoment(dateText(LAST + 60))

function statesOf(records: Records, asOf = END): SourceState {
  const state = sourceStates(records, asOf).get('tuff')
  if (state === undefined) throw new RangeError('the generated records need their source, got none')
  return state
}

/** Everything that a day knew of every lot sampled by then. */
function knownOn(records: Records, state: SourceState, day: Day): unknown[] {
  const asOf = readMoment(dateText(day))
  return state.lots.flatMap((lot, place) => {
    if (asOf.day < lot.sampled.day) return []
    const judged = judgeLot(records, state, place, asOf)
    const results = judged.results
      .map(({ working: _working, ...result }) => withTexts(result))
      .toSorted((a, b) => compare(a.key + a.tested + a.value, b.key + b.tested + b.value))
    return [
      {
        id: lot.id,
        results,
        planned: sorted(judged.planned),
        verdicts: withTexts(judged.verdicts),
        history: judged.history,
      },
    ]
  })
}

function sorted(list: readonly unknown[]): unknown[] {
  return list.map((item) => JSON.stringify(withTexts(item))).sort()
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}

const days = fc.integer({ min: 5, max: LAST })

describe('judging then', () => {
  it('equals judging now as of then, from records that go on and from records that end there', async () => {
    await fc.assert(
      fc.property(generatedLots, fc.array(days, { minLength: 2, maxLength: 4 }), (lots, asked) => {
        const whole = recordsOf(lots, LAST + 60)
        const now = statesOf(whole)
        for (const day of asked) {
          const cut = recordsOf(lots, day)
          const then = knownOn(cut, statesOf(cut, readMoment(dateText(day))), day)
          expect(knownOn(whole, statesOf(whole, readMoment(dateText(day))), day), 'as of the day').toEqual(
            then,
          )
          expect(knownOn(whole, now, day), 'asked from today').toEqual(then)
        }
      }),
      { seed: 20261126, numRuns: 60 },
    )
  })
  it('does not depend on the order of the entries', async () => {
    await fc.assert(
      fc.property(generatedLots, days, (lots, day) => {
        const [one, other] = [recordsOf(lots, LAST + 60), recordsOf(lots, LAST + 60, true)]
        expect(knownOn(other, statesOf(other), day)).toEqual(knownOn(one, statesOf(one), day))
      }),
      { seed: 20261127, numRuns: 40 },
    )
  })
})
