import { describe, expect, it } from 'vitest'
import { capabilityIndex, percentWithin } from '../../../src/core/statistics/capability.ts'

// NIST/SEMATECH e-Handbook of Statistical Methods, 6.1.6 (from memory): limits 8 and 20, mean 16, s 2; the share outside
// with scipy.stats.norm.
describe('capability, the example of the handbook', () => {
  it('has the printed one-sided indices', () => {
    expect(capabilityIndex(20 - 16, 2)).toBeCloseTo(0.6666666667, 9)
    expect(capabilityIndex(16 - 8, 2)).toBeCloseTo(1.333333333, 9)
  })

  it('has the share outside of a known normal distribution with very many results', () => {
    const outside = 2 * 100 - percentWithin((20 - 16) / 2, 1e6) - percentWithin((16 - 8) / 2, 1e6)
    expect(outside / 100).toBeCloseTo(0.02278180319, 5)
  })
})

// With SciPy: 100 (1 − betainc(n/2 − 1, n/2 − 1, 1/2 − q √n/(2 (n − 1)))).
describe('percentWithin', () => {
  it.each([
    [1, 5, 83.63619342519273],
    [1, 10, 84.02707071609193],
    [2, 30, 98.0205121176097],
    [-0.5, 5, 32.44042387980266],
  ])('a mean %d standard deviations inside, of %d results: %d %%', (q, n, percent) =>
    expect(percentWithin(q, n)).toBeCloseTo(percent, 8),
  )

  it('is linear for four results: 50 + 100/3 for each standard deviation, by hand', () => {
    expect(percentWithin(1, 4)).toBeCloseTo(50 + 100 / 3, 10)
    expect(percentWithin(2, 4)).toBe(100)
  })

  it('of both sides of one limit adds up to all', () =>
    expect(percentWithin(0.7, 9) + percentWithin(-0.7, 9)).toBeCloseTo(100, 10))
})
