import { describe, expect, it } from 'vitest'
import { chanceOfMeeting, guardFactor, underDoubt } from '../../../src/core/criteria/decision-rule.ts'
import { riskAtLimit } from '../../../src/core/criteria/rule-risk.ts'
import { quantile } from '../../../src/core/statistics/distributions.ts'
import { publishedCases } from '../values.ts'

const basis = { code: 'stated', params: { basis: 'JCGM 106:2012' } } as const
const agreedIn = 'JCGM 106:2012'

// JCGM 106:2012, read in full text; every tolerance is half a unit in the last printed place.
describe('JCGM 106:2012', () => {
  it.each(publishedCases('jcgm-106'))(
    'chanceOfMeeting, $source: $title, has the printed probability',
    ({ inputs, expected, tolerance }) => {
      const { estimate, uncertainty, lower, upper } = inputs as Record<string, number>
      const limits = { low: lower ?? Number.NEGATIVE_INFINITY, high: upper ?? Number.POSITIVE_INFINITY }
      const chance = chanceOfMeeting(estimate ?? Number.NaN, limits, { u: uncertainty ?? Number.NaN, basis })
      expect(Math.abs(chance - (expected['probability'] as number))).toBeLessThanOrEqual(
        tolerance['abs'] ?? 0,
      )
    },
  )

  it.each([
    [0.8, '0.84'],
    [0.9, '1.28'],
    [0.95, '1.64'],
    [0.99, '2.33'],
    [0.999, '3.09'],
  ])('quantile, table 1: a conformance probability of %s asks for z = %s', (probability, z) => {
    expect(quantile(probability).toFixed(2)).toBe(z)
  })

  it('riskAtLimit, 8.3.1.2: 50 % as specified without rounding; 8.3.2.3: at most 2.3 % for a guard band of 2 u', () => {
    expect(riskAtLimit({ rule: 'as-specified' }, { u: 2, step: 0 })).toBe(0.5)
    expect((100 * (riskAtLimit({ rule: 'guarded', k: 2, agreedIn }) ?? Number.NaN)).toFixed(1)).toBe('2.3')
  })

  it('guardFactor, 8.3.3, example 2: t(0.95; 9) is 1.83, and the guard band of 0.20 µg/L is 0.37', () => {
    expect(guardFactor(quantile(0.95), 9).toFixed(2)).toBe('1.83')
    expect((guardFactor(quantile(0.95), 9) * 0.2).toFixed(2)).toBe('0.37')
  })

  // The document's limit of 2.37 is 2 + 0.3666 rounded: 2.36 lies before it and 2.37 on it or beyond.
  it('underDoubt, 8.3.3, example 2: beyond the threshold of 2.00 µg/L from 2.37 on', () => {
    const outcome = (value: number) =>
      underDoubt(
        { rule: 'guarded', k: quantile(0.95), agreedIn },
        value,
        { low: Number.NEGATIVE_INFINITY, high: 2 },
        { u: 0.2, df: 9, basis },
      )
    expect([outcome(2.36), outcome(2.37)]).toEqual(['inconclusive', 'does-not-meet'])
  })

  it('underDoubt, 8.3.3, example 1: a speed of 107 km/h is beyond 100 km/h with 99.9 %, 106 is not', () => {
    const outcome = (speed: number) =>
      underDoubt(
        { rule: 'probability', p: 0.999, agreedIn },
        speed,
        { low: Number.NEGATIVE_INFINITY, high: 100 },
        { u: 0.02 * speed, basis },
      )
    expect([outcome(106), outcome(107)]).toEqual(['inconclusive', 'does-not-meet'])
  })
})
