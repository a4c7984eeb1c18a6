/** Published cases stand in test/published/ratio-of-means; here the ends are worked by hand. */
import { describe, expect, it } from 'vitest'
import { resistivityInterval, strengthInterval } from '../../../src/core/statistics/ratio-interval.ts'

/** Student's quantile of one degree of freedom at 97.5 %: tan(0.475 π). */
const T1 = Math.tan(0.475 * Math.PI)

describe('strengthInterval', () => {
  it('adds t standard errors of the mean where the control has no scatter', () => {
    // Test 99 and 101: mean 100, variance 2, of the mean 1, one degree of freedom; control 50.
    const found = strengthInterval([99, 101], [50, 50])
    expect(found).toMatchObject({ level: 0.95, shape: 'bounded', df: 1 })
    expect(found?.low).toBeCloseTo((100 * (100 - T1)) / 50, 8)
    expect(found?.high).toBeCloseTo((100 * (100 + T1)) / 50, 8)
    expect(found?.method).toBe('fieller')
  })
  it('divides by the control’s mean with t standard errors added and taken off where the test has no scatter', () => {
    const found = strengthInterval([50, 50], [99, 101])
    expect(found?.low).toBeCloseTo((100 * 50) / (100 + T1), 8)
    expect(found?.high).toBeCloseTo((100 * 50) / (100 - T1), 8)
  })
  it('leaves out what lies between two ends where the control may be nought', () => {
    // Control 1 and 3: mean 2, variance of the mean 1; |10 − 2ρ| ≤ t |ρ| beyond 10 / (2 − t) and 10 / (2 + t).
    const found = strengthInterval([10, 10], [1, 3])
    expect(found?.shape).toBe('outside')
    expect(found?.low).toBeCloseTo(1000 / (2 - T1), 8)
    expect(found?.high).toBeCloseTo(1000 / (2 + T1), 8)
  })
  // Control 0 and 14: mean 7, variance of the mean 49. At a level of one half Student's t of one degree of
  // freedom is tan(π/4), which is 1, and the control lies exactly t standard errors from nought.
  it('is open on one side where the control lies exactly t standard errors from nought', () => {
    // |10 − 7ρ| ≤ 7 |ρ| from ρ = 10/14 on; |−10 − 7ρ| ≤ 7 |ρ| up to −10/14.
    const above = strengthInterval([10, 10], [0, 14], 0.5)
    expect(above).toMatchObject({ shape: 'above', high: null })
    expect(above?.low).toBeCloseTo(1000 / 14, 8)
    const below = strengthInterval([-10, -10], [0, 14], 0.5)
    expect(below).toMatchObject({ shape: 'below', low: null })
    expect(below?.high).toBeCloseTo(-1000 / 14, 8)
  })
  it('excludes nothing where the test may be nought besides', () => {
    expect(strengthInterval([-10, 10], [0, 14], 0.5)).toMatchObject({ shape: 'all', low: null, high: null })
  })
  it('excludes nothing where both scatter too much', () => {
    expect(strengthInterval([1, 3], [1, 3])).toMatchObject({ shape: 'all', low: null, high: null })
  })
  it('is the ratio itself without any scatter, with the degrees of freedom of both mortars', () => {
    expect(strengthInterval([50, 50, 50], [40, 40])).toMatchObject({
      shape: 'bounded',
      df: 3,
      low: 125,
      high: 125,
    })
  })
  it('weighs the degrees of freedom by each mortar’s part of the variance', () => {
    // Variances of the means 1 and 1 at a ratio of 1: (1 + 1)² / (1²/1 + 1²/1) = 2.
    expect(strengthInterval([99, 101], [99, 101])?.df).toBeCloseTo(2, 12)
    // Three cubes 98, 100, 102: variance 4, of the mean 4/3; (4/3 + 1)² / ((4/3)²/2 + 1²/1) = 49/17.
    expect(strengthInterval([98, 100, 102], [99, 101])?.df).toBeCloseTo(49 / 17, 12)
  })
})

describe('resistivityInterval', () => {
  it('spreads on the log scale by one pooled coefficient of variation', () => {
    // Control 90 and 110: c² = 200/100² = 0.02; half width t √(0.02 (1 + 1/2)) with one degree of freedom.
    const half = T1 * Math.sqrt(0.02 * 1.5)
    const found = resistivityInterval([100], [90, 110])
    expect(found).toMatchObject({ level: 0.95, shape: 'bounded', df: 1 })
    expect(found?.low).toBeCloseTo(100 * Math.exp(-half), 8)
    expect(found?.high).toBeCloseTo(100 * Math.exp(half), 6)
    expect(found?.method).toBe('log-scale')
  })
  it('weighs each mortar’s squared coefficient by its degrees of freedom', () => {
    // Test 90, 100, 110: c² = 0.01 with two; control 90, 110: 0.02 with one: (2 × 0.01 + 0.02) / 3. Student's t
    // of three degrees of freedom at 97.5 %: 3.182446 (tables).
    const half = 3.182446305 * Math.sqrt((0.04 / 3) * (1 / 3 + 1 / 2))
    const found = resistivityInterval([90, 100, 110], [90, 110])
    expect(found?.df).toBe(3)
    expect(found?.high).toBeCloseTo(100 * Math.exp(half), 5)
  })
  it('is not given with fewer than three specimens in all, or with none of a mortar', () => {
    expect(resistivityInterval([100], [90])).toBeNull()
    expect(resistivityInterval([], [90, 110, 100])).toBeNull()
    expect(resistivityInterval([90, 110, 100], [])).toBeNull()
    expect(resistivityInterval([90, 110], [100])).not.toBeNull()
  })
})

describe('strengthInterval near a leading term of zero', () => {
  // b² = t² vb: the mean of 0 and 2 is 1, its variance 1, and t of one degree of freedom is 1 at the level 0.5. The
  // half-line begins where 2abρ = a²: ρ = 10/2 = 5.
  it('is the half-line from 500 % on', () => {
    expect(strengthInterval([10, 10], [0, 2], 0.5)).toEqual({
      level: 0.5,
      method: 'fieller',
      df: 1,
      shape: 'above',
      low: 500,
      high: null,
    })
  })

  it('keeps the digits of the root near 500 % just beside it, where the other lies far out', () => {
    const [beyond, short] = [0.5000001, 0.4999999].map((level) => strengthInterval([10, 10], [0, 2], level))
    expect([beyond?.shape, short?.shape]).toEqual(['outside', 'bounded'])
    expect(beyond?.high).toBeCloseTo(500, 3)
    expect(short?.low).toBeCloseTo(500, 3)
  })

  it('without any scatter is the ratio itself, to the last digit', () => {
    const found = strengthInterval([30.1, 30.1], [41.3, 41.3])
    expect([found?.low, found?.high]).toEqual([(100 * 30.1) / 41.3, (100 * 30.1) / 41.3])
  })
})
