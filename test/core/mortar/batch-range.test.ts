import { describe, expect, it } from 'vitest'
import { judgeBatch } from '../../../src/core/mortar/batch-range.ts'

const CUBES = [
  { of: 3, rangePercent: 8.7 },
  { of: 2, rangePercent: 7.6 },
]
const HALF_PRISMS = [
  { of: 6, withinPercent: 10 },
  { of: 5, withinPercent: 10 },
]

describe('judgeBatch, range of three and two cubes', () => {
  // Worked by hand: mean 125.5/3, range 4.5 is 10.757 %; 44.5 is dropped; 40.0 and 41.0: range 1.0 is 2.469 %
  // of 40.5.
  it('drops the cube farthest from the mean and keeps the rest: 40.0, 41.0, 44.5', () => {
    const batch = judgeBatch([40, 41, 44.5], CUBES)
    expect(batch).toMatchObject({ kept: [0, 1], dropped: [2], mean: 40.5, valid: true })
    expect(batch.steps.map((step) => Number(step.percent.toFixed(3)))).toEqual([10.757, 2.469])
  })
  it('is not valid when the two left are too far apart as well: 36, 40, 45', () => {
    expect(judgeBatch([36, 40, 45], CUBES)).toMatchObject({ valid: false, dropped: [] })
  })
  it('keeps a batch on the very limit: mean 100, range 8.7', () => {
    expect(judgeBatch([95.65, 100, 104.35], CUBES)).toMatchObject({ valid: true, dropped: [] })
    expect(judgeBatch([95.64, 100, 104.36], CUBES).dropped).toHaveLength(1)
  })
  it('cannot drop one of two, and cannot check one alone', () => {
    expect(judgeBatch([40, 44], CUBES)).toMatchObject({ valid: false, dropped: [] })
    expect(judgeBatch([40], CUBES)).toMatchObject({ valid: true, mean: 40, steps: [] })
  })
  it('does not depend on the unit', () => {
    const psi = judgeBatch(
      [40, 41, 44.5].map((value) => value * 145.0377),
      CUBES,
    )
    expect(psi.kept).toEqual([0, 1])
  })
})

describe('judgeBatch, distance from the mean of six', () => {
  // Worked by hand: mean of 50, 50, 50, 50, 50, 40 is 48.333; 40 lies 17.24 % below; the mean of the five
  // others is 50.
  it('drops one half prism beyond 10 % and takes the mean of five', () => {
    expect(judgeBatch([50, 50, 50, 50, 50, 40], HALF_PRISMS)).toMatchObject({
      valid: true,
      mean: 50,
      dropped: [5],
    })
  })
  it('is not valid when a second one is beyond: 50, 50, 50, 50, 60, 30', () => {
    expect(judgeBatch([50, 50, 50, 50, 62, 30], HALF_PRISMS).valid).toBe(false)
  })
})

describe('judgeBatch, very limits and ties', () => {
  it('keeps a half prism at the very distance, 10 % of the mean, and drops one beyond it', () => {
    const six = (far: number) => judgeBatch([100, 100, 100, 100, 100, far], HALF_PRISMS)
    // Mean (500 + x)/6: x stands at 110 % of it for x = 550/4.9 = 112.2449, at 90 % for x = 450/5.1 = 88.2353.
    expect([six(112.2).dropped, six(112.3).dropped]).toEqual([[], [5]])
    expect([six(88.3).dropped, six(88.2).dropped]).toEqual([[], [5]])
  })
  it('says what it checked: the measure, its size, the limit, and whether it was kept', () => {
    // Mean 300.5/3, range 10.5: 10.48 %. The last lies farthest off; 95 and 100 are 5.13 % apart.
    expect(judgeBatch([95, 100, 105.5], CUBES).steps).toMatchObject([
      { of: 3, limit: 8.7, measure: 'range', kept: false },
      { of: 2, limit: 7.6, measure: 'range', kept: true },
    ])
    const [step] = judgeBatch([50, 50, 50, 50, 50, 56], HALF_PRISMS).steps
    expect(step).toMatchObject({ of: 6, limit: 10, measure: 'distance', kept: true })
    // Mean 51: the farthest lies 5 from it.
    expect(step?.percent).toBeCloseTo(500 / 51, 10)
  })
  it('drops the first of two that lie equally far from the mean', () => {
    expect(judgeBatch([90, 100, 110], [{ of: 3, rangePercent: 8.7 }])).toMatchObject({
      dropped: [0],
      kept: [1, 2],
      mean: 105,
      valid: true,
    })
  })
  it('takes distances that differ by a millionth of a millionth for equal, and no more', () => {
    // Mean 2: the first lies 1 below it, the second 1 and a trace above it.
    const apart = (trace: number) => judgeBatch([1, 3 + trace, 2 - trace], [{ of: 3, rangePercent: 8.7 }])
    expect([apart(1e-12).dropped, apart(2e-12).dropped]).toEqual([[0], [1]])
  })
  it('drops the one farthest below as well as above', () => {
    expect(judgeBatch([35.5, 40, 41], CUBES)).toMatchObject({ dropped: [0], kept: [1, 2], mean: 40.5 })
    expect(judgeBatch([40, 35.5, 41], CUBES)).toMatchObject({ dropped: [1], kept: [0, 2] })
  })
  it('keeps the rest unchecked where no rule speaks of so few', () => {
    expect(judgeBatch([30, 40, 41], [{ of: 3, rangePercent: 8.7 }])).toMatchObject({
      valid: true,
      mean: 40.5,
      steps: [{ of: 3 }],
    })
  })
  it('checks nothing by a rule without a figure', () => {
    expect(judgeBatch([10, 100], [{ of: 2 }])).toMatchObject({ valid: true, mean: 55 })
  })
  it('shows the mean of all where none can be dropped', () => {
    expect(judgeBatch([36, 40, 45], CUBES)).toMatchObject({ kept: [0, 1, 2], steps: [{ of: 3 }, { of: 2 }] })
    expect(judgeBatch([36, 40, 45], CUBES).mean).toBeCloseTo(121 / 3, 12)
    expect(judgeBatch([40, 44], CUBES)).toMatchObject({ kept: [0, 1], mean: 42, steps: [{ kept: false }] })
  })
})

describe('judgeBatch, numbers without a rule', () => {
  it('tells the number that there is no rule for: four cubes under rules for three and two', () => {
    expect(judgeBatch([20, 80, 140, 80], CUBES)).toMatchObject({ valid: true, unchecked: 4, steps: [] })
  })
  it('tells it of those left after a drop as well', () => {
    expect(judgeBatch([40, 41, 44.5], CUBES.slice(0, 1))).toMatchObject({ dropped: [2], unchecked: 2 })
  })
  it('tells nothing where there is a rule, where there are none, and of one specimen', () => {
    for (const batch of [judgeBatch([40, 41, 42], CUBES), judgeBatch([20, 80], []), judgeBatch([40], CUBES)])
      expect(batch).not.toHaveProperty('unchecked')
  })
})
