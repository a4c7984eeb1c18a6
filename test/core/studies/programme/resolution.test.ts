/** Expected figures are scipy's: `oracle.py` beside this file. */
import { describe, expect, it } from 'vitest'
import { designResolution } from '../../../../src/core/studies/programme/design-resolution.ts'
import {
  deviationFactors,
  effectHalfWidth,
  logDeviation,
  meanHalfWidth,
  smallestShift,
} from '../../../../src/core/studies/programme/resolution.ts'
import { tPower } from '../../../../src/core/statistics/t-power.ts'
import { tinyProgramme } from './tiny-programme.ts'

describe('smallestShift', () => {
  it.each([
    [2, 6, 0.95, 0.8, 3.366894897085023],
    [3, 34, 0.95, 0.8, 2.3546853987169536],
    [3, 4, 0.95, 0.9, 3.589205514121023],
    [2, 2, 0.95, 0.8, 5.653489266197127],
    [10, 200, 0.99, 0.95, 1.903385922660224],
  ])('with %i batches and %i degrees of freedom at %f, seen in %f', (batches, df, level, power, expected) => {
    expect(smallestShift({ batches, df, level, power })).toBeCloseTo(expected, 9)
  })
  it('is what a t test of the two materials alone sees so often', () => {
    const shift = smallestShift({ batches: 4, df: 6, level: 0.95, power: 0.8 })
    expect(tPower({ first: 4, second: 4, level: 0.05, shift })).toBeCloseTo(0.8, 8)
  })
})

describe('half widths', () => {
  it('of a mean', () => {
    expect(meanHalfWidth(2, 6, 0.95)).toBeCloseTo(1.730227962910342, 9)
    expect(meanHalfWidth(3, 34, 0.95)).toBeCloseTo(1.1733169145137239, 9)
  })
  it('of an effect', () => {
    expect(effectHalfWidth(24, 88, 0.95)).toBeCloseTo(0.8113076899734862, 9)
    expect(effectHalfWidth(16, 8, 0.95)).toBeCloseTo(1.153002067602083, 9)
  })
})

describe('deviationFactors', () => {
  it.each([
    [1, 0.4461491849207089, 31.91015934964397],
    // Six laboratories: 0.62 to 2.45.
    [5, 0.6242080022589825, 2.4526139885482974],
    [11, 0.7083951508622659, 1.697878017724006],
  ])('with %i degrees of freedom', (df, low, high) => {
    const found = deviationFactors(df, 0.95)
    expect(found[0]).toBeCloseTo(low, 7)
    expect(found[1]).toBeCloseTo(high, 6)
  })
})

describe('logDeviation', () => {
  it.each([
    [0.02, 0.01999800043313816],
    [0.05, 0.04996879224663376],
    [0.3, 0.29356037920852235],
  ])('of %f', (share, expected) => {
    expect(logDeviation(share)).toBeCloseTo(expected, 9)
  })
})

describe('designResolution', () => {
  const asked = {
    classes: new Map([['Q', 'inert'] as const, ['L', 'inert'] as const, ['A', 'reactive'] as const]),
    assumed: new Map([['strength-activity-index', 0.02] as const]),
    ...{ level: 0.95, power: 0.8, hasTwoLevels: false },
  }
  it('pools over the materials of the condition with fewest', () => {
    const leftOut = [{ materials: ['L'], conditions: ['R50'] }]
    expect(designResolution(tinyProgramme(), asked).df).toBe(3)
    expect(designResolution(tinyProgramme({ leftOut }), asked).df).toBe(2)
    expect(designResolution(tinyProgramme({ leftOut, batches: 4 }), asked).df).toBe(6)
  })
  it('is the shift times the scatter, as a ratio', () => {
    const leftOut = [{ materials: ['L'], conditions: ['R50'] }]
    const [route] = designResolution(tinyProgramme({ leftOut }), asked).routes
    expect(route?.smallestRatio).toBeCloseTo(Math.exp(5.653489266197127 * 0.01999800043313816), 7)
    expect(route?.effectRatio).toBeNull()
  })
  it('reckons no scatter from one batch, and still says what no error would allow', () => {
    const found = designResolution(tinyProgramme({ batches: 1 }), asked)
    expect(found.routes).toEqual([])
    // scipy.stats.beta.ppf(0.95, 1, n): 1 − 0.05^(1/n).
    expect(found.noErrors).toMatchObject([
      { class: 'inert', n: 2 },
      { class: 'reactive', n: 1 },
    ])
    expect(found.noErrors[0]?.share).toBeCloseTo(1 - Math.sqrt(0.05), 10)
    expect(found.noErrors[1]?.share).toBeCloseTo(0.95, 10)
  })
  it('has one degree of freedom less than laboratories, and none to speak of for one', () => {
    const laboratories = ['1', '2', '3', '4', '5', '6']
    expect(designResolution(tinyProgramme({ laboratories }), asked).laboratories).toMatchObject({
      n: 6,
      df: 5,
    })
    expect(designResolution(tinyProgramme(), asked).laboratories).toBeNull()
  })
})
