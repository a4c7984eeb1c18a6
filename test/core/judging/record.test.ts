import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import type { Evidence, KnownApproval } from '../../../src/core/evidence/evidence.ts'
import { isFault, readQuantity } from '../../../src/core/measure/units.ts'
import { judge } from '../../../src/core/judging/verdict.ts'
import type { WrittenClause } from '../../../src/records/criteria/written-criterion.ts'
import { clauseOf, evidenceOf, result, setOf } from './fixture.ts'

function judged(
  written: Omit<WrittenClause, 'clause'>,
  evidence: Partial<Evidence> = {},
  classes = ['F', 'C'],
) {
  const set = setOf([{ clause: 'c', ...written }], { classes })
  return clauseOf(
    judge(set, evidenceOf(evidence.results ?? [], { asOf: readMoment('2026-04-01'), ...evidence })),
    'c',
  )
}
const outcomeAndCode = (...args: Parameters<typeof judged>) => {
  const { outcome, reasons } = judged(...args)
  return [outcome, reasons[0].code]
}

describe('a fact', () => {
  const fuel = { fact: 'fuel', is: ['coal-only'] }

  it('judge asks for one of the words, and reports none that is not stated', () => {
    expect([
      outcomeAndCode(fuel, { facts: { fuel: 'coal-only' } }),
      outcomeAndCode(fuel, { facts: { fuel: 'co-fired' } }),
      outcomeAndCode(fuel, { facts: {} }),
      outcomeAndCode(fuel),
    ]).toEqual([
      ['meets', 'fact-stated'],
      ['does-not-meet', 'fact-not-allowed'],
      ['not-reported', 'fact-not-stated'],
      ['not-reported', 'fact-not-stated'],
    ])
  })
})

describe('a document', () => {
  const letter: WrittenClause = { document: 'letter', 'void-on': ['equipment-change'] }
  const known = (more: object = {}) => ({
    documents: [
      {
        kind: 'letter',
        title: 'Letter 7',
        from: readMoment('2026-01-01'),
        to: readMoment('2026-04-01'),
        ...more,
      },
    ],
  })
  const change = (date: string, kind = 'equipment-change') => ({
    events: [{ date: readMoment(date), kind, title: 'New mill' }],
  })

  it('judge asks for a document of the kind that is in force, its last day included', () => {
    expect([
      outcomeAndCode(letter, known()),
      outcomeAndCode(letter, known({ to: readMoment('2026-03-31') })),
      outcomeAndCode(letter, known({ from: readMoment('2026-04-02'), to: readMoment('2027-01-01') })),
      outcomeAndCode(letter, known({ kind: 'other' })),
      outcomeAndCode(letter),
    ]).toEqual([
      ['meets', 'document-on-record'],
      ['does-not-meet', 'document-not-in-force'],
      ['does-not-meet', 'document-not-in-force'],
      ['not-reported', 'no-document'],
      ['not-reported', 'no-document'],
    ])
    expect(judged(letter, known()).reasons).toEqual([
      { code: 'document-on-record', params: { document: 'letter', standing: { title: 'Letter 7' } } },
    ])
  })

  it('judge holds a document void after an event, unless it was given on that day or later', () => {
    expect([
      outcomeAndCode(letter, { ...known(), ...change('2026-01-02') }),
      outcomeAndCode(letter, { ...known(), ...change('2026-01-01') }),
      outcomeAndCode(letter, { ...known(), ...change('2026-02-01', 'other') }),
      outcomeAndCode(letter, { ...known(), ...change('2026-04-02') }),
      outcomeAndCode(letter, { ...known(), ...change('2026-04-01') }),
    ]).toEqual([
      ['does-not-meet', 'document-void'],
      ['meets', 'document-on-record'],
      ['meets', 'document-on-record'],
      ['meets', 'document-on-record'],
      ['does-not-meet', 'document-void'],
    ])
    expect(judged(letter, { ...known(), ...change('2026-02-01') }).reasons).toEqual([
      { code: 'document-void', params: { document: 'letter', since: '2026-02-01', event: 'New mill' } },
    ])
    expect(
      outcomeAndCode(letter, { documents: [{ kind: 'letter', title: 'Old' }], ...change('2026-02-01') }),
    ).toEqual(['does-not-meet', 'document-void'])
  })

  it('judge takes the approval of a source for a document of its own, one that names a clause for none', () => {
    const approval: KnownApproval = { from: readMoment('2026-01-01'), by: 'the agency', scope: 'all lots' }
    const asked = { document: 'source-approval' }
    expect(judged(asked, { approvals: [approval] }).reasons).toEqual([
      {
        code: 'document-on-record',
        params: { document: 'source-approval', standing: { scope: 'all lots', by: 'the agency' } },
      },
    ])
    expect(outcomeAndCode(asked, { approvals: [{ ...approval, clause: 'loi' }] })).toEqual([
      'not-reported',
      'no-document',
    ])
    expect(outcomeAndCode(asked)).toEqual(['not-reported', 'no-document'])
  })
})

describe('allowed classes', () => {
  const allowed: Omit<WrittenClause, 'clause'> = {
    'allowed-classes': ['F'],
    'accepted-as': [{ class: 'C', as: 'F', when: [{ property: 'CaO', 'at-most': '18.0 %' }] }],
  }

  it('judge allows the classes named, and another where its composition lets it count as one', () => {
    const cao = (value: number) => ({ class: 'C', results: [result('CaO', value)] })
    expect([
      outcomeAndCode(allowed, { class: 'F' }),
      outcomeAndCode(allowed, cao(18)),
      outcomeAndCode(allowed, cao(18.1)),
      outcomeAndCode(allowed, { class: 'C' }),
      outcomeAndCode(allowed),
    ]).toEqual([
      ['meets', 'class-allowed'],
      ['meets', 'class-accepted'],
      ['does-not-meet', 'class-not-accepted'],
      ['not-reported', 'class-acceptance-not-determined'],
      ['not-reported', 'class-not-claimed'],
    ])
    expect(judged(allowed, cao(18)).acceptedAs).toBe('F')
    expect(judged(allowed, cao(18.1)).acceptedAs).toBeUndefined()
  })

  it('judge refuses a class that counts as no other', () => {
    expect(outcomeAndCode(allowed, { class: 'N' }, ['F', 'C', 'N'])).toEqual([
      'does-not-meet',
      'class-not-allowed',
    ])
  })

  it('judge names the class claimed, one that is none of the set’s too', () => {
    expect(judged(allowed, { class: 'F' }).reasons).toEqual([
      { code: 'class-allowed', params: { class: 'F' } },
    ])
    expect(judged(allowed, { class: 'S' }).reasons).toEqual([
      { code: 'class-not-allowed', params: { class: 'S', allowed: ['F'] } },
    ])
  })
})

describe('sampling', () => {
  const every = readQuantity('400 t', 'lot-mass')
  if (isFault(every)) throw new Error('a mass was expected')
  const every400: Omit<WrittenClause, 'clause'> = {
    sampling: {
      properties: ['density'],
      every,
    },
  }
  const covered = (tonnes: number, tests: number, hours = 24) =>
    judged(every400, { coverage: () => ({ hours, tonnes, tests }) })

  it('judge asks for a test at least every so many tonnes, the very limit included, shared among tests', () => {
    expect([
      covered(400, 1).outcome,
      covered(400.1, 1).outcome,
      covered(800, 2).outcome,
      covered(800.2, 2).outcome,
      covered(400, 0).outcome,
      covered(400.1, 0).outcome,
    ]).toEqual(['meets', 'does-not-meet', 'meets', 'does-not-meet', 'meets', 'does-not-meet'])
  })

  it('judge takes the dust of a sum of tonnes for no delay', () => {
    expect(covered(400 * (1 + 1e-12), 1).outcome).toBe('meets')
  })

  it('judge names the gaps, with the test before where there is one', () => {
    expect(
      judged(every400, { coverage: () => ({ hours: 48, tonnes: 500, tests: 0, since: '2026-03-01' }) })
        .reasons,
    ).toEqual([
      {
        code: 'sampled-too-seldom',
        params: {
          gaps: [{ property: 'density', hours: 48, tonnes: 500, tests: 0, since: '2026-03-01' }],
          every: '400 t',
          newSource: false,
        },
      },
    ])
  })

  it('judge says how often is often enough, and holds no time against a mass', () => {
    expect(judged(every400, { coverage: () => ({ hours: 9999, tonnes: 400, tests: 1 }) }).reasons).toEqual([
      { code: 'sampled-often-enough', params: { every: '400 t', newSource: false } },
    ])
  })

  it('judge asks a new source for its own frequency until its days are over, and no source of unknown age', () => {
    const days = readQuantity('30 d', 'duration')
    const newer = readQuantity('100 t', 'lot-mass')
    if (isFault(days) || isFault(newer)) throw new Error('a duration and a mass were expected')
    const clause: Omit<WrittenClause, 'clause'> = {
      sampling: { properties: ['density'], every, 'new-source': { for: days, every: newer } },
    }
    const withRecords = (recordDays?: number) =>
      judged(clause, {
        coverage: () => ({ hours: 24, tonnes: 200, tests: 1 }),
        ...(recordDays === undefined ? {} : { recordDays }),
      }).reasons[0]
    expect([withRecords(29), withRecords(30), withRecords()]).toMatchObject([
      { code: 'sampled-too-seldom', params: { every: '100 t', newSource: true } },
      { code: 'sampled-often-enough', params: { every: '400 t', newSource: false } },
      { code: 'sampled-often-enough', params: { every: '400 t', newSource: false } },
    ])
  })

  it('judge knows nothing of sampling without the source’s production', () => {
    expect(outcomeAndCode(every400)).toEqual(['not-reported', 'sampling-not-known'])
  })
})
