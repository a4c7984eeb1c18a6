import { describe, expect, it } from 'vitest'
import { activityIndex } from '../../../src/core/strength/activity-index.ts'
import { mean } from '../../../src/core/statistics/descriptive.ts'
import { publishedCases } from '../values.ts'

// Hauschke 1999 (serum ASAT, data of the R package mratios) and a worked case of three cubes against three:
// the ratio of means itself.
describe('ratio of means', () => {
  it.each(publishedCases('ratio-of-means'))(
    '$title: the index is the ratio in per cent',
    ({ inputs, expected }) => {
      const ratio = activityIndex(
        mean(inputs['numerator'] as number[]),
        mean(inputs['denominator'] as number[]),
      )
      expect(Math.abs(ratio / (expected['ratio_percent'] as number) - 1)).toBeLessThan(1e-7)
    },
  )
})
