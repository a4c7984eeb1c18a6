import { describe, expect, it } from 'vitest'
import { fTest, varianceRatioAbove } from '../../../src/core/statistics/f-test.ts'

describe('fTest', () => {
  it('fTest of 1, 2, 3 and 0, 2, 4 is a ratio of 4 with a chance of 0.4', () => {
    // By hand: variances 1 and 4; with 2 and 2 degrees of freedom, P(F > x) = 1 / (1 + x) = 0.2, doubled.
    const found = fTest([1, 2, 3], [0, 2, 4])
    expect(found?.ratio).toBeCloseTo(4, 12)
    expect(found?.df).toEqual([2, 2])
    expect(found?.p).toBeCloseTo(0.4, 12)
  })

  it('fTest is the same whichever side comes first, with the degrees of freedom of the larger in front', () => {
    const [agency, producer] = [
      [78.1, 79.4, 80.2, 77.6],
      [84.0, 76.1, 88.2, 79.9, 81.4, 90.3, 72.7],
    ]
    // scipy 1.17.1: np.var(ddof=1), 2 f.sf(ratio, 6, 3).
    for (const found of [fTest(agency, producer), fTest(producer, agency)]) {
      expect(found?.ratio).toBeCloseTo(27.91288993525579, 9)
      expect(found?.df).toEqual([6, 3])
      expect(found?.p).toBeCloseTo(0.019997676229754208, 9)
    }
  })

  it('fTest doubles the smaller tail, which of a ratio near 1 with unequal numbers may be the lower one', () => {
    // scipy 1.17.1: var(ddof=1) 2.5 and 2.4, f.sf(2.5/2.4, 4, 1) = 0.617337, so that the lower tail is doubled.
    expect(fTest([1, 2, 3, 4, 5], [0, Math.sqrt(4.8)])?.p).toBeCloseTo(0.7653259025621544, 9)
  })

  it('fTest says nothing of one result, nor where neither side scatters; one alone scatters without bounds', () => {
    expect(fTest([1], [1, 2])).toBeNull()
    expect(fTest([5, 5, 5], [4, 4])).toBeNull()
    expect(fTest([5, 5, 5], [4, 6])).toMatchObject({ ratio: Number.POSITIVE_INFINITY, p: 0 })
  })
})

describe('varianceRatioAbove', () => {
  // scipy 1.17.1, f.sf; the first three are printed table values of 5 %, 0.5 % and 1 %.
  it.each([
    [3.738891832, 2, 14, 0.05000000001436443],
    [7.921641816, 2, 14, 0.004999999999382854],
    [4.025946591, 7, 16, 0.009999999996376137],
    [1.18046237440255, 4, 20, 0.34944749340219294],
    [1, 3, 200, 0.3939216498090783],
    [0.2, 1, 1, 0.7322795271987699],
    [50, 1, 500, 5.2059944450749895e-12],
    [3, 999, 999, 9.859563897713563e-65],
  ])('varianceRatioAbove %s with %s and %s degrees of freedom is %s', (ratio, above, below, wanted) => {
    expect(Math.abs(varianceRatioAbove(ratio, above, below) / wanted - 1)).toBeLessThan(1e-9)
  })

  it('varianceRatioAbove of nothing is certain, and above the inverse is what lies below', () => {
    expect(varianceRatioAbove(0, 3, 7)).toBe(1)
    expect(varianceRatioAbove(2.5, 3, 7) + varianceRatioAbove(1 / 2.5, 7, 3)).toBeCloseTo(1, 12)
  })
})
