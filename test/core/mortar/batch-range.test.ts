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
    expect(judgeBatch([40, 44], CUBES)).toMatchObject({ valid: false })
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
