import { describe, expect, it } from 'vitest'
import { cellFigures } from '../../../src/core/studies/interlaboratory/cells.ts'
import { consistency, criticalH, criticalK } from '../../../src/core/studies/interlaboratory/consistency.ts'
import { cochran, grubbs } from '../../../src/core/studies/interlaboratory/outliers.ts'
import { precision } from '../../../src/core/studies/interlaboratory/precision.ts'
import { publishedCases } from '../values.ts'

// ASTM E691-99, glucose in serum: eight laboratories, five materials, three results a cell.
describe.each(publishedCases('ils-e691'))('ASTM E691, $title', ({ inputs, expected, tolerance }) => {
  const cells = (inputs['cells'] as number[][]).map((values, place) => ({
    laboratory: String(place + 1),
    values,
  }))
  const near = (value: number, wanted: unknown, within: string) =>
    expect(Math.abs(value - (wanted as number))).toBeLessThanOrEqual(tolerance[within] ?? 0)

  it('cellFigures gives the printed averages and deviations', () => {
    cellFigures(cells).forEach(({ mean, deviation }, place) => {
      near(mean, (expected['cell_averages'] as number[])[place], 'statistics_abs')
      near(deviation ?? NaN, (expected['cell_sd'] as number[])[place], 'statistics_abs')
    })
  })

  it('precision gives average, s_r, s_R, r and R', () => {
    const found = precision(cells, 0.95)
    if (typeof found === 'string') throw new RangeError(`precision needs to find figures, got ${found}`)
    near(found.mean, expected['average'], 'statistics_abs')
    near(found.deviationOfMeans, expected['s_xbar'], 'statistics_abs')
    near(found.repeatability.value, expected['s_r'], 'statistics_abs')
    near(found.reproducibility.value, expected['s_R'], 'statistics_abs')
    near(found.repeatabilityLimit, expected['r_limit_2_8'], 'statistics_abs')
    near(found.reproducibilityLimit, expected['R_limit_2_8'], 'statistics_abs')
    near(found.betweenVariance, expected['s_L2_before_clipping'], 'statistics_abs')
  })

  it('consistency gives h and k, beyond exactly where they exceed the printed 2.15 and 2.06', () => {
    const found = consistency(cells) ?? []
    expect(found).toHaveLength(8)
    found.forEach(({ h, k, hBeyond, kBeyond }, place) => {
      near(h, (expected['h'] as number[])[place], 'h_k_abs')
      near(k ?? NaN, (expected['k'] as number[])[place], 'h_k_abs')
      expect(hBeyond).toBe(2.15 < Math.abs((expected['h'] as number[])[place] ?? 0))
      expect(kBeyond).toBe(2.06 < ((expected['k'] as number[])[place] ?? 0))
    })
    near(criticalH(8, 0.005), expected['critical_h_0.5pct'], 'statistics_abs')
    near(criticalK(8, 3, 0.005), expected['critical_k_0.5pct'], 'statistics_abs')
  })

  it('cochran and grubbs give their statistics', () => {
    near(cochran(cells)?.statistic ?? NaN, expected['cochran_C'], 'statistics_abs')
    const [low, high] = grubbs(cells)
    near(low?.statistic ?? NaN, expected['grubbs_low'], 'statistics_abs')
    near(high?.statistic ?? NaN, expected['grubbs_high'], 'statistics_abs')
  })
})
