/**
 * The kinds of clause logic, numbered as in the survey of specifications that the criteria were designed
 * from: kinds 14 to 24, on
 * combinations, approvals, the standing of a clause and the record. Each has a passing, a failing and a
 * not-determined case.
 */
import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import type { Evidence } from '../../../src/core/evidence/evidence.ts'
import type { PropertyKey } from '../../../src/core/measure/properties.ts'
import type { WrittenClause } from '../../../src/records/criteria/written-criterion.ts'
import { clauseOf, evidenceOf, index, judgeInWords, plannedIndex, result, setOf } from './fixture.ts'

/** One clause judged against the values of the lot; no value where the property is not reported. */
function judged(
  clause: Omit<WrittenClause, 'clause'>,
  values: Partial<Record<PropertyKey, number>>,
  more: Partial<Evidence> = {},
) {
  const results = Object.entries(values).map(([key, value]) => result(key as PropertyKey, value))
  return clauseOf(judgeInWords(setOf([{ clause: 'c', ...clause }]), evidenceOf(results, more)), 'c')
}

describe('judge, combinations', () => {
  const at = (age: '7 d' | '28 d', limit: string): WrittenClause => ({
    property: 'strength-activity-index',
    condition: 'c311',
    age: readAge(age),
    'at-least': limit,
  })
  const either = setOf([{ clause: 'c', 'any-of': [at('7 d', '75 %'), at('28 d', '75 %')] }])
  const both = setOf([{ clause: 'c', 'all-of': [at('7 d', '75 %'), at('28 d', '85 %')] }])

  // Worked numbers of the survey, section 11.4: one age is enough.
  it.each([
    ['7 d 72, 28 d awaited', [index('7 d', 72)], true, 'pending'],
    ['7 d 72, 28 d 76', [index('7 d', 72), index('28 d', 76)], false, 'meets'],
    ['7 d 72, 28 d 74', [index('7 d', 72), index('28 d', 74)], false, 'does-not-meet'],
    ['7 d 75 without 28 d', [index('7 d', 75)], false, 'meets'],
    ['no result', [], false, 'not-reported'],
  ] as const)('judge, 14. one of two ages: %s', (_, results, awaited, outcome) => {
    expect(
      judgeInWords(either, evidenceOf(results, { planned: awaited ? [plannedIndex('28 d')] : [] })).outcome,
    ).toBe(outcome)
  })

  it.each([
    [[index('7 d', 80), index('28 d', 90)], 'meets'],
    [[index('7 d', 75), index('28 d', 85)], 'meets'],
    [[index('7 d', 80), index('28 d', 84)], 'does-not-meet'],
    [[index('7 d', 80)], 'not-reported'],
  ] as const)('judge, 15. both ages (%#)', (results, outcome) => {
    expect(judgeInWords(both, evidenceOf(results)).outcome).toBe(outcome)
  })

  it('judge, 15. both ages: a miss at 7 d fails before 28 d is known, a pass waits for it', () => {
    expect(
      judgeInWords(both, evidenceOf([index('7 d', 70)], { planned: [plannedIndex('28 d')] })).outcome,
    ).toBe('does-not-meet')
    expect(
      judgeInWords(both, evidenceOf([index('7 d', 80)], { planned: [plannedIndex('28 d')] })).outcome,
    ).toBe('pending')
  })

  // Worked numbers of the survey, section 11.4: 7 d index of 85 or CaO of 23, and 28 d index of 85.
  it.each([
    [80, 24, 86, 'meets'],
    [80, 22, 95, 'does-not-meet'],
    [88, 15, 84, 'does-not-meet'],
    [85, 23, 85, 'meets'],
  ] as const)(
    'judge, 16. one of two properties, within a clause that wants all: 7 d %s, CaO %s, 28 d %s',
    (early, lime, late, outcome) => {
      const set = setOf([
        {
          clause: 'c',
          'all-of': [
            { 'any-of': [at('7 d', '85 %'), { property: 'CaO', 'at-least': '23 %' }] },
            at('28 d', '85 %'),
          ],
        },
      ])
      expect(
        judgeInWords(set, evidenceOf([index('7 d', early), result('CaO', lime), index('28 d', late)]))
          .outcome,
      ).toBe(outcome)
      expect(judgeInWords(set, evidenceOf([index('28 d', 95)])).outcome).toBe('not-reported')
    },
  )

  it('judge, 17. one of two methods for a property', () => {
    const by = (method: string, limit: string): WrittenClause => ({
      property: 'residue-45um',
      'at-most': limit,
      method,
      'method-required': 'yes',
    })
    const set = setOf([{ clause: 'c', 'any-of': [by('EN 451-2', '40 %'), by('EN 933-10', '38 %')] }])
    const verdict = (value: number, method?: string) =>
      judgeInWords(set, evidenceOf([result('residue-45um', value, method === undefined ? {} : { method })]))
    expect([verdict(39, 'EN 451-2').outcome, verdict(40, 'EN 451-2:2017').outcome]).toEqual([
      'meets',
      'not-reported',
    ])
    expect([
      verdict(40, 'EN 451-2').outcome,
      verdict(38, 'EN 933-10').outcome,
      verdict(39, 'EN 933-10').outcome,
    ]).toEqual(['meets', 'meets', 'does-not-meet'])
    expect(clauseOf(verdict(20, 'EN 12345'), 'c-1')).toMatchObject({
      outcome: 'not-reported',
      reason: 'only results by EN 451-2 count, but those on record are by EN 12345',
    })
    expect(clauseOf(verdict(20), 'c-1').reason).toContain('an unstated method')
  })

  it('judge, 17. a required method admits its editions and no other method that begins alike', () => {
    const clause: WrittenClause = {
      property: 'residue-45um',
      'at-most': '34 %',
      method: 'ASTM C430',
      'method-required': 'yes',
    }
    const outcome = (method: string) =>
      judgeInWords(setOf([{ clause: 'c', ...clause }]), evidenceOf([result('residue-45um', 20, { method })]))
        .outcome
    expect([outcome('ASTM C430'), outcome('ASTM C430-17'), outcome('ASTM C4301')]).toEqual([
      'meets',
      'meets',
      'not-reported',
    ])
  })

  it('judge, 18. a clause that applies by another property', () => {
    const clause: WrittenClause = {
      property: 'autoclave-expansion',
      'magnitude-at-most': '0.8 %',
      when: [{ property: 'MgO', above: '5.0 %' }],
    }
    const outcome = (values: Parameters<typeof judged>[1]) => judged(clause, values).outcome
    expect([
      outcome({ MgO: 6, 'autoclave-expansion': 0.5 }),
      outcome({ MgO: 6, 'autoclave-expansion': 0.9 }),
      outcome({ MgO: 5, 'autoclave-expansion': 0.9 }),
      outcome({ MgO: 6 }),
    ]).toEqual(['meets', 'does-not-meet', 'not-applicable', 'not-reported'])
    expect(judged(clause, { 'autoclave-expansion': 0.5 })).toMatchObject({
      outcome: 'not-reported',
      reason: expect.stringContaining('magnesium oxide'),
    })
  })

  it('judge, 18. a clause that applies by a stated fact', () => {
    const clause: WrittenClause = {
      property: 'air-content',
      'at-most': '6 %',
      when: [{ fact: 'air-entrained', is: ['yes'] }],
    }
    const outcome = (value: number, fact: string) =>
      judged(clause, { 'air-content': value }, { facts: { 'air-entrained': fact } }).outcome
    expect([outcome(5, 'yes'), outcome(6, 'yes'), outcome(7, 'yes'), outcome(7, 'no')]).toEqual([
      'meets',
      'meets',
      'does-not-meet',
      'not-applicable',
    ])
    expect(judged(clause, { 'air-content': 5 })).toMatchObject({
      outcome: 'not-reported',
      reason: expect.stringContaining('“air entrained”, which is not stated'),
    })
  })

  it('judge, 18. of several premises one that fails decides before one that is open', () => {
    const clause: WrittenClause = {
      property: 'air-content',
      'at-most': '6 %',
      when: [
        { fact: 'air-entrained', is: ['yes'] },
        { property: 'MgO', above: '5.0 %' },
      ],
    }
    expect(judged(clause, { 'air-content': 5, MgO: 4 }).outcome).toBe('not-applicable')
    expect(judged(clause, { 'air-content': 5, MgO: 6 }).outcome).toBe('not-reported')
  })
})

describe('judge, limits that may be exceeded, and tests that are not needed', () => {
  const byApproval: WrittenClause = {
    property: 'loss-on-ignition',
    'at-most': '6.0 %',
    approval: { 'at-most': '12.0 %', evidence: 'performance records' },
  }
  const granted = {
    from: readMoment('2026-01-01'),
    to: readMoment('2026-12-31'),
    by: 'State Materials Office',
    scope: 'loss on ignition',
    set: 'trial',
    clause: 'c',
    evidence: 'report 14',
  }

  it('judge, 19. over the plain limit, by an approval on record', () => {
    const outcome = (value: number) =>
      judged(byApproval, { 'loss-on-ignition': value }, { approvals: [granted] }).outcome
    expect([outcome(5), outcome(6), outcome(9), outcome(12), outcome(12.1)]).toEqual([
      'meets',
      'meets',
      'meets-by-approval',
      'meets-by-approval',
      'does-not-meet',
    ])
    expect(judged(byApproval, {}, { approvals: [granted] }).outcome).toBe('not-reported')
    expect(judged(byApproval, { 'loss-on-ignition': 9 }, { approvals: [granted] }).reason).toContain(
      'approved by State Materials Office from 1\u00a0January 2026 on evidence: report 14',
    )
  })

  it.each([
    ['another clause', { clause: 'other' }],
    ['another set', { set: 'other' }],
    ['the past', { to: readMoment('2026-03-31') }],
    ['the future', { from: readMoment('2026-04-02') }],
    ['the source as a whole', { clause: undefined, set: undefined }],
  ])('judge, 19. an approval of %s does not cover the clause', (_, other) => {
    const { clause, set, ...rest } = { ...granted, ...other }
    const approval = {
      ...rest,
      ...(clause === undefined ? {} : { clause }),
      ...(set === undefined ? {} : { set }),
    }
    expect(judged(byApproval, { 'loss-on-ignition': 9 }, { approvals: [approval] })).toMatchObject({
      outcome: 'does-not-meet',
      reason: expect.stringContaining('no approval is on record'),
    })
  })

  it('judge, 19. over the plain limit, by the value that the source declares', () => {
    const clause: WrittenClause = {
      property: 'chloride',
      'at-most': '0.10 %',
      approval: { 'at-most': '0.30 %', evidence: 'declared in writing', by: 'declaration' },
    }
    const outcome = (value: number, declared?: string) =>
      judged(clause, { chloride: value }, declared === undefined ? {} : { declared: { chloride: declared } })
        .outcome
    expect([outcome(0.1), outcome(0.15, '0.20 %'), outcome(0.2, '0.20 %'), outcome(0.3, '0.30 %')]).toEqual([
      'meets',
      'meets-by-approval',
      'meets-by-approval',
      'meets-by-approval',
    ])
    expect([
      outcome(0.15),
      outcome(0.25, '0.20 %'),
      outcome(0.25, '0.40 %'),
      outcome(0.31, '0.30 %'),
    ]).toEqual(['does-not-meet', 'does-not-meet', 'does-not-meet', 'does-not-meet'])
  })

  it('judge, 20. deemed to satisfy without a test while a fact holds; a result on record is judged all the same', () => {
    const clause: WrittenClause = {
      property: 'chloride',
      'at-most': '0.10 %',
      'deemed-by': [{ fact: 'fuel', is: ['coal-only'] }],
    }
    const coal = { facts: { fuel: 'coal-only' } }
    expect(judged(clause, {}, coal)).toMatchObject({
      outcome: 'meets',
      reason: 'deemed to satisfy without a test, since “fuel” is coal-only',
    })
    expect([
      judged(clause, { chloride: 0.1 }, coal).outcome,
      judged(clause, { chloride: 0.2 }, coal).outcome,
    ]).toEqual(['meets', 'does-not-meet'])
    expect([judged(clause, {}, { facts: { fuel: 'co-fired' } }).outcome, judged(clause, {}).outcome]).toEqual(
      ['not-reported', 'not-reported'],
    )
  })
})

describe('judge, the standing of a clause, and the record', () => {
  it.each([
    ['mandatory', {}, 'does-not-meet', 'does-not-meet'],
    ['optional, not asked for', { optional: 'yes' }, 'not-invoked', 'reported'],
    ['for information', { information: 'yes' }, 'does-not-meet', 'reported'],
  ] as const)('judge, 21. a clause that is %s', (_, standing, ofClause, ofSet) => {
    const verdict = judgeInWords(
      setOf([{ clause: 'c', property: 'SO3', 'at-most': '5.0 %', ...standing }]),
      evidenceOf([result('SO3', 6)]),
    )
    expect([clauseOf(verdict, 'c').outcome, verdict.outcome]).toEqual([ofClause, ofSet])
  })

  it('judge, 21. an optional clause is judged where the purchaser asks for it under this set', () => {
    const clause: WrittenClause = { property: 'SO3', 'at-most': '5.0 %', optional: 'yes' }
    const outcome = (value: number | undefined, set: string) =>
      judged(clause, value === undefined ? {} : { SO3: value }, { requested: { [set]: ['c'] } }).outcome
    expect([
      outcome(5, 'trial'),
      outcome(6, 'trial'),
      outcome(undefined, 'trial'),
      outcome(6, 'other'),
    ]).toEqual(['meets', 'does-not-meet', 'not-reported', 'not-invoked'])
  })

  it('judge, 22. each oxide must be reported, not their sum alone', () => {
    const clause: WrittenClause = {
      'all-of': [
        { property: 'SiO2', report: 'yes' },
        { property: 'Al2O3', report: 'yes' },
        { property: 'Fe2O3', report: 'yes' },
      ],
    }
    expect(judged(clause, { SiO2: 50, Al2O3: 25, Fe2O3: 5 }).outcome).toBe('not-applicable')
    expect(judged(clause, { SiO2: 50, Al2O3: 25, 'oxide-sum': 80 })).toMatchObject({
      outcome: 'not-reported',
      clauses: [{ outcome: 'reported' }, { outcome: 'reported' }, { outcome: 'not-reported' }],
    })
  })

  const letter = (from?: string, to?: string) => ({
    kind: 'certification',
    title: 'Letter',
    ...(from === undefined ? {} : { from: readMoment(from) }),
    ...(to === undefined ? {} : { to: readMoment(to) }),
  })
  const change = (date: string, kind = 'equipment-change') => ({
    date: readMoment(date),
    kind,
    title: 'New burner',
  })

  it.each([
    ['in force', [letter('2026-01-01', '2026-12-31')], [], 'meets'],
    ['in force on its first and last day', [letter('2026-04-01', '2026-04-01')], [], 'meets'],
    ['expired', [letter('2025-01-01', '2026-03-31')], [], 'does-not-meet'],
    ['not yet in force', [letter('2026-04-02')], [], 'does-not-meet'],
    ['absent', [], [], 'not-reported'],
    ['void after an event', [letter('2026-01-01')], [change('2026-02-01')], 'does-not-meet'],
    ['younger than the event', [letter('2026-02-02')], [change('2026-02-01')], 'meets'],
    [
      'untouched by an event of another kind',
      [letter('2026-01-01')],
      [change('2026-02-01', 'outage')],
      'meets',
    ],
    [
      'renewed after the event, the old one still listed',
      [letter('2026-01-01'), letter('2026-02-10')],
      [change('2026-02-01')],
      'meets',
    ],
  ])('judge, 23. a document %s', (_, documents, events, outcome) => {
    expect(
      judged({ document: 'certification', 'void-on': ['equipment-change'] }, {}, { documents, events })
        .outcome,
    ).toBe(outcome)
  })

  it('judge, 23. the approval of a source is a document of its own, and one of a clause is not', () => {
    const approval = { from: readMoment('2026-01-01'), by: 'State Materials Office', scope: 'all uses' }
    const outcome = (approvals: Evidence['approvals']) =>
      judged({ document: 'source-approval' }, {}, approvals === undefined ? {} : { approvals }).outcome
    expect([
      outcome([approval]),
      outcome([{ ...approval, to: readMoment('2026-03-31') }]),
      outcome([{ ...approval, set: 'trial', clause: 'loi' }]),
      outcome([]),
    ]).toEqual(['meets', 'does-not-meet', 'not-reported', 'not-reported'])
  })

  it.each([
    ['none', 'meets'],
    ['limestone injection', 'does-not-meet'],
    [undefined, 'not-reported'],
  ])('judge, 24. scope by a stated fact: %s', (treatment, outcome) => {
    expect(
      judged(
        { fact: 'flue-gas-treatment', is: ['none', 'dry-lime'] },
        {},
        { facts: { 'flue-gas-treatment': treatment } },
      ).outcome,
    ).toBe(outcome)
  })

  it.each([
    [29, 'meets'],
    [30, 'meets'],
    [31, 'does-not-meet'],
    [undefined, 'not-reported'],
  ])('judge, 24. scope by a measured share: %s %% of co-fired ash', (share, outcome) => {
    expect(
      judged(
        { property: 'co-fired-ash', 'at-most': '30 %' },
        share === undefined ? {} : { 'co-fired-ash': share },
      ).outcome,
    ).toBe(outcome)
  })
})
