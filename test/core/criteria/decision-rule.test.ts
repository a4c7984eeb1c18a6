/** Decision rules that take doubt into account. */
import { readAge } from '../../../src/core/measure/age.ts'
import type { Uncertainty } from '../../../src/core/result/uncertainty.ts'
import { describe, expect, it } from 'vitest'
import {
  admitted,
  chanceOfMeeting,
  guardFactor,
  rulesByDoubt,
  underDoubt,
} from '../../../src/core/criteria/decision-rule.ts'
import type { PropertyKey } from '../../../src/core/measure/properties.ts'
import type { Result } from '../../../src/core/result/result.ts'
import type { WrittenClause, WrittenDecisionRule } from '../../../src/records/criteria/written-criterion.ts'
import {
  clauseOf,
  evidenceOf,
  history,
  judgeInWords,
  result,
  setOf,
  statedUncertainty,
} from '../judging/fixture.ts'

const NONE = Number.POSITIVE_INFINITY
const agreed = { 'agreed-in': 'special provision 7' }

/** One value under one clause and rule, with an uncertainty stated or none. */
function judged(
  clause: Omit<WrittenClause, 'clause'> & { readonly property: PropertyKey },
  rule: WrittenDecisionRule,
  value: number,
  uncertainty?: Uncertainty,
  more: Partial<Result> = {},
) {
  const set = setOf([{ clause: 'c', ...clause }], { 'decision-rule': rule })
  const own = result(clause.property, value, {
    ...(clause.condition === undefined ? {} : { condition: clause.condition }),
    ...(clause.age === undefined ? {} : { age: clause.age }),
    ...more,
  })
  return clauseOf(
    judgeInWords(
      set,
      evidenceOf([own], uncertainty === undefined ? {} : { uncertaintyOf: () => uncertainty }),
    ),
    'c',
  )
}

const activity = {
  property: 'strength-activity-index',
  condition: 'c311',
  age: readAge('28 d'),
  'at-least': '75 %',
} as const
const loss = { property: 'loss-on-ignition', 'at-most': '6.0 %' } as const
const range = { property: 'SO3', between: ['2.0 %', '7.0 %'] } as const
const magnitude = { property: 'autoclave-expansion', 'magnitude-at-most': '0.8 %' } as const

describe('judge, guarded rule', () => {
  const guarded = { guarded: 2, ...agreed }

  it.each([
    ['lower limit 75, guard 4', activity, 2, [79, 80], [78.9, 75, 71.1], [71, 60]],
    ['upper limit 6.0, guard 0.5', loss, 0.25, [5.5, 4], [5.6, 6, 6.4], [6.5, 8]],
    ['range 2.0 to 7.0, guard 1', range, 0.5, [3, 6, 4.5], [2.9, 6.1, 2, 7, 1.1, 7.9], [1, 8]],
    [
      'range narrower than its guards',
      { property: 'SO3', between: ['2.0 %', '3.0 %'] },
      0.5,
      [],
      [2, 2.5, 3],
      [1, 4],
    ],
    ['magnitude 0.8, guard 0.2', magnitude, 0.1, [0.6, -0.6, 0], [0.7, -0.7, 0.8, -0.8], [1, -1]],
  ] as const)(
    'judge, guarded, %s: meets, inconclusive, does not meet',
    (_, clause, u, meets, open, misses) => {
      const outcome = (value: number) => judged(clause, guarded, value, statedUncertainty(u)).outcome
      expect(meets.map(outcome)).toEqual(meets.map(() => 'meets'))
      expect(open.map(outcome)).toEqual(open.map(() => 'inconclusive'))
      expect(misses.map(outcome)).toEqual(misses.map(() => 'does-not-meet'))
    },
  )

  it('judge, guarded, is not misled by binary dust on the very guard', () => {
    // In binary 0.30 − 0.10 is 0.19999999999999998 and 0.10 + 0.20 is 0.30000000000000004.
    const outcome = (clause: Parameters<typeof judged>[0], value: number) =>
      judged(clause, { guarded: 1, ...agreed }, value, statedUncertainty(0.1)).outcome
    expect(outcome({ property: 'chloride', 'at-most': '0.30 %' }, 0.2)).toBe('meets')
    expect(outcome({ property: 'chloride', 'at-least': '0.30 %' }, 0.2)).toBe('does-not-meet')
    expect(
      judged(
        { property: 'chloride', 'at-least': '0.10 %' },
        { guarded: 1, ...agreed },
        0.3,
        statedUncertainty(0.2),
      ).outcome,
    ).toBe('meets')
  })

  it('judge, guarded, rounds nothing', () => {
    expect(judged(activity, guarded, 78.96, statedUncertainty(2))).toMatchObject({
      outcome: 'inconclusive',
      value: 78.96,
      compared: 78.96,
      uncertainty: { u: 2, basis: 'stated' },
    })
    expect(judged(activity, guarded, 78.96, statedUncertainty(2)).reason).toBe(
      '78.96 % with a standard uncertainty of 2.0 points neither meets nor fails the limit, at least 75 %, under the guard band of 2 standard uncertainties agreed in special provision 7; guard 4.0 points',
    )
  })

  it('judge, guarded, takes Student’s t where degrees of freedom are known', () => {
    // t(0.95; 5) = 2.015, t(0.95; 9) = 1.833 (printed tables): guards of 4.03 and 3.67 about 75 with u of 2,
    // in place of 3.29.
    const outcome = (value: number, df?: number) =>
      judged(activity, { guarded: 1.645, ...agreed }, value, statedUncertainty(2, df)).outcome
    expect([outcome(78.5), outcome(78.5, 9), outcome(78.7, 9), outcome(78.7, 5), outcome(79.1, 5)]).toEqual([
      'meets',
      'inconclusive',
      'meets',
      'inconclusive',
      'meets',
    ])
    expect([guardFactor(1.645, 5), guardFactor(1.645, 9)].map((factor) => factor.toFixed(3))).toEqual([
      '2.015',
      '1.833',
    ])
    expect(guardFactor(1.645, undefined)).toBe(1.645)
  })
})

describe('judge, probability rule', () => {
  const probable = { probability: 0.95, ...agreed }

  it.each([
    // Normal tables: 1.645 standard uncertainties for one side.
    ['lower limit 75', activity, 2, [78.3, 85], [78.2, 75, 71.8], [71.7, 60]],
    ['upper limit 6.0', loss, 0.25, [5.58, 4], [5.6, 6, 6.4], [6.42, 8]],
    ['range 2.0 to 7.0', range, 0.5, [2.83, 6.17, 4.5], [2.8, 6.2, 2, 7, 1.2, 7.8], [1.17, 7.83]],
    ['magnitude 0.8', magnitude, 0.1, [0.63, -0.63, 0], [0.64, -0.64, 0.8, -0.8], [0.97, -0.97]],
  ] as const)(
    'judge, probability of 0.95, %s: meets, inconclusive, does not meet',
    (_, clause, u, meets, open, misses) => {
      const outcome = (value: number) => judged(clause, probable, value, statedUncertainty(u)).outcome
      expect(meets.map(outcome)).toEqual(meets.map(() => 'meets'))
      expect(open.map(outcome)).toEqual(open.map(() => 'inconclusive'))
      expect(misses.map(outcome)).toEqual(misses.map(() => 'does-not-meet'))
    },
  )

  it('chanceOfMeeting takes Student’s t where degrees of freedom are known', () => {
    // scipy 1.17.1: t.cdf(2, 4) and t.cdf(1.5, 9).
    expect(chanceOfMeeting(79, { low: 75, high: NONE }, statedUncertainty(2, 4))).toBeCloseTo(0.9419417382, 9)
    expect(chanceOfMeeting(78, { low: 75, high: NONE }, statedUncertainty(2, 9))).toBeCloseTo(0.916074672, 9)
  })

  it('chanceOfMeeting of a value without doubt is certain, on the limit too', () => {
    expect(
      [75, 74.9].map((value) => chanceOfMeeting(value, { low: 75, high: NONE }, statedUncertainty(0))),
    ).toEqual([1, 0])
    expect(
      [6, 6.1].map((value) => chanceOfMeeting(value, { low: -NONE, high: 6 }, statedUncertainty(0))),
    ).toEqual([1, 0])
  })

  it('chanceOfMeeting of one side and of the other add up to one', () => {
    const below = chanceOfMeeting(5.3, { low: -NONE, high: 6 }, statedUncertainty(0.4, 7))
    expect(below + chanceOfMeeting(5.3, { low: 6, high: NONE }, statedUncertainty(0.4, 7))).toBeCloseTo(1, 12)
  })
})

describe('chanceOfMeeting, cases of JCGM 106:2012', () => {
  // JCGM 106:2012, 7.3.3, example 1, breakdown voltage of a Zener diode, printed as 0.92 (read; digits beyond
  // that by scipy 1.17.1); the others with the document's equation (6).
  it.each([
    ['breakdown voltage, upper limit −5.40 V', -5.47, 0.05, -NONE, -5.4, 0.9192433408, 'inconclusive'],
    ['index against a lower limit of 75', 78, 2, 75, NONE, 0.9331927987, 'inconclusive'],
    ['index exactly at the limit', 75, 1.7, 75, NONE, 0.5, 'inconclusive'],
  ] as const)('chanceOfMeeting, %s', (_, value, u, low, high, chance, outcome) => {
    expect(chanceOfMeeting(value, { low, high }, statedUncertainty(u))).toBeCloseTo(chance, 9)
    expect(
      underDoubt({ rule: 'guarded', k: 1.645, agreedIn: 'x' }, value, { low, high }, statedUncertainty(u)),
    ).toBe(outcome)
    expect(
      underDoubt({ rule: 'probability', p: 0.95, agreedIn: 'x' }, value, { low, high }, statedUncertainty(u)),
    ).toBe(outcome)
  })

  it('underDoubt accepts up to −5.50 V with a guard band of two standard uncertainties of 0.05 V', () => {
    const outcome = (value: number) =>
      underDoubt(
        { rule: 'guarded', k: 2, agreedIn: 'x' },
        value,
        { low: -NONE, high: -5.4 },
        statedUncertainty(0.05),
      )
    expect([outcome(-5.5), outcome(-5.499), outcome(-5.301), outcome(-5.29)]).toEqual([
      'meets',
      'inconclusive',
      'inconclusive',
      'does-not-meet',
    ])
  })
})

describe('judge, what a rule needs', () => {
  it.each([
    ['guarded', { guarded: 2, ...agreed }],
    ['probability', { probability: 0.95, ...agreed }],
  ])('judge, %s, is inconclusive without a stated uncertainty', (_, rule) => {
    expect(judged(activity, rule, 95)).toMatchObject({
      outcome: 'inconclusive',
      reason: expect.stringContaining('no uncertainty stated'),
    })
  })

  it.each([
    ['guarded', { guarded: 2 }],
    ['probability', { probability: 0.95 }],
  ])('judge, %s, follows the specification and says so where the rule was not agreed', (_, rule) => {
    expect([
      judged(activity, rule, 75, statedUncertainty(2)).outcome,
      judged(activity, rule, 74, statedUncertainty(2)).outcome,
      judged(activity, rule, 75).outcome,
    ]).toEqual(['meets', 'does-not-meet', 'meets'])
    expect(judged(activity, rule, 75, statedUncertainty(2)).reason).toContain(
      'is not agreed in writing, so judged as specified',
    )
  })

  it('judge takes a censored result for what it surely says', () => {
    const outcome = (clause: Parameters<typeof judged>[0], value: number) =>
      judged(clause, { guarded: 2, ...agreed }, value, statedUncertainty(0.25), { censored: 'below' }).outcome
    expect([outcome(loss, 1), outcome(loss, 8)]).toEqual(['meets', 'inconclusive'])
  })

  it('judge takes the rule of a clause before that of the set, and a group hands its rule to its members', () => {
    const member: WrittenClause = { clause: 'c', ...loss }
    const outcome = (clause: WrittenClause) =>
      clauseOf(
        judgeInWords(
          setOf([clause], { 'decision-rule': { guarded: 2, ...agreed } }),
          evidenceOf([result('loss-on-ignition', 5.9)], { uncertaintyOf: () => statedUncertainty(0.25) }),
        ),
        'c',
      ).outcome
    expect(outcome(member)).toBe('inconclusive')
    expect(outcome({ ...member, 'decision-rule': { guarded: 0.1, ...agreed } })).toBe('meets')
    expect(outcome({ clause: 'g', 'any-of': [member], 'decision-rule': { guarded: 0.1, ...agreed } })).toBe(
      'meets',
    )
  })

  it('judge knows the mean of n results the better by the root of n', () => {
    const set = setOf([{ clause: 'c', ...loss, several: 'mean' }], {
      'decision-rule': { guarded: 2, ...agreed },
    })
    const results = ['A', 'B', 'C', 'D'].map((sample) => result('loss-on-ignition', 5.5, { sample }))
    expect(
      clauseOf(judgeInWords(set, evidenceOf(results, { uncertaintyOf: () => statedUncertainty(0.5) })), 'c'),
    ).toMatchObject({ outcome: 'meets', uncertainty: { u: 0.25 } })
  })

  const uniform = (from: WrittenClause['deviation-from'], relative: 'yes' | 'no') =>
    setOf(
      [
        {
          clause: 'c',
          property: 'residue-45um',
          ...(from === undefined ? {} : { 'deviation-from': from }),
          relative,
          'magnitude-at-most': relative === 'yes' ? '20 %' : '5 percentage points',
        },
      ],
      { 'decision-rule': { guarded: 2, ...agreed } },
    )
  const known = (from: WrittenClause['deviation-from'], relative: 'yes' | 'no') =>
    clauseOf(
      judgeInWords(
        uniform(from, relative),
        evidenceOf([result('residue-45um', 20, { controlValue: 20 })], {
          preceding: history('residue-45um', [20, 20, 20, 20]),
          declared: { 'residue-45um': '20 %' },
          uncertaintyOf: () => statedUncertainty(2),
        }),
      ),
      'c',
    ).uncertainty?.u

  it('judge adds the doubt of a mean or a control to a deviation, and none of a declared value', () => {
    // By hand: 2 √(1 + 1/4) = √5, 2 √2, 2; relative to 20, times five.
    expect(known({ preceding: 10 }, 'no')).toBeCloseTo(Math.sqrt(5), 12)
    expect(known({ control: 'yes' }, 'no')).toBeCloseTo(Math.sqrt(8), 12)
    expect(known({ declared: 'yes' }, 'no')).toBeCloseTo(2, 12)
    expect(known({ declared: 'yes' }, 'yes')).toBeCloseTo(10, 12)
  })

  it('judge holds a statistic over results as specified whatever the rule', () => {
    const set = setOf([{ clause: 'c', ...loss, statistic: { 'rolling-mean': 2 } }], {
      'decision-rule': { guarded: 2, ...agreed },
    })
    expect(
      clauseOf(
        judgeInWords(
          set,
          evidenceOf([result('loss-on-ignition', 6)], { preceding: history('loss-on-ignition', [6]) }),
        ),
        'c',
      ).outcome,
    ).toBe('meets')
  })
})

describe('admitted', () => {
  it.each([
    ['at-least', [2], { low: 2, high: NONE }],
    ['above', [2], { low: 2, high: NONE }],
    ['at-most', [7], { low: -NONE, high: 7 }],
    ['below', [7], { low: -NONE, high: 7 }],
    ['between', [2, 7], { low: 2, high: 7 }],
    ['magnitude-at-most', [7], { low: -7, high: 7 }],
    ['report', [], { low: -NONE, high: NONE }],
  ] as const)('admitted, %s, leaves its open side infinite', (operator, values, wanted) => {
    expect(admitted(operator, values)).toEqual(wanted)
  })
})

describe('rulesByDoubt', () => {
  it('rulesByDoubt takes a rule with an agreement alone', () => {
    expect([
      rulesByDoubt({ rule: 'as-specified' }),
      rulesByDoubt({ rule: 'guarded', k: 2 }),
      rulesByDoubt({ rule: 'guarded', k: 2, agreedIn: 'x' }),
      rulesByDoubt({ rule: 'probability', p: 0.9, agreedIn: 'x' }),
    ]).toEqual([false, false, true, true])
  })
})
