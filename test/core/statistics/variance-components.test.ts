import { randomLcg, randomNormal } from 'd3'
import { describe, expect, it } from 'vitest'
import { varianceComponents } from '../../../src/core/statistics/variance-components.ts'

describe('varianceComponents', () => {
  it('pools batches of unequal size within groups, hand-worked in fractions', () => {
    // Group A: batches (1, 3) and (5): means 2 and 5, mean of all 3, so 2·1 + 1·4 = 6 between and 1 + 1 = 2
    // within.
    // Group B: batches (10, 12) and (10, 14): means 11 and 12, mean of all 23/2, so 2·1/4 + 2·1/4 = 1 between
    // and 2 + 8 = 10 within.
    // Within 12 over 1 + 1 + 1 = 3, between 7 over 2; sizes 3 − 5/3 = 4/3 and 4 − 8/4 = 2, together 10/3 over
    // 2 = 5/3.
    const found = varianceComponents([
      { group: 'A', values: [1, 3] },
      { group: 'B', values: [10, 12] },
      { group: 'A', values: [5] },
      { group: 'B', values: [10, 14] },
      { group: 'B', values: [] },
    ])
    expect(found?.within).toEqual({ meanSquare: 4, df: 3 })
    expect(found?.between.df).toBe(2)
    expect(found?.between.meanSquare).toBeCloseTo(7 / 2, 12)
    expect(found?.perBatch).toBeCloseTo(5 / 3, 12)
    expect(found?.betweenVariance).toBeCloseTo(-3 / 10, 12)
  })

  it('gives nothing without a degree of freedom of both kinds', () => {
    expect(varianceComponents([])).toBeNull()
    expect(varianceComponents([{ group: 'A', values: [1, 2, 3] }])).toBeNull()
    expect(
      varianceComponents([
        { group: 'A', values: [1] },
        { group: 'A', values: [2] },
      ]),
    ).toBeNull()
    expect(
      varianceComponents([
        { group: 'A', values: [1, 2] },
        { group: 'B', values: [2, 4] },
      ]),
    ).toBeNull()
  })

  it('does not move when every value of a group is shifted', () => {
    const batches = [
      { group: 'A', values: [1, 3] },
      { group: 'A', values: [5, 4] },
      { group: 'B', values: [9, 7] },
      { group: 'B', values: [8] },
    ]
    const shifted = batches.map(({ group, values }) => ({
      group,
      values: values.map((value) => value + (group === 'B' ? 100 : 0)),
    }))
    expect(varianceComponents(shifted)?.betweenVariance).toBeCloseTo(
      varianceComponents(batches)?.betweenVariance ?? NaN,
      10,
    )
  })

  it('finds the deviations that simulated batches were made with, fixed seed', () => {
    const normal = randomNormal.source(randomLcg(0.75))(0, 1)
    const batches = Array.from({ length: 4000 }, (_, place) => {
      const batch = 2 * normal()
      return {
        group: `group ${place % 50}`,
        values: Array.from({ length: 2 + (place % 3) }, () => batch + 3 * normal()),
      }
    })
    // Standard error of a deviation, s / √(2 df): 0.024 within (8,000 degrees); between, 0.05 from both mean
    // squares.
    const found = varianceComponents(batches)
    expect(Math.abs(Math.sqrt(found?.within.meanSquare ?? NaN) - 3)).toBeLessThan(0.08)
    expect(Math.abs(Math.sqrt(found?.betweenVariance ?? NaN) - 2)).toBeLessThan(0.16)
  })
})
