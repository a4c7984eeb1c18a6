import { describe, expect, it } from 'vitest'
import { variabilityOf } from '../../../src/core/judging/variability.ts'
import { onlyCase } from '../values.ts'

// Li and Cardozo (1994), J. AOAC Int. 77, 687-689: nine laboratories in duplicate. The statistics were computed with
// numpy, the testing error with d2 rounded to 1.128 where it is 2/√π = 1.128379 here.
describe('variabilityOf, duplicates of nine laboratories', () => {
  const { inputs, expected, tolerance } = onlyCase('duplicates-variance')
  const pairs = inputs['duplicates'] as [number, number][]
  const found = variabilityOf(
    pairs.map(([first]) => first),
    pairs.map(([first, second]) => first - second),
  )
  const [error, corrected] = [found.testing?.error ?? Number.NaN, found.testing?.corrected ?? Number.NaN]
  const agrees = (value: number, key: string) =>
    expect(Math.abs(value / (expected[key] as number) - 1)).toBeLessThanOrEqual(tolerance['rel'] ?? 0)

  it('has the scatter of the first results', () => agrees(found.standardDeviation, 'sd_of_first_results'))

  it('has the testing error of the average range, by d2 as it is', () => {
    const d2 = 2 / Math.sqrt(Math.PI)
    agrees(error * d2, 'average_range')
    agrees((error * d2) / 1.128, 's_test_range_over_1.128')
  })

  it('takes the whole testing variance out of the scatter of first results', () => {
    const roundedError = (error * 2) / Math.sqrt(Math.PI) / 1.128
    agrees(
      Math.sqrt(corrected ** 2 + error ** 2 - roundedError ** 2),
      'corrected_sd_of_first_results_using_range',
    )
  })
})
