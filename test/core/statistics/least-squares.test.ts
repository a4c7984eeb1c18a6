import { describe, expect, it } from 'vitest'
import { correlationOfNeighbours, lag1 } from '../../../src/core/statistics/autocorrelation.ts'
import { cumulative } from '../../../src/core/statistics/distributions.ts'
import { correlated } from '../../../src/core/statistics/false-alarms.ts'
import {
  correlationProbability,
  lineThrough,
  predicted,
  slopeInterval,
} from '../../../src/core/statistics/least-squares.ts'
import { normal, shareOf } from '../simulation/chance.ts'

// Expected values by scipy.stats.linregress 1.17.1 on the data of the NIST/SEMATECH e-Handbook, 6.3.2.4.
const Y = [
  52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4,
  53.6, 52.1,
]
const X = Y.map((_, place) => place)

describe('lineThrough', () => {
  const line = lineThrough(X, Y)

  it('has slope, correlation and interval', () => {
    expect(line.slope).toBeCloseTo(0.11781954887218049, 11)
    expect(line.r).toBeCloseTo(0.35399416843341724, 11)
    expect(slopeInterval(line, 0.95)).toMatchObject({ df: 18 })
    expect(slopeInterval(line, 0.95).half).toBeCloseTo(0.15414219837167142, 9)
    expect(correlationProbability(line.r ?? 0, 20, cumulative)).toBeCloseTo(0.125706701381721, 9)
  })

  it('has, of residuals that are alike, the interval that the page on methods gives: Student on n′ − 2', () => {
    // ρ = 0.25: 20 points are worth 20 (1 − 0.25)/(1 + 0.25) = 12; 2.2281388519649385 is Student's 97.5 % point on 10.
    const squares = line.residuals.reduce((sum, one) => sum + one * one, 0)
    const { half, df } = slopeInterval(line, 0.95, 0.25)
    expect(df).toBeCloseTo(10, 12)
    expect(half).toBeCloseTo(2.2281388519649385 * Math.sqrt(squares / 10 / line.squaresX), 10)
  })

  it('foretells a new point with its interval', () => {
    expect(predicted(line, 25, 0.95).value).toBeCloseTo(52.2912030075188, 9)
    expect(predicted(line, 25, 0.95).half).toBeCloseTo(4.722138133699852, 8)
  })

  it('by hand: 1, 2, 4 at 0, 1, 2 rise by 1.5', () => {
    const small = lineThrough([0, 1, 2], [1, 2, 4])
    expect(small.slope).toBe(1.5)
    // Residuals 1/6, −1/3, 1/6: squares sum to 1/6 with one degree of freedom.
    expect(small.residualDeviation).toBeCloseTo(Math.sqrt(1 / 6), 12)
  })

  it('has residuals that sum to zero', () =>
    expect(line.residuals.reduce((sum, one) => sum + one, 0)).toBeCloseTo(0, 10))

  it('needs three points with different x', () => {
    expect(() => lineThrough([1, 2], [1, 2])).toThrow(RangeError)
    expect(() => lineThrough([1, 1, 1], [1, 2, 3])).toThrow(RangeError)
  })
})

describe('slopeInterval of a level series', () => {
  /** Share of intervals that leave out zero though there is no trend, of series with that correlation. */
  function falseTrends(phi: number, points: number): number {
    const draw = normal(7)
    const places = Array.from({ length: points }, (_, place) => place)
    return shareOf(2000, () => {
      const line = lineThrough(places, correlated(phi, points, draw))
      const found = correlationOfNeighbours(lag1(line.residuals) ?? 0, points, 2)
      return slopeInterval(line, 0.95, found).half < Math.abs(line.slope)
    })
  }

  it.each([
    [0, 12],
    [0, 30],
    [0, 100],
    [0.4, 30],
    [0.4, 100],
  ])(
    'of correlation %d and %d points leaves out zero in one of twenty, at most a little more',
    (phi, points) => expect(falseTrends(phi, points)).toBeLessThan(0.09),
  )

  it('would do so in a fifth of correlated series without the correction', () => {
    const draw = normal(7)
    const places = Array.from({ length: 30 }, (_, place) => place)
    const share = shareOf(2000, () => {
      const line = lineThrough(places, correlated(0.4, 30, draw))
      return slopeInterval(line, 0.95).half < Math.abs(line.slope)
    })
    expect(share).toBeGreaterThan(0.15)
  })
})
