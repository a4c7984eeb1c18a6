import { describe, expect, it } from 'vitest'
import { c4, d2, d3, upperRangeFactor } from '../../../src/core/statistics/control-chart-constants.ts'

// Montgomery, Introduction to Statistical Quality Control, appendix, as two public source files tabulate it; the same as
// ASTM MNL 7. Digits beyond the printed ones: range distribution integrated with SciPy.
const PRINTED = [
  { n: 2, d2: 1.128, d3: 0.8525, c4: 0.7979, D4: 3.267 },
  { n: 3, d2: 1.693, d3: 0.8884, c4: 0.8862, D4: 2.574 },
  { n: 4, d2: 2.059, d3: 0.8798, c4: 0.9213, D4: 2.282 },
  { n: 5, d2: 2.326, d3: 0.8641, c4: 0.94, D4: 2.114 },
  { n: 6, d2: 2.534, d3: 0.848, c4: 0.9515, D4: 2.004 },
  { n: 7, d2: 2.704, d3: 0.8332, c4: 0.9594, D4: 1.924 },
  { n: 8, d2: 2.847, d3: 0.8198, c4: 0.965, D4: 1.864 },
  { n: 9, d2: 2.97, d3: 0.8078, c4: 0.9693, D4: 1.816 },
  { n: 10, d2: 3.078, d3: 0.7971, c4: 0.9727, D4: 1.777 },
]
const COMPUTED = [
  { n: 2, d2: 1.1283792, d3: 0.852502, c4: 0.79788456 },
  { n: 3, d2: 1.6925688, d3: 0.888368, c4: 0.88622693 },
  { n: 5, d2: 2.3259289, d3: 0.864082, c4: 0.9399856 },
  { n: 10, d2: 3.0775055, d3: 0.797051, c4: 0.97265927 },
]

describe('constants of control charts', () => {
  // D4 for three values is printed as 2.574 and as 2.575: tables round it from rounded d2 and d3.
  it.each(PRINTED)('have the printed digits for $n values', (row) => {
    expect(Math.abs(d2(row.n) - row.d2)).toBeLessThanOrEqual(0.00055)
    expect(Math.abs(d3(row.n) - row.d3)).toBeLessThanOrEqual(0.00011)
    expect(Math.abs(c4(row.n) - row.c4)).toBeLessThanOrEqual(0.000051)
    expect(Math.abs(upperRangeFactor(row.n) - row.D4)).toBeLessThanOrEqual(0.0011)
  })

  it.each(COMPUTED)('have the computed digits for $n values', (row) => {
    expect(Math.abs(d2(row.n) / row.d2 - 1)).toBeLessThanOrEqual(1e-7)
    expect(Math.abs(d3(row.n) / row.d3 - 1)).toBeLessThanOrEqual(1e-5)
    expect(Math.abs(c4(row.n) / row.c4 - 1)).toBeLessThanOrEqual(1e-7)
  })

  it('have a closed form for three values, which the integral does not know: d2 = 3/√π', () =>
    expect(d2(3)).toBeCloseTo(3 / Math.sqrt(Math.PI), 8))

  it('need two values', () => {
    expect(() => d2(1)).toThrow(RangeError)
    expect(() => c4(1)).toThrow(RangeError)
  })

  it('tend to the normal: c4 of many values is 1 − 1/(4 n) and more', () =>
    expect(c4(2001)).toBeCloseTo(1 - 1 / (4 * 2000) + 1 / (32 * 2000 ** 2), 9))
})
