import { describe, expect, it } from 'vitest'
import type { Operator } from '../../../src/core/criteria/criterion.ts'
import { marginToLimit } from '../../../src/core/criteria/margin.ts'

const margin = (operator: Operator, compared: number | null, ...values: number[]) =>
  marginToLimit({ compared, limit: { operator, values, written: [], unit: '%', layer: 'a' } })

describe('marginToLimit', () => {
  it('marginToLimit is above zero on the side that is asked for, whichever way the limit goes', () => {
    expect(margin('at-least', 78, 75)).toBe(3)
    expect(margin('at-least', 74, 75)).toBe(-1)
    expect(margin('at-most', 6.5, 6)).toBe(-0.5)
    expect(margin('magnitude-at-most', -5.4, 5)).toBe(-0.4)
    expect(margin('between', 12, 10, 20)).toBe(2)
    expect(margin('between', 21, 10, 20)).toBe(-1)
  })
  it('marginToLimit is none without a value or a limit', () => {
    expect(margin('at-least', null, 75)).toBeNull()
    expect(margin('report', 5)).toBeNull()
    expect(marginToLimit({ compared: 5, limit: null })).toBeNull()
  })
})
