import { describe, expect, it } from 'vitest'
import { normalOutside } from '../../../src/core/statistics/normal-outside.ts'

const VALUES = [70.2, 71.9, 72.8, 77.6, 78.1, 78.8, 79.4, 79.9, 80.3, 80.8, 81.5, 82.2, 83.0, 84.1, 86.5]

describe('normalOutside', () => {
  it('finds the most likely normal of a sample without its window', () => {
    // scipy 1.17.1: Nelder-Mead on the truncated likelihood of the values outside 73 to 76, both ends given here to
    // seven digits of its answer.
    const fit = normalOutside(VALUES, 73, 76)
    expect(fit?.mean).toBeCloseTo(78.299934, 5)
    expect(fit?.standardDeviation).toBeCloseTo(4.346538, 5)
    expect(fit?.inside).toBeCloseTo(0.186997, 5)
  })
  it('gives mean and root mean square of all where the window lies far away', () => {
    const fit = normalOutside([1, 2, 3], 1000, 1001)
    expect(fit?.mean).toBeCloseTo(2, 12)
    expect(fit?.standardDeviation).toBeCloseTo(Math.sqrt(2 / 3), 12)
    expect(fit?.inside).toBe(0)
  })
  it('keeps to the scale and the origin of its values', () => {
    const fit = normalOutside(VALUES, 73, 76)
    const moved = normalOutside(
      VALUES.map((value) => 10 * value - 300),
      430,
      460,
    )
    expect(moved?.mean).toBeCloseTo(10 * (fit?.mean ?? Number.NaN) - 300, 6)
    expect(moved?.standardDeviation).toBeCloseTo(10 * (fit?.standardDeviation ?? Number.NaN), 6)
  })
  it('refuses two values', () => {
    expect(() => normalOutside([1, 2], 0, 1)).toThrow(RangeError)
  })
})
