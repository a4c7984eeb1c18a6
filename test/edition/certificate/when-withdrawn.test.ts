/** What a withdrawn lot was is what its last document says, whatever becomes of other lots, of sets and of its record. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { writeRevision } from '../../../src/commands/write-revision.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { carryOutPlan } from '../../../src/edition/certificate/issue-plan.ts'
import { computeEdition } from '../../../src/edition/compute.ts'
import { standingOfId } from '../../../src/edition/shape/standing.ts'
import { loadRecords } from '../../../src/records/load.ts'
import { lotText, SHARED } from '../../front-door/front-door.ts'

const [FIRST, SECOND] = ['tuff/L1', 'tuff/L2']
const CLAUSE =
  'property: residue-45um, deviation-from: { preceding: 10 }, magnitude-at-most: 5 percentage points'
const SHIPPED = 'shipments: [{ bill: B1, date: 2026-03-08, mass: 25.0 t }]'
const folders: string[] = []
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true })
})

/** Two lots, the second 6 points above the first, both issued on 5 March. */
function issued(): string {
  const folder = mkdtempSync(join(tmpdir(), 'withdrawn-'))
  folders.push(folder)
  const files = new Map([
    ...SHARED,
    [
      'criteria/alone.yaml',
      `title: Trial\nedition: "1"\nkinds: [raw-natural-pozzolan]\nclauses:\n  - { clause: c, ${CLAUSE} }\n`,
    ],
    ['sources/tuff.yaml', 'name: Trial\nproducer: hill\nkind: raw-natural-pozzolan\n'],
    ['lots/tuff/L1.yaml', lotText({ analyses: 'residue-45um: 20.0 %' }, 1)],
    ['lots/tuff/L2.yaml', lotText({ analyses: 'residue-45um: 26.0 %', more: SHIPPED }, 0)],
  ])
  for (const [path, text] of files) {
    mkdirSync(dirname(join(folder, path)), { recursive: true })
    writeFileSync(join(folder, path), text)
  }
  issue(folder, [FIRST, SECOND], '2026-03-05', false)
  return folder
}

function issue(folder: string, lots: readonly string[], on: string, withdrawn: boolean): void {
  const date = readMoment(on)
  const said = { by: 'A. Mason', function: 'manager', reason: 'mixed up', date, withdrawn }
  const plan = lots.map((lot) => ({ ...said, lot }))
  const planning = { program: 'test', saltOf: ({ lot }: { lot: string }) => `${lot}${on}` }
  for (const { request, revision } of carryOutPlan(loadRecords(folder).records, plan, date, planning))
    writeRevision(folder, request.lot, revision)
}

/** How the second lot stands, the value of its clause, and its findings on shipping. */
function second(folder: string) {
  const { records, diagnostics } = loadRecords(folder)
  expect(diagnostics.filter(({ code }) => code !== 'issued-missing')).toEqual([])
  const edition = computeEdition(records, { program: 'test' })
  const { verdicts, findings, overTime } = edition.lot(SECOND)
  return {
    standing: standingOfId(edition, SECOND)?.text,
    value: verdicts[0]?.clauses[0]?.value,
    known: overTime.failed?.text,
    shipping: findings.map(({ reason }) => reason.code).filter((code) => code.startsWith('shipped-after')),
  }
}

function edit(folder: string, path: string, from: string, to: string): void {
  const text = readFileSync(join(folder, path), 'utf8')
  expect(text).toContain(from)
  writeFileSync(join(folder, path), text.replace(from, to))
}

const WAS = {
  standing: 'Withdrawn 9 March 2026; was: does not meet',
  value: 6,
  known: '2026-03-03',
  shipping: ['shipped-after-failure'],
}

describe('a withdrawn lot', () => {
  const withdrawn = () => {
    const folder = issued()
    issue(folder, [SECOND], '2026-03-09', true)
    return folder
  }

  it.each(['2026-03-09', '2026-03-10'])('was what it was when an earlier lot is withdrawn on %s', (on) => {
    const folder = withdrawn()
    expect(second(folder)).toEqual(WAS)
    issue(folder, [FIRST], on, true)
    expect(second(folder)).toEqual(WAS)
  })

  it('was what it was though a set is altered, with the outcome of its document', () => {
    const folder = withdrawn()
    edit(folder, 'criteria/alone.yaml', 'magnitude-at-most: 5', 'magnitude-at-most: 8')
    expect(second(folder).standing).toBe(WAS.standing)
  })

  it('was what it was on the day before, where its document is lost', () => {
    const folder = withdrawn()
    issue(folder, [FIRST], '2026-03-09', true)
    rmSync(join(folder, 'issued/tuff/L2/1.json'))
    expect(second(folder)).toEqual(WAS)
  })

  it('is judged by what stands today before it is withdrawn', () => {
    const folder = issued()
    issue(folder, [FIRST], '2026-03-10', true)
    expect(second(folder)).toMatchObject({
      standing: 'Nothing can be evaluated yet',
      value: null,
      shipping: [],
    })
  })
})
