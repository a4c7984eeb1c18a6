import { describe, expect, it } from 'vitest'
import { criticalH, criticalK } from '../../../src/core/studies/interlaboratory/consistency.ts'
import { doubleGrubbsLimits } from '../../../src/core/studies/interlaboratory/double-grubbs-table.ts'
import { criticalCochran, criticalGrubbs } from '../../../src/core/studies/interlaboratory/outliers.ts'
import { onlyCase } from '../values.ts'

type Row = Record<string, number | Record<string, number>>

const { inputs, expected, tolerance } = onlyCase('ils-critical-values')
const within = (value: number, wanted: number) =>
  expect(Math.abs(value / wanted - 1)).toBeLessThanOrEqual(tolerance['rel'] ?? 0)

// Made with scipy's t and F, spot-checked with the R package outliers; the printed tables of ASTM E691 and ISO 5725-2
// round to two or three decimals (checkpoints from memory: h 2.15 and k 2.06 for eight laboratories and three results,
// Cochran 0.516 and 0.615 for the same, Grubbs 2.215 and 2.387 for nine).
describe.each(inputs['p'] as number[])('critical values for %i laboratories', (p) => {
  const row = expected[String(p)] as Row
  it.each(['0.5', '1', '5'])('criticalH at %s %', (level) => {
    within(criticalH(p, Number(level) / 100), row[`h_${level}pct`] as number)
  })
  it.each(['0.5', '1'])('criticalK at %s %', (level) => {
    for (const [n, wanted] of Object.entries(row[`k_${level}pct`] as Record<string, number>))
      within(criticalK(p, Number(n), Number(level) / 100), wanted)
  })
  it.each(['1', '5'])('criticalCochran and criticalGrubbs at %s %', (level) => {
    for (const [n, wanted] of Object.entries(row[`cochran_${level}pct`] as Record<string, number>))
      within(criticalCochran(p, Number(n), Number(level) / 100), wanted)
    within(criticalGrubbs(p, Number(level) / 100), row[`grubbs_${level}pct_two_sided`] as number)
  })
})

// 2.5 % points at one end, as printed by Grubbs and Beck 1972, Technometrics 14, 847-854, tabled by the R package
// outliers 0.15, R/qgrubbs.R (read); for 4 to 30 means, three or four decimals.
const GRUBBS_BECK =
  `0.0002 0.009 0.0349 0.0708 0.1101 0.1492 0.1865 0.2212 0.2536 0.2836 0.3112 0.3367 0.3603 0.3822 0.4025 0.4214 0.4391
  0.457 0.474 0.486 0.5 0.511 0.525 0.536 0.548 0.558 0.568`
    .split(/\s+/)
    .map(Number)

// Of the 1 % points over both ends those of ISO 5725-2, table 5, for 6 to 10 laboratories (from memory).
const ISO_1_PERCENT = { 6: 0.0116, 7: 0.0308, 8: 0.0563, 9: 0.0851, 10: 0.115 }

describe('doubleGrubbsLimits', () => {
  it.each(GRUBBS_BECK.slice(0, 17).map((wanted, place) => ({ means: place + 4, wanted })))(
    'agrees with the printed $wanted for $means means, to what both tables’ chance allows',
    ({ means, wanted }) => {
      // Both tables are simulated; 0.0008 is four standard errors of the printed one with 100,000 sets.
      expect(Math.abs((doubleGrubbsLimits(means)?.straggler ?? NaN) - wanted)).toBeLessThanOrEqual(0.0008)
    },
  )
  it.each(Object.entries(ISO_1_PERCENT))('agrees at 1 % for %s laboratories with %f', (means, wanted) => {
    expect(Math.abs((doubleGrubbsLimits(Number(means))?.outlier ?? NaN) - wanted)).toBeLessThanOrEqual(0.0008)
  })
  it('has no limit for three laboratories nor for more than forty', () => {
    expect(doubleGrubbsLimits(3)).toBeNull()
    expect(doubleGrubbsLimits(41)).toBeNull()
  })
})
