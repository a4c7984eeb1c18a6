/** The rule itself is tested in criteria/decision-rule.test.ts; here what becomes of one value and limit. */
import { describe, expect, it } from 'vitest'
import type { AgreedRule } from '../../../src/core/criteria/decision-rule.ts'
import type { ClassLimit } from '../../../src/core/criteria/limits-for-class.ts'
import { admittedBy, limitUnderDecisionRule } from '../../../src/core/judging/limit-under-decision-rule.ts'
import type { AsSpecified } from '../../../src/core/judging/limit-as-specified.ts'
import { statedUncertainty } from './fixture.ts'

const quantity = (value: number) => ({
  kind: 'fraction' as const,
  value,
  unit: '%',
  written: `${value} %`,
  decimals: 0,
})
const atLeast: ClassLimit = { operator: 'at-least', quantities: [quantity(75)] }
const atMost: ClassLimit = { operator: 'at-most', quantities: [quantity(75)] }
const rule: AgreedRule = { rule: 'guarded', k: 2, agreedIn: 'provision 7' }
const limit = { operator: 'at-least' as const, written: ['75 %'] }
const specified: AsSpecified = {
  outcome: 'meets',
  reason: {
    code: 'censored-with-limit',
    params: { below: { value: 80, decimals: 0, unit: '%' }, answer: 'met', limit },
  },
}
const under = (held: ClassLimit, value: number, u?: number, censored?: 'below') =>
  limitUnderDecisionRule(rule, {
    limit: held,
    judged: censored === undefined ? { value } : { value, censored },
    specified,
    uncertainty: u === undefined ? undefined : statedUncertainty(u),
  })

describe('limitUnderDecisionRule', () => {
  it('limitUnderDecisionRule compares the value itself, the guard’s very ends included', () => {
    // Guard 2 × 2 = 4 about 75.
    expect([79, 78.999, 71.001, 71].map((value) => under(atLeast, value, 2).outcome)).toEqual([
      'meets',
      'inconclusive',
      'inconclusive',
      'does-not-meet',
    ])
    expect(under(atLeast, 78.96, 2)).toEqual({
      outcome: 'inconclusive',
      compared: 78.96,
      uncertainty: statedUncertainty(2),
      reasons: [
        {
          code: 'under-rule',
          params: {
            value: 78.96,
            u: 2,
            unit: '%',
            outcome: 'inconclusive',
            limit,
            rule,
            factor: 2,
            guard: 4,
          },
        },
      ],
    })
  })

  it('limitUnderDecisionRule cannot decide without an uncertainty, and keeps what is so as specified', () => {
    expect(under(atLeast, 90)).toEqual({
      outcome: 'inconclusive',
      compared: 90,
      reasons: [{ code: 'no-uncertainty', params: { rule, asSpecified: specified.reason } }],
    })
  })

  it('limitUnderDecisionRule of a censored value decides only on the side that a lower value does not leave', () => {
    const outcomes = (held: ClassLimit) => [60, 90].map((value) => under(held, value, 2, 'below').outcome)
    expect([outcomes(atLeast), outcomes(atMost)]).toEqual([
      ['does-not-meet', 'inconclusive'],
      ['meets', 'inconclusive'],
    ])
    expect(under(atMost, 60, 2, 'below').reasons).toEqual([
      specified.reason,
      { code: 'rule-applied', params: { rule } },
    ])
  })
})

describe('admittedBy', () => {
  it('admittedBy leaves the open side of a one-sided limit infinite', () => {
    expect([admittedBy(atLeast), admittedBy(atMost)]).toEqual([
      { low: 75, high: Number.POSITIVE_INFINITY },
      { low: Number.NEGATIVE_INFINITY, high: 75 },
    ])
    expect(admittedBy({ operator: 'between', quantities: [quantity(2), quantity(7)] })).toEqual({
      low: 2,
      high: 7,
    })
  })
})
