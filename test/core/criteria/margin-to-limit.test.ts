/** How far a value lies inside its limit: the sign is that of the outcome. */
import { describe, expect, it } from 'vitest'
import { marginToLimit } from '../../../src/core/criteria/margin-to-limit.ts'
import type { AppliedLimit } from '../../../src/core/criteria/verdict.ts'

function limit(operator: AppliedLimit['operator'], ...values: number[]): AppliedLimit {
  return { operator, values, unit: '%', written: values.map((value) => `${value} %`), layer: 'set' }
}

describe('marginToLimit', () => {
  it.each([
    ['at least', limit('at-least', 75), 84, 9],
    ['above, on the limit', limit('above', 75), 75, 0],
    ['at most, beyond', limit('at-most', 6), 6.5, -0.5],
    ['below', limit('below', 6), 2, 4],
    ['between, nearer the upper end', limit('between', 10, 20), 18, 2],
    ['a magnitude, of either sign', limit('magnitude-at-most', 5), -6.25, -1.25],
  ])('takes the distance inside a limit: %s', (_, held, value, margin) => {
    expect(marginToLimit({ value, compared: null, limit: held })).toBe(margin)
  })
  it('takes the value as it was compared, after rounding', () => {
    expect(marginToLimit({ value: 74.6, compared: 75, limit: limit('at-least', 75) })).toBe(0)
  })
  it('has none without a value, or where a report alone is asked for', () => {
    expect(marginToLimit({ value: null, compared: null, limit: limit('at-least', 75) })).toBeNull()
    expect(marginToLimit({ value: 1, compared: null, limit: limit('report') })).toBeNull()
    expect(marginToLimit({ value: 1, compared: null, limit: null })).toBeNull()
  })
})
