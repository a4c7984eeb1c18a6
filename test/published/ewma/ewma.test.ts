import { describe, expect, it } from 'vitest'
import { ewma, steadyLimits } from '../../../src/core/statistics/ewma.ts'

// NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4: data, averages and limits as printed; the printed limits use the
// truncated factor 0.4201. Limits of the first points: Python arithmetic.
const DATA = [
  52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4,
  53.6, 52.1,
]
const PRINTED = [
  50.6, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38,
  49.92, 50.73, 51.23, 51.94, 51.99,
]
const FIRST_LIMITS = [
  [48.15149, 51.84851],
  [47.74360599, 52.25639401],
  [47.56859443, 52.43140557],
]
const DESIGN = { centre: 50, sigma: 2.0539, lambda: 0.3, width: 3 }

describe('ewma, the example of the handbook', () => {
  const points = ewma(DATA, DESIGN)

  it('has the 20 printed averages', () => {
    for (const [place, { value }] of points.entries())
      expect(Math.abs(value - (PRINTED[place] ?? Number.NaN))).toBeLessThanOrEqual(0.0051)
  })

  it('has the printed limits in the long run', () => {
    const { low, high } = steadyLimits(DESIGN)
    expect(Math.abs(high - 52.5884)).toBeLessThanOrEqual(0.001)
    expect(Math.abs(low - 47.4115)).toBeLessThanOrEqual(0.001)
  })

  it('has closer limits at the first points', () => {
    for (const [place, [low, high]] of FIRST_LIMITS.entries()) {
      expect(points[place]?.low).toBeCloseTo(low ?? Number.NaN, 6)
      expect(points[place]?.high).toBeCloseTo(high ?? Number.NaN, 6)
    }
  })

  it('stays within its limits', () =>
    expect(points.every(({ value, low, high }) => low <= value && value <= high)).toBe(true))
})
