import { describe, expect, it } from 'vitest'
import { varianceComponents } from '../../../src/core/statistics/variance-components.ts'
import { onlyCase } from '../values.ts'

// Li and Cardozo (1994), J. AOAC Int. 77, 687-689: dietary fibre in apricots, nine laboratories in duplicate.
// The testing error from
// duplicates and the spread of laboratories' means were computed from the published results with numpy.
describe('duplicates of nine laboratories', () => {
  const { inputs, expected, tolerance } = onlyCase('duplicates-variance')
  const duplicates = inputs['duplicates'] as [number, number][]
  const found = varianceComponents(duplicates.map((values) => ({ group: 'apricots', values })))
  const agrees = (value: number, key: string) => {
    expect(Math.abs(value / (expected[key] as number) - 1)).toBeLessThanOrEqual(tolerance['rel'] ?? 0)
  }

  it('give the pooled testing error as the deviation within', () =>
    agrees(Math.sqrt(found?.within.meanSquare ?? NaN), 's_test_pooled'))

  it('give the spread of the means as the mean square between over two values each', () =>
    agrees(Math.sqrt((found?.between.meanSquare ?? NaN) / 2), 'sd_of_lot_means'))

  it('give between laboratories what the spread of the means holds beyond half of the testing error’s variance', () => {
    const [means, test] = [expected['sd_of_lot_means'] as number, expected['s_test_pooled'] as number]
    expect(found?.betweenVariance).toBeCloseTo(means ** 2 - test ** 2 / 2, 8)
  })
})
