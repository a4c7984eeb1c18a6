import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import { deviationFrom, meanOfPreceding } from '../../../src/core/judging/deviation.ts'

const preceding = (...values: number[]) =>
  values.map((value, place) => ({ lot: `s/${place}`, sampled: readMoment('2025-01-01'), value }))

describe('meanOfPreceding and deviationFrom', () => {
  it('meanOfPreceding is the plain mean, and null without any result', () => {
    expect(meanOfPreceding(preceding(1, 2, 6))).toBe(3)
    expect(meanOfPreceding(preceding(7))).toBe(7)
    expect(meanOfPreceding([])).toBeNull()
  })

  it('deviationFrom is signed, in points or in per cent of the reference', () => {
    expect(deviationFrom(18, 20, 'points')).toBe(-2)
    expect(deviationFrom(18, 20, 'relative')).toBe(-10)
  })

  it('deviationFrom a reference of zero has no relative value', () => {
    expect(deviationFrom(1, 0, 'relative')).toBeNull()
    expect(deviationFrom(1, 0, 'points')).toBe(1)
  })
})
