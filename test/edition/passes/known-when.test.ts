import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readAge } from '../../../src/core/measure/age.ts'
import { type Moment, momentOfDay } from '../../../src/core/measure/moment.ts'
import type { Result } from '../../../src/core/result/result.ts'
import { historyKey, precedingResults } from '../../../src/core/history/history.ts'
import { coverageOf } from '../../../src/core/history/sampling-coverage.ts'
import { computeEdition } from '../../../src/edition/compute.ts'
import { judgeLot } from '../../../src/edition/passes/judge-lot.ts'
import { sourceStates } from '../../../src/edition/passes/source-state.ts'
import type { Records } from '../../../src/records/records.ts'
import { forAudience } from '../../../src/edition/publishing.ts'
import { checkReport } from '../../../src/edition/writers/check-report.ts'
import { dataFiles } from '../../../src/edition/writers/outputs.ts'
import { AS_OF, content, cutAt, load, questionDay, shuffled } from './generated-content.ts'

/** Of a result what anybody reads; its working is made from the same. */
function plain({ working: _working, ...result }: Result): object {
  return result
}

/**
 * Every lot sampled by a date, judged as of it.
 * @param known date up to which the records are computed
 */
function judged(records: Records, known: Moment, date: Moment): unknown {
  const lots = [...sourceStates(records, known).values()].flatMap((state) =>
    state.lots.flatMap((lot, place) => {
      if (date.day < lot.sampled.day) return []
      const { id, results, planned, verdicts, history } = judgeLot(records, state, place, date)
      const preceding = KEYS.map((key) => precedingResults(state.history, key, id, date, 10))
      const coverage = (['SO3', 'oxide-sum', 'strength-activity-index'] as const).map((property) =>
        coverageOf(state.history, id, date, { property }),
      )
      return [{ id, results: results.map(plain), planned, verdicts, history, preceding, coverage }]
    }),
  )
  return JSON.parse(JSON.stringify(lots))
}

/** Series that later lots are held against. */
const KEYS = [
  historyKey('N', 'SO3'),
  historyKey('N', 'oxide-sum'),
  historyKey('N', 'strength-activity-index', 'warm', readAge('2 d')),
  historyKey('N', 'strength-activity-index', 'warm', readAge('7 d')),
  historyKey('N', 'water-requirement', 'warm'),
]

/** Outcomes and values, without what is told of them in the order of the record. */
function outcomes(records: Records, date: Moment): unknown {
  const lots = [...sourceStates(records, date).values()].flatMap((state) =>
    state.lots.map((lot, place) => {
      const { id, results, verdicts, history } = judgeLot(records, state, place, date)
      const values = results.map(({ key, value, valid, tested }) => `${key} ${value} ${valid} ${tested}`)
      const clauses = verdicts.flatMap((verdict) =>
        verdict.clauses.map(({ id: clause, outcome, value }) => ({ clause, outcome, value })),
      )
      const preceding = KEYS.map((key) => precedingResults(state.history, key, id, date, 10))
      return { id, sampled: lot.sampled, values: values.sort(), clauses, history, preceding }
    }),
  )
  return JSON.parse(JSON.stringify(lots.sort((a, b) => (a.id < b.id ? -1 : 1))))
}

function recordsOf(...[whole, asOf]: Parameters<typeof load>): Records {
  const { records, diagnostics } = load(whole, asOf)
  // Revisions are written without their documents: nothing is judged by them but the withdrawal.
  expect(diagnostics.filter(({ code }) => code !== 'issued-missing')).toEqual([])
  return records
}

/** Every data file for either audience by path, and the check report. */
function written(records: Records, asOf: Moment): Record<string, string> {
  const edition = computeEdition(records, { program: 'test', asOf })
  const files = (['internal', 'public'] as const).flatMap((audience) =>
    [...dataFiles(forAudience(edition, audience))].map(({ path, pieces }) => [
      `${audience} ${path}`,
      [...(pieces() ?? [])].join(''),
    ]),
  )
  return { ...Object.fromEntries(files), check: [...checkReport(edition, [])].join('') }
}

/** Fixed, so that every run asks the same. */
const RUNS = { seed: 20_260_410, numRuns: 100 }

describe('a question about the past', () => {
  it('is answered from the records of today as from the records of that day', () => {
    fc.assert(
      fc.property(content, questionDay, (whole, date) => {
        const records = recordsOf(whole, AS_OF)
        const then = judged(recordsOf(cutAt(whole, date), AS_OF), date, date)
        expect(judged(records, date, date)).toEqual(then)
        expect(judged(records, AS_OF, date)).toEqual(then)
      }),
      RUNS,
    )
  })

  it('has one answer, whatever the order of the entries', () => {
    fc.assert(
      fc.property(content, questionDay, fc.nat(), (whole, date, seed) => {
        expect(outcomes(recordsOf(shuffled(whole, seed), AS_OF), date)).toEqual(
          outcomes(recordsOf(whole, AS_OF), date),
        )
      }),
      RUNS,
    )
  })

  it('is answered by an edition as of that day in the same way', () => {
    fc.assert(
      fc.property(content, questionDay, (whole, date) => {
        const records = recordsOf(whole, AS_OF)
        const edition = computeEdition(records, { program: 'test', asOf: date })
        const states = sourceStates(records, AS_OF)
        for (const state of states.values())
          state.lots.forEach((lot, place) => {
            const { withdrawn } = lot
            // A withdrawn lot, here without a document, is what it was on the day before.
            const on =
              withdrawn === undefined || date.day < withdrawn.day ? date : momentOfDay(withdrawn.day - 1)
            if (date.day < lot.sampled.day) expect(edition.lots.has(lot.id)).toBe(false)
            else expect(edition.lot(lot.id).verdicts).toEqual(judgeLot(records, state, place, on).verdicts)
          })
      }),
      { ...RUNS, numRuns: 30 },
    )
  })

  it('is written by an edition as of that day, byte by byte, as from the records of that day', () => {
    fc.assert(
      fc.property(content, questionDay, (whole, date) => {
        const records = recordsOf(whole, AS_OF)
        expect(written(records, date)).toEqual(written(recordsOf(cutAt(whole, date), AS_OF), date))
      }),
      { ...RUNS, numRuns: 30 },
    )
  })
})
