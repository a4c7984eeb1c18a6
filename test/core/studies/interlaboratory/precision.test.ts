import { describe, expect, it } from 'vitest'
import { precision } from '../../../../src/core/studies/interlaboratory/precision.ts'
import { chanceError, normal, shareOf } from '../../simulation/chance.ts'

const cells = (...all: number[][]) => all.map((values, place) => ({ laboratory: String(place + 1), values }))

describe('precision', () => {
  // Two laboratories, two results each: within 2 and 2, s_r² = 2; means 1 and 5, s_x̄² = 8; s_L² = 8 − 2/2 = 7; s_R² = 9.
  it('gives s_r, s_L² and s_R of two laboratories worked by hand', () => {
    const found = precision(cells([0, 2], [4, 6]), 0.95)
    expect(found).toMatchObject({
      laboratories: 2,
      results: 4,
      mean: 3,
      betweenVariance: 7,
      df: { within: 2, between: 1 },
    })
    if (typeof found === 'string') throw new RangeError(found)
    expect(found.repeatability.value ** 2).toBeCloseTo(2, 12)
    expect(found.reproducibility.value).toBeCloseTo(3, 12)
    expect(found.reproducibilityLimit).toBeCloseTo(8.4, 12)
  })
  it('takes s_R as s_r where the means lie closer than their own scatter', () => {
    const found = precision(cells([0, 4], [0, 4], [1, 3]), 0.95)
    if (typeof found === 'string') throw new RangeError(found)
    expect(found.betweenVariance).toBeLessThan(0)
    expect(found.reproducibility.value).toBe(found.repeatability.value)
  })
  it('says why there is none', () => {
    expect(precision(cells([1, 2]), 0.95)).toBe('one-laboratory')
    expect(precision(cells([1], [2], [3]), 0.95)).toBe('no-replicates')
    expect(precision(cells([5, 5], [5, 5]), 0.95)).toBe('all-equal')
  })
  it('leaves a laboratory without a result out', () => {
    expect(precision(cells([0, 2], [], [4, 6]), 0.95)).toMatchObject({ laboratories: 2 })
  })
  // √(5/χ²) of five degrees of freedom: 0.624 and 2.453, from printed chi-square tables (12.83 and 0.831).
  it('six laboratories give s_R × 0.62 to 2.45 where nothing lies within them', () => {
    const far = cells([0, 1e-9], [1, 1 + 1e-9], [2, 2 + 1e-9], [3, 3 + 1e-9], [4, 4 + 1e-9], [5, 5 + 1e-9])
    const found = precision(far, 0.95)
    if (typeof found === 'string') throw new RangeError(found)
    const { value, low, high } = found.reproducibility
    expect(low / value).toBeCloseTo(0.62, 2)
    expect(high / value).toBeCloseTo(2.45, 2)
  })
  it.each([0.2, 1, 3])('covers s_R in 95 % of rounds, between laboratories %f times within', (ratio) => {
    const next = normal(71)
    const truth = Math.sqrt(1 + ratio * ratio)
    const covered = shareOf(1500, () => {
      const round = Array.from({ length: 6 }, () => {
        const own = ratio * next()
        return [own + next(), own + next(), own + next()]
      })
      const found = precision(cells(...round), 0.95)
      return (
        typeof found !== 'string' && found.reproducibility.low <= truth && truth <= found.reproducibility.high
      )
    })
    // The method keeps its level or a little more.
    expect(covered).toBeGreaterThan(0.95 - chanceError(0.95, 1500))
    expect(covered).toBeLessThan(0.985)
  })
})
