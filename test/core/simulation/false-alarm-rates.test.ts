/** The rates that a page prints for its own series, against a fresh simulation with other numbers. */
import { describe, expect, it } from 'vitest'
import { CHART_RULES } from '../../../src/core/statistics/chart-signals.ts'
import { falseAlarmRates } from '../../../src/core/statistics/false-alarm-rates.ts'
import { simulatedAlarms } from '../../../src/core/statistics/false-alarms.ts'
import { chanceError, normal } from './chance.ts'

const TRIALS = 2500

describe('falseAlarmRates', () => {
  it.each([
    { phi: 0, baseline: 20, points: 30 },
    { phi: 0.4, baseline: 30, points: 60 },
    { phi: 0.5, baseline: 12, points: 12 },
    // Between the cells of the table.
    { phi: 0.25, baseline: 24, points: 60 },
  ])('are those of $points points, $baseline of them the baseline, of correlation $phi', (series) => {
    const found = simulatedAlarms(series, [series.points], TRIALS, normal(31))
    for (const rule of CHART_RULES) {
      const rates = falseAlarmRates(rule, series)
      const [drawn] = found[rule]
      // The table is of 4,000 series itself, and straight lines between its cells are off by a hundredth.
      const within = chanceError(rates.inSeries, TRIALS) * Math.sqrt(1 + TRIALS / 4000) + 0.012
      expect(Math.abs((drawn?.inSeries ?? Number.NaN) - rates.inSeries), rule).toBeLessThan(within)
      expect(Math.abs((drawn?.perPoint ?? Number.NaN) - rates.perPoint), rule).toBeLessThan(0.004)
    }
  })

  it('rise with the correlation and with the length of the series', () => {
    for (const rule of ['beyond-limits', 'run-of-eight', 'ewma'] as const) {
      const rate = (phi: number, points: number) =>
        falseAlarmRates(rule, { phi, baseline: 20, points }).inSeries
      expect(rate(0.4, 60)).toBeGreaterThan(rate(0, 60))
      expect(rate(0.2, 200)).toBeGreaterThan(rate(0.2, 40))
      expect(rate(0.2, 2000)).toBeGreaterThanOrEqual(rate(0.2, 1000))
      expect(rate(0.2, 5000)).toBeLessThanOrEqual(1)
    }
  })
})
