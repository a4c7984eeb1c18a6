import { describe, expect, it } from 'vitest'
import type { Comparison, Criterion } from '../../../src/core/criteria/criterion.ts'
import { limitsForClass } from '../../../src/core/criteria/limits-for-class.ts'
import { judgeAgainstLimits, type JudgedWith } from '../../../src/core/judging/against-limits.ts'
import type { JudgedValue } from '../../../src/core/judging/compare-with-limit.ts'
import { defined } from '../../../src/core/measure/defined.ts'
import type { WrittenClause, WrittenDecisionRule } from '../../../src/records/criteria/written-criterion.ts'
import { evidenceOf, setOf, statedUncertainty } from './fixture.ts'

const two: WrittenClause = { clause: 'c', property: 'SO3', 'at-least': '2.0 %', 'at-most': '5.0 %' }

function against(
  written: WrittenClause,
  value: number,
  {
    rule,
    censored,
    ...judgedWith
  }: Partial<JudgedWith> & Pick<JudgedValue, 'censored'> & { readonly rule?: WrittenDecisionRule } = {},
) {
  const criterion: Criterion = setOf([written], rule === undefined ? {} : { 'decision-rule': rule })
  const clause = criterion.clauses[0] as Comparison
  const limits = limitsForClass(clause.limits, null)
  const comparison = { criterion, evidence: evidenceOf([]), lotClass: 'F', clause, limits }
  return judgeAgainstLimits(comparison, defined({ value, censored }), { key: 'key', ...judgedWith })
}

describe('judgeAgainstLimits', () => {
  it('judgeAgainstLimits shows the worst of several limits, the first of equal ones', () => {
    expect(
      [against(two, 3), against(two, 6), against(two, 1)].map(({ outcome, limit }) => [
        outcome,
        limit?.operator,
      ]),
    ).toEqual([
      ['meets', 'at-least'],
      ['does-not-meet', 'at-most'],
      ['does-not-meet', 'at-least'],
    ])
  })

  it('judgeAgainstLimits carries value, key and limit', () => {
    expect(against(two, 5.04)).toMatchObject({
      value: 5.04,
      result: 'key',
      limit: { operator: 'at-least', values: [2], unit: '%', written: ['2.0 %'], layer: 'trial' },
    })
  })

  it('judgeAgainstLimits compares uniformity in steps of 0.1 points, and no other deviation so', () => {
    const uniform: WrittenClause = {
      clause: 'c',
      property: 'density',
      'deviation-from': { preceding: 10 },
      relative: 'yes',
      'magnitude-at-most': '5 %',
    }
    const declared: WrittenClause = { ...uniform, 'deviation-from': { declared: 'yes' } }
    const outcomes = (written: WrittenClause) =>
      [5.04, 5.06, 5.4, 5.6].map((value) => against(written, value).outcome)
    expect([outcomes(uniform), outcomes(declared), outcomes({ ...uniform, resolution: 1 })]).toEqual([
      ['meets', 'does-not-meet', 'does-not-meet', 'does-not-meet'],
      ['meets', 'meets', 'meets', 'does-not-meet'],
      ['meets', 'meets', 'meets', 'does-not-meet'],
    ])
  })

  it('judgeAgainstLimits leaves a rule that is not agreed aside, and says so', () => {
    const rule = { guarded: 2 }
    expect(against(two, 3, { rule })).toMatchObject({
      outcome: 'meets',
      reasons: [{ code: 'compared-with-limit' }, { code: 'rule-not-agreed', params: { rule: { k: 2 } } }],
    })
  })

  it('judgeAgainstLimits judges a statistic as specified under any rule', () => {
    const rule = { guarded: 2, 'agreed-in': 'provision 7' }
    expect(against(two, 3, { rule }).outcome).toBe('inconclusive')
    expect(against(two, 3, { rule, asSpecified: true })).toMatchObject({
      outcome: 'meets',
      reasons: [{ code: 'compared-with-limit' }],
    })
  })

  it('judgeAgainstLimits lets a clause’s own rule go before the set’s', () => {
    const uncertainty = statedUncertainty(0.6)
    const own = { ...two, 'decision-rule': { guarded: 1, 'agreed-in': 'x' } }
    const rule = { guarded: 2, 'agreed-in': 'provision 7' }
    expect([
      against(two, 3, { rule, uncertainty }).outcome,
      against(own, 3, { rule, uncertainty }).outcome,
    ]).toEqual(['inconclusive', 'meets'])
  })

  it('judgeAgainstLimits states the doubt where an uncertainty is known, and none without', () => {
    expect(against(two, 3, { uncertainty: statedUncertainty(0.5) }).doubt).toMatchObject({
      margin: 1.05,
      end: 1.95,
      u: 0.5,
    })
    expect(against(two, 3).doubt).toBeUndefined()
  })

  it('judgeAgainstLimits states no doubt of a value that is only known to lie below another', () => {
    const uncertainty = statedUncertainty(0.5)
    expect(against(two, 1, { uncertainty, censored: 'below' })).not.toHaveProperty('doubt')
  })

  it('judgeAgainstLimits compares uniformity in other units at the digits of the limit', () => {
    const uniform: WrittenClause = {
      clause: 'c',
      property: 'density',
      'deviation-from': { preceding: 10 },
      'magnitude-at-most': '0.05 g/cm3',
    }
    expect([0.054, 0.056].map((value) => against(uniform, value).outcome)).toEqual(['meets', 'does-not-meet'])
  })

  it('judgeAgainstLimits needs a limit', () => {
    expect(() => against({ clause: 'c', property: 'CaO', report: 'yes' }, 3)).toThrow(
      new RangeError('judgeAgainstLimits needs a limit to compare with, got none in clause c'),
    )
  })
})
