import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { mean, range, standardDeviation, sum } from '../../../src/core/statistics/descriptive.ts'

describe('sum', () => {
  // Worked by hand: 1e16 + 1 - 1e16 is 1; plain addition loses the one.
  it('keeps a small term between two large ones', () => {
    expect(sum([1e16, 1, -1e16])).toBe(1)
  })
  // Worked by hand: 1 + 1e16 - 1e16 is 1; it is the total so far that is lost here, not the next term.
  it('keeps a small beginning before two large terms', () => {
    expect(sum([1, 1e16, -1e16])).toBe(1)
  })
  it('is zero for no value', () => {
    expect(sum([])).toBe(0)
  })
})

describe('mean', () => {
  it('needs at least one value', () => {
    expect(() => mean([])).toThrow(/^mean needs at least one value, got none$/)
  })
  it('lies between the smallest and the largest', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 1, max: 200, noNaN: true }), { minLength: 1, maxLength: 12 }),
        (values) => {
          expect(mean(values)).toBeGreaterThanOrEqual(Math.min(...values) * (1 - 1e-14))
          expect(mean(values)).toBeLessThanOrEqual(Math.max(...values) * (1 + 1e-14))
        },
      ),
    )
  })
})

describe('standardDeviation', () => {
  // Worked by hand: 40, 41, 45 have the mean 42; squares 4 + 1 + 9 = 14; 14/2 = 7.
  it('divides by n - 1', () => {
    expect(standardDeviation([40, 41, 45])).toBeCloseTo(Math.sqrt(7), 14)
  })
  it('is zero for equal values whose mean is not exact', () => {
    expect(standardDeviation([0.1, 0.1, 0.1])).toBe(0)
  })
  it('has no value for one reading', () => {
    expect(() => standardDeviation([40])).toThrow(/needs at least two values, got 1/)
  })
  it('does not move when a large part is added to all values', () => {
    expect(standardDeviation([1e9 + 40, 1e9 + 41, 1e9 + 45])).toBeCloseTo(Math.sqrt(7), 12)
  })
})

describe('range', () => {
  it('is the largest less the smallest, whatever their order: 45 - 40', () => {
    expect(range([41, 45, 40])).toBe(5)
  })
  it('refuses an empty list', () => {
    expect(() => range([])).toThrow(/^range needs at least one value, got none$/)
  })
})
