import { describe, expect, it } from 'vitest'
import { twoErrorLine } from '../../../src/core/statistics/errors-in-variables.ts'

describe('twoErrorLine', () => {
  // (0, 0), (1, 2), (2, 1): Sxx = Syy = 2, Sxy = 1. At ratio 1 the slope is (0 + √4)/2 = 1 through (1, 1);
  // all error in y gives 1/2, all in x gives 2.
  it('goes through the middle of three points, by hand', () => {
    expect(twoErrorLine([0, 1, 2], [0, 2, 1], 1)).toEqual({ n: 3, slope: 1, intercept: 0, slopes: [0.5, 2] })
  })
  // Slope and intercept of scipy.odr 1.17, sx = 1 and sy = √ratio; it stops by steps, some 1e-7 off its own minimum.
  it.each([
    [1, 0.86603982, 0.36768532],
    [4, 0.84887384, 0.39558],
    [0.25, 0.88689381, 0.33379757],
  ])('agrees with scipy.odr at a ratio of %s', (ratio, slope, intercept) => {
    const line = twoErrorLine([0, 1, 2, 3.5], [0.3, 1.1, 2.6, 3.1], ratio)
    expect(line?.slope).toBeCloseTo(slope, 6)
    expect(line?.intercept).toBeCloseTo(intercept, 6)
  })
  it('is the same line with x and y exchanged and the ratio turned over', () => {
    const [xs, ys] = [
      [0, 1, 2, 3.5],
      [5, 3.9, 3.6, 1.2],
    ]
    const [one, other] = [twoErrorLine(xs, ys, 3), twoErrorLine(ys, xs, 1 / 3)]
    expect((one?.slope ?? 0) * (other?.slope ?? 0)).toBeCloseTo(1, 12)
  })
  it('is null for two points, and where x and y do not vary together', () => {
    expect(twoErrorLine([0, 1], [0, 1], 1)).toBeNull()
    expect(twoErrorLine([0, 1, 2], [1, 1, 1], 1)).toBeNull()
  })
})
