import { describe, expect, it } from 'vitest'
import { individualsLimits } from '../../../src/core/statistics/individuals-chart.ts'

// NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2: data read, limits from memory and reproduced with 3/1.128; the
// exact d2 gives 55.80241.
const DATA = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1]

describe('individualsLimits, the example of the handbook', () => {
  const found = individualsLimits(DATA)

  it('has the printed centre and mean moving range', () => {
    expect(found.centre).toBeCloseTo(50.81, 10)
    expect(Math.abs(found.meanMovingRange - 1.8778)).toBeLessThanOrEqual(0.00005)
  })

  it('has the limits of the exact constant', () => expect(found.high).toBeCloseTo(55.80241168, 7))

  it('has the printed limits with the printed constant', () => {
    const printed = (found.sigma * 2) / Math.sqrt(Math.PI) / 1.128
    expect(Math.abs(found.centre + 3 * printed - 55.8041)).toBeLessThanOrEqual(0.0006)
    expect(Math.abs(found.centre - 3 * printed - 45.8159)).toBeLessThanOrEqual(0.0006)
  })
})
