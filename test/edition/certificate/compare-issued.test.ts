import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Verdict } from '../../../src/core/criteria/verdict.ts'
import type { KnownRecord } from '../../../src/edition/passes/known-record.ts'
import type { IssuedDocument } from '../../../src/edition/shape/document.ts'
import {
  differences,
  isSame,
  issueFindings,
  recordDifferences,
} from '../../../src/edition/certificate/compare-issued.ts'

describe('differences', () => {
  it('names each leaf that differs, on either side', () => {
    expect(
      differences({ a: { b: '1', c: ['x', 'y'] }, d: 1 }, { a: { b: '2', c: ['x'] }, d: 1, e: null }),
    ).toEqual([
      { path: ['a', 'b'], issued: '1', today: '2' },
      { path: ['a', 'c', '1'], issued: 'y', today: null },
      { path: ['e'], issued: null, today: 'null' },
    ])
  })
  it('says in words what was not there at all', () => {
    const strength = [{ age: '28 d', specimens: { a: '90 kN', b: '91 kN' } }]
    expect(differences({}, { strength })).toEqual([
      { path: ['strength'], issued: null, today: '(age 28 d, specimens (a 90 kN, b 91 kN))' },
    ])
    expect(differences({ strength: [] }, { strength })[0]?.today).toBe(
      'age 28 d, specimens (a 90 kN, b 91 kN)',
    )
  })
  it('finds none between equal trees', () => {
    expect(differences({ a: [1, { b: 2 }] }, { a: [1, { b: 2 }] })).toEqual([])
  })
})

describe('isSame', () => {
  const leaf = fc.constantFrom<unknown>('1', 1, 0, -0, null, undefined)
  const { tree } = fc.letrec<{ tree: unknown }>((tie) => ({
    tree: fc.oneof(
      { depthSize: 'small' },
      leaf,
      fc.array(tie('tree'), { maxLength: 2 }),
      fc.dictionary(fc.constantFrom('a', 'b', '__proto__'), tie('tree'), {
        maxKeys: 2,
        noNullPrototype: true,
      }),
    ),
  }))

  it('is true exactly where there are no differences', () => {
    let same = 0
    fc.assert(
      fc.property(tree, tree, (issued, today) => {
        expect(isSame(issued, issued)).toBe(true)
        expect(isSame(issued, today)).toBe(differences(issued, today).length === 0)
        if (isSame(issued, today)) same += 1
      }),
      { numRuns: 3000, seed: 7 },
    )
    expect(same).toBeGreaterThan(100)
  })
})

const SAMPLE = { id: 'C', kind: 'composite', taken: { from: '2026-03-01', to: '2026-03-05' } }
const TESTED = { age: '7 d', tested: '2026-03-15', specimens: { a: '90 kN', b: '17280 lbf' } }

/** @param strength readings of its one mortar @param more other members of the lot */
function record(strength: readonly object[], more: object = {}): KnownRecord {
  return { lot: { samples: [SAMPLE], tests: [{ sample: 'C', strength }], ...more }, controls: {} }
}

/** How many places are found changed after an issue on 10 April. */
function found(issued: KnownRecord, today: KnownRecord): number {
  const { tests, ...rest } = issued.lot
  const document = {
    certificate: 'tuff/A',
    revision: 1,
    issued: '2026-04-10',
    lot: { record: rest },
    controls: issued.controls,
    data: { others: [], tests },
  }
  const [finding] = issueFindings(document as unknown as IssuedDocument, today, [], () => [])
  return finding?.reason.code === 'changed-after-issue' ? finding.reason.params.places : 0
}

it('issueFindings names a lot’s samples that the document lacks', () => {
  const today = record([TESTED])
  const { samples: _samples, ...lot } = today.lot
  expect(found({ ...today, lot }, today)).toBe(1)
})

it('issueFindings takes a day that is none, in an altered document, for a change like any other', () => {
  const today = record([TESTED])
  const samples = [{ ...SAMPLE, taken: { from: '2026-03-01', to: '2026000-03-05' } }]
  expect(found({ ...today, lot: { ...today.lot, samples } }, today)).toBe(1)
})

describe('records that differ in notation only', () => {
  it('are equal where a value with nothing beside it is written in full', () => {
    const full = { ...TESTED, specimens: { a: { load: '90 kN' }, b: { load: '17280 lbf' } } }
    expect(recordDifferences(record([TESTED]), record([full]))).toEqual([])
    const values = (SO3: unknown) => record([], { analyses: [{ results: { SO3 } }] })
    expect(recordDifferences(values({ value: '2.1 %' }), values('2.1 %'))).toEqual([])
  })
  it('differ where something is said of the value', () => {
    const noted = { ...TESTED, specimens: { a: '90 kN', b: { load: '17280 lbf', note: 'wet' } } }
    expect(recordDifferences(record([TESTED]), record([noted]))).toHaveLength(1)
  })
  it('are equal where a list has no entries', () => {
    expect(recordDifferences(record([TESTED], { analyses: [] }), record([TESTED]))).toEqual([])
  })
})

describe('a record of today beside an issued one', () => {
  const planned = { age: '28 d' }
  it('is unchanged by a test that was not yet known then', () => {
    expect(found(record([TESTED]), record([TESTED, { age: '7 d' }]))).toBe(0)
    expect(found(record([TESTED]), record([TESTED, planned]))).toBe(0)
    expect(found(record([TESTED, { age: '7 d' }]), record([TESTED]))).toBe(0)
    expect(found(record([planned, planned]), record([planned]))).toBe(0)
  })
  it('is unchanged where what was planned is planned', () => {
    expect(found(record([TESTED, planned]), record([TESTED, planned]))).toBe(0)
  })
  it('is changed where what was planned is gone, or what was tested is another', () => {
    expect(found(record([TESTED, planned]), record([TESTED]))).toBe(1)
    expect(found(record([TESTED]), record([{ ...TESTED, tested: '2026-03-16' }]))).toBe(1)
  })
  it('is unchanged by an agency’s sample, entered after issue or before, and changed by one of the producer’s', () => {
    const samples = (...more: readonly object[]) => record([TESTED], { samples: [SAMPLE, ...more] })
    const split = { id: 'V', kind: 'split', of: 'C', on: '2026-03-05' }
    expect(found(samples(), samples(split))).toBe(0)
    expect(found(samples(split), samples())).toBe(0)
    expect(found(samples(), samples({ id: 'D', kind: 'grab', on: '2026-03-05' }))).toBe(1)
    expect(found(samples(), samples({ ...split, duty: 'composite' }))).toBe(1)
    // As earlier programs issued documents: with what the record lists of an agency among the producer's.
    const analyses = [{ sample: 'V', laboratory: 'county', tested: '2026-03-09', results: { SO3: '1.0 %' } }]
    const issued = record([TESTED], { samples: [SAMPLE, split], analyses })
    expect(found(issued, samples(split))).toBe(0)
  })
  it('is unchanged by samples that the document names before they were taken or received', () => {
    const later = { id: 'V', kind: 'independent', on: '2026-04-12' }
    const samples = [{ ...SAMPLE, received: '2026-04-11' }, later]
    expect(found(record([TESTED], { samples }), record([TESTED]))).toBe(0)
    const received = (date: string) => record([TESTED], { samples: [{ ...SAMPLE, received: date }] })
    expect(found(received('2026-03-07'), received('2026-03-08'))).toBe(1)
  })
})

describe('a verdict of today beside an issued one', () => {
  /** One clause fails as issued; the other awaits a result, which is overdue today. */
  const clauses = (fineness: string, activity: string) => [
    { id: 'fineness', outcome: fineness },
    { id: 'activity', outcome: activity },
  ]
  const verdict = (outcome: string, ...own: Parameters<typeof clauses>) => ({
    criterion: 'c618',
    outcome,
    decidedBy: own.flatMap((one, place) => (one === outcome ? [['fineness', 'activity'][place]] : [])),
    clauses: clauses(...own),
  })
  const document = (of: object) =>
    ({
      certificate: 'tuff/A',
      revision: 0,
      issued: '2026-11-28',
      lot: { record: { samples: [] } },
      controls: {},
      data: { verdict: of, others: [] },
    }) as unknown as IssuedDocument
  const changes = (issued: object, today: object, then: object) => {
    const known: KnownRecord = { lot: { samples: [] }, controls: {} }
    const [finding] = issueFindings(document(issued), known, [today as Verdict], () => [then as Verdict])
    return finding?.reason.code === 'would-now-be-judged-otherwise' ? finding.reason.params.changes : null
  }

  it('is told as it is today, not as it would have been on the day of the document', () => {
    const issued = verdict('does-not-meet', 'does-not-meet', 'pending')
    const today = verdict('does-not-meet', 'meets', 'does-not-meet')
    const then = verdict('pending', 'meets', 'pending')
    expect(changes(issued, today, then)).toEqual([
      { criterion: 'c618', clause: 'fineness', issued: 'does-not-meet', today: 'meets' },
    ])
  })

  it('is no finding where nothing but time has changed it', () => {
    const issued = verdict('pending', 'meets', 'pending')
    expect(changes(issued, verdict('does-not-meet', 'meets', 'does-not-meet'), issued)).toBeNull()
  })

  it('names the clause where the record changed one and time the verdict', () => {
    const issued = verdict('pending', 'not-reported', 'pending')
    const then = verdict('pending', 'meets', 'pending')
    expect(changes(issued, verdict('meets', 'meets', 'meets'), then)).toMatchObject([
      { clause: 'fineness', issued: 'not-reported', today: 'meets' },
    ])
  })

  it('says with a verdict what its outcome alone would hide', () => {
    const routes = [{ code: 'by-members' }, { code: 'late-routes', params: {} }]
    const late = {
      ...verdict('does-not-meet', 'meets', 'does-not-meet'),
      clauses: [
        { id: 'fineness', outcome: 'meets' },
        { id: 'activity', outcome: 'does-not-meet', reasons: routes },
      ],
    }
    const issued = verdict('insufficient-history', 'insufficient-history', 'insufficient-history')
    const noClass = {
      ...verdict('not-reported', 'not-reported', 'not-reported'),
      clauses: clauses('not-reported', 'not-reported').map((own) => ({
        ...own,
        reasons: ['class-none-fits'],
      })),
    }
    expect([changes(issued, late, late), changes(issued, noClass, noClass)]).toMatchObject([
      [{ issuedStanding: { unevaluated: true }, todayStanding: { soFar: true } }],
      [{ todayStanding: { noClass: true } }],
    ])
  })
})
