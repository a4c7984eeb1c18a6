import { describe, expect, it } from 'vitest'
import {
  errorCurve,
  roundThresholds,
  thresholdRange,
} from '../../../../src/core/studies/screening/error-curve.ts'
import type { ConditionMeans, MaterialMean } from '../../../../src/core/studies/screening/material-means.ts'

const mean = (material: string, value: number, above = false): MaterialMean => ({
  material,
  class: material.startsWith('I') ? 'inert' : material.startsWith('W') ? 'weak' : 'reactive',
  n: 3,
  restsOn: 3,
  value,
  above,
  censored: 0,
  interval: null,
})
const of = (...means: MaterialMean[]): ConditionMeans => ({ means, between: null, level: 0.95 })
const ASKED = { batches: 3, level: 0.95 }

describe('errorCurve', () => {
  const curve = errorCurve(
    of(mean('I1', 60), mean('I2', 70), mean('W1', 75), mean('R1', 90), mean('R2', 100, true)),
    ASKED,
    { from: 50, to: 200, points: 3 },
  )
  const at = (threshold: number) => curve.find((one) => one.threshold === threshold)

  it('holds both ends, equal ratios and both sides of each inert and reactive index', () => {
    const above = (value: number) => value * (1 + Number.EPSILON)
    expect(curve.map(({ threshold }) => threshold)).toEqual(
      [50, 60, above(60), 70, above(70), 90, above(90), 100, above(100), 200].filter(
        (value, place, all) => all.indexOf(value) === place,
      ),
    )
  })
  it('lets a material pass at its index, and fail just above it', () => {
    expect(at(60)?.inert.wrong).toEqual(['I1', 'I2'])
    expect(at(60 * (1 + Number.EPSILON))?.inert.wrong).toEqual(['I2'])
    expect(at(90)?.reactive.wrong).toEqual([])
    expect(at(90 * (1 + Number.EPSILON))?.reactive.wrong).toEqual(['R1'])
  })
  // None of two: 1 − 0.05^(1/2) = 0.776393; one of two: the root of 1 − p² = 0.05, 0.974679.
  it('bounds what a new material would do', () => {
    expect(at(90)?.inert.newMaterial).toBeCloseTo(1 - Math.sqrt(0.05), 9)
    expect(at(70)?.inert.newMaterial).toBeCloseTo(Math.sqrt(0.95), 9)
  })
  it('leaves a material open above the bound that it is known to exceed', () => {
    expect(at(200)?.reactive).toMatchObject({ wrong: ['R1'], undecided: ['R2'], newMaterial: 1 })
  })
  it('never rises for inert materials, nor falls for reactive ones', () => {
    const inert = curve.map((one) => one.inert.newMaterial)
    const reactive = curve.map((one) => one.reactive.newMaterial)
    expect(inert).toEqual(inert.toSorted((a, b) => b - a))
    expect(reactive).toEqual(reactive.toSorted((a, b) => a - b))
  })
  it('refuses a condition without one of the classes', () => {
    expect(() => errorCurve(of(mean('I1', 60)), ASKED, { from: 50, to: 70, points: 2 })).toThrow(RangeError)
  })
})

describe('roundThresholds', () => {
  const means = of(mean('I1', 66), mean('W1', 20), mean('R1', 110))
  // From 66/1.1 = 60 to 110 · 1.1 = 121.
  it('holds the multiples of the step over the range, and the threshold that was set', () => {
    expect(thresholdRange(means, null).map(Math.round)).toEqual([60, 121])
    expect(roundThresholds(means, null, 20)).toEqual([60, 80, 100, 120])
    expect(roundThresholds(means, 83, 20)).toEqual([60, 80, 83, 100, 120])
  })
  it('takes wider multiples where there would be too many', () => {
    // 61 steps of 1 % over 16 is 3.8: every fourth.
    expect(roundThresholds(means, null, 1).slice(0, 3)).toEqual([60, 64, 68])
  })
})
