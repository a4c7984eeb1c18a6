/** How far a value lies inside its limit: the sign is that of the outcome. */
import { describe, expect, it } from 'vitest'
import { type HeldAgainstLimit, marginToLimit } from '../../../src/core/criteria/margin-to-limit.ts'
import type { AppliedLimit } from '../../../src/core/criteria/verdict.ts'

function limit(operator: AppliedLimit['operator'], ...values: number[]): AppliedLimit {
  return { operator, values, unit: '%', written: values.map((value) => `${value} %`), layer: 'set' }
}

function margin(clause: Partial<HeldAgainstLimit>): number | null {
  return marginToLimit({ outcome: 'meets', value: null, compared: null, limit: null, ...clause })
}

describe('marginToLimit', () => {
  it.each([
    ['at least', limit('at-least', 75), 84, 9],
    ['at least, beyond', limit('at-least', 75), 74, -1],
    ['above, on the limit', limit('above', 75), 75, 0],
    ['at most, beyond', limit('at-most', 6), 6.5, -0.5],
    ['below', limit('below', 6), 2, 4],
    ['between, nearer the upper end', limit('between', 10, 20), 18, 2],
    ['between, nearer the lower end', limit('between', 10, 20), 12, 2],
    ['between, beyond', limit('between', 10, 20), 21, -1],
    ['a magnitude, of either sign', limit('magnitude-at-most', 5), -6.25, -1.25],
    ['without the dust of binary arithmetic', limit('magnitude-at-most', 5), -5.4, -0.4],
  ])('takes the distance inside a limit: %s', (_, held, value, expected) => {
    expect(margin({ value, limit: held })).toBe(expected)
  })
  it('takes the value as it was compared, after rounding', () => {
    expect(margin({ value: 74.6, compared: 75, limit: limit('at-least', 75) })).toBe(0)
  })
  it('has none without a value, or where a report alone is asked for', () => {
    expect(margin({ limit: limit('at-least', 75) })).toBeNull()
    expect(margin({ value: 1, compared: 5, limit: limit('report') })).toBeNull()
    expect(margin({ value: 1 })).toBeNull()
  })

  const oxides = { limit: limit('at-least', 70), value: 85.57, compared: 85.6 }
  it('has none where bounds leave the outcome open', () => {
    const bounds = { low: 60.97, high: 85.57 }
    expect(margin({ ...oxides, outcome: 'not-reported', bounds })).toBeNull()
  })
  it('is the least that is sure where bounds leave the outcome as it is', () => {
    expect(margin({ ...oxides, bounds: { low: 71.5, high: 85.57 } })).toBe(1.5)
    const loss = { limit: limit('at-most', 6), value: 0.1, compared: 0.1, bounds: { low: -0.1, high: 0.1 } }
    expect(margin(loss)).toBe(5.9)
    const above = {
      limit: limit('at-least', 200),
      value: 240,
      compared: 240,
      bounds: { low: 240, high: null },
    }
    expect(margin(above)).toBe(40)
    const far = { ...above, limit: limit('at-most', 200), outcome: 'does-not-meet' as const }
    expect(margin(far)).toBe(-40)
  })
  it('never has another sign than the outcome, which was found after rounding', () => {
    const bounds = { low: 74.6, high: 80 }
    expect(margin({ limit: limit('at-least', 75), value: 80, compared: 80, bounds })).toBe(0)
  })
})
