import { describe, expect, it } from 'vitest'
import { varianceComponents } from '../../../src/core/statistics/variance-components.ts'
import { publishedCases } from '../values.ts'

// ASTM E691-99, glucose in serum: eight laboratories with three results each are batches of one group, so
// that s_r is the root
// of the mean square within and s_R² = s_r² + s_L², where a negative s_L² counts as nought (material A).
describe('ASTM E691, glucose in serum', () => {
  it.each(publishedCases('ils-e691'))(
    '$title: s_r, s_L² and s_R are the printed ones',
    ({ inputs, expected, tolerance }) => {
      const cells = inputs['cells'] as number[][]
      const found = varianceComponents(cells.map((values) => ({ group: 'material', values })))
      if (found === null)
        throw new RangeError('varianceComponents needs to find both kinds of scatter in eight cells of three')
      const own = {
        s_r: Math.sqrt(found.within.meanSquare),
        s_L2_before_clipping: found.betweenVariance,
        s_R: Math.sqrt(found.within.meanSquare + Math.max(0, found.betweenVariance)),
      }
      for (const [key, value] of Object.entries(own))
        expect(Math.abs(value - (expected[key] as number))).toBeLessThanOrEqual(
          tolerance['statistics_abs'] ?? 0,
        )
      expect(found.perBatch).toBeCloseTo(3, 12)
      const printed = expected['published_precision_table_4_decimals'] as Record<string, number> | null
      // The raw table of material C, before the clerical correction, has no printed line.
      for (const key of ['s_r', 's_R'] as const)
        if (printed !== null)
          expect(Math.abs(own[key] - (printed[key] ?? NaN))).toBeLessThanOrEqual(
            tolerance['published_s_abs'] ?? 0,
          )
    },
  )
})
