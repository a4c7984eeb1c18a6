import { describe, expect, it } from 'vitest'
import { toleranceFactor } from '../../../src/core/statistics/tolerance-factor.ts'

describe('toleranceFactor', () => {
  // Made with scipy 1.17.1: nct.ppf(confidence, n - 1, norm.ppf(share) * sqrt(n)) / sqrt(n), columns
  // share/confidence as in the heading.
  it.each([
    // n, 0.90/0.95, 0.95/0.95, 0.90/0.75, 0.99/0.99
    [2, 20.58147, 26.25967, 3.99249, 185.61696],
    [3, 6.15528, 7.6559, 2.50115, 23.89556],
    [5, 3.40663, 4.20268, 1.96154, 8.93902],
    [10, 2.35464, 2.91096, 1.67061, 5.07373],
    [20, 1.92599, 2.396, 1.528, 3.83156],
    [30, 1.77733, 2.21984, 1.47458, 3.44651],
    [50, 1.64556, 2.06499, 1.42545, 3.12461],
    [100, 1.52675, 1.92654, 1.37975, 2.84965],
    [200, 1.44955, 1.83724, 1.34938, 2.6786],
    [400, 1.39787, 1.77776, 1.32875, 2.56737],
  ])('toleranceFactor of %s results gives the noncentral Student quantile over √n', (n, ...wanted) => {
    const found = [
      toleranceFactor(n, 0.9, 0.95),
      toleranceFactor(n, 0.95, 0.95),
      toleranceFactor(n, 0.9, 0.75),
      toleranceFactor(n, 0.99, 0.99),
    ]
    wanted.forEach((value, place) => {
      expect(found[place]).toBeCloseTo(value, 5)
    })
  })

  // Survey of specifications, section 7.1 (own computation stated there): Pk of 5 % and of 10 %, confidence
  // of 95 %, two printed decimals.
  it.each([
    [20, 2.4, 1.93],
    [22, 2.35, 1.89],
    [24, 2.31, 1.85],
    [26, 2.28, 1.82],
    [28, 2.25, 1.8],
    [30, 2.22, 1.78],
    [35, 2.17, 1.73],
    [40, 2.13, 1.7],
    [45, 2.09, 1.67],
    [50, 2.07, 1.65],
    [60, 2.02, 1.61],
    [70, 1.99, 1.58],
    [80, 1.96, 1.56],
    [90, 1.94, 1.54],
    [100, 1.93, 1.53],
    [150, 1.87, 1.48],
    [200, 1.84, 1.45],
    [300, 1.8, 1.42],
    [400, 1.78, 1.4],
  ])('toleranceFactor of %s results agrees with the table for conformity by variables', (n, fifth, tenth) => {
    // A hair over half a digit: 2.06499, for 50 results, is printed as 2.07 there.
    expect(Math.abs(toleranceFactor(n, 0.95, 0.95) - fifth)).toBeLessThanOrEqual(0.00501)
    expect(Math.abs(toleranceFactor(n, 0.9, 0.95) - tenth)).toBeLessThanOrEqual(0.00501)
  })

  it('toleranceFactor of ten results at 0.90 and 0.95 is 2.35464', () => {
    // Noncentral t of R, as printed in the survey of dependencies.
    expect(toleranceFactor(10, 0.9, 0.95)).toBeCloseTo(2.35464, 5)
  })

  it('toleranceFactor approaches the normal quantile with many results, and falls with their number', () => {
    // z(0.90) = 1.281552 (normal tables); the factor stays above it.
    const factors = [5, 20, 100, 400].map((n) => toleranceFactor(n, 0.9, 0.95))
    expect(factors).toEqual(factors.toSorted((a, b) => b - a))
    expect(factors.at(-1)).toBeGreaterThan(1.281552)
  })

  it('toleranceFactor at half the population and half the confidence is zero: the mean itself', () => {
    expect(toleranceFactor(7, 0.5, 0.5)).toBeCloseTo(0, 8)
  })

  it('toleranceFactor of a share and a confidence mirrors at one half', () => {
    expect(toleranceFactor(12, 0.1, 0.05)).toBeCloseTo(-toleranceFactor(12, 0.9, 0.95), 7)
  })

  it.each([
    [1, 0.9, 0.95],
    [10, 0, 0.95],
    [10, 1, 0.95],
    [10, 0.9, 0],
    [10, 0.9, 1],
  ])('toleranceFactor refuses n %s, share %s, confidence %s', (n, share, confidence) => {
    expect(() => toleranceFactor(n, share, confidence)).toThrow(
      `toleranceFactor needs n of 2 or more and shares between 0 and 1, got ${n}, ${share}, ${confidence}`,
    )
  })
})
