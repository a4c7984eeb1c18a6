/** The rates that a page prints for its own series, against a fresh simulation with other numbers. */
import { describe, expect, it } from 'vitest'
import {
  CHART_RULES,
  chartOf,
  extentsWithin,
  WATCHED_RULES,
} from '../../../src/core/statistics/chart-signals.ts'
import { alarmLimit, falseAlarmRates } from '../../../src/core/statistics/false-alarm-rates.ts'
import { correlated, simulatedAlarms } from '../../../src/core/statistics/false-alarms.ts'
import { chanceError, normal } from './chance.ts'

const TRIALS = 2500

describe('falseAlarmRates', () => {
  it.each([
    { phi: 0, baseline: 20, points: 30 },
    { phi: 0.4, baseline: 30, points: 60 },
    { phi: 0.5, baseline: 12, points: 12 },
    // Between the cells of the table.
    { phi: 0.25, baseline: 24, points: 60 },
    // A run of eight in little more than eight points.
    { phi: 0, baseline: 9, points: 9 },
    { phi: 0.4, baseline: 10, points: 10 },
    { phi: 0.4, baseline: 11, points: 11 },
  ])('are those of $points points, $baseline of them the baseline, of correlation $phi', (series) => {
    const found = simulatedAlarms(series, [series.points], TRIALS, normal(31 + series.points))
    for (const rule of CHART_RULES) {
      const rates = falseAlarmRates(rule, series)
      const [drawn] = found.rates[rule]
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

describe('alarmLimit', () => {
  it.each([
    { phi: 0, baseline: 20, points: 40 },
    { phi: 0.4, baseline: 20, points: 60 },
    // Between the cells of the table, where the next on the side of more alarms counts.
    { phi: 0.2, baseline: 24, points: 70 },
    { phi: 0.1, baseline: 11, points: 11 },
  ])('is reached as seldom as it says by $points points, $baseline of them the baseline', (series) => {
    const draw = normal(32)
    const reached = new Map(WATCHED_RULES.map((rule) => [rule, 0]))
    for (let trial = 0; trial < TRIALS; trial += 1) {
      const values = correlated(series.phi, series.points, draw)
      const chart = chartOf(values, values.slice(0, series.baseline))
      const extent = chart === null ? undefined : extentsWithin(chart, series.points)
      for (const rule of WATCHED_RULES)
        if (alarmLimit(rule, series).extent <= (extent?.[rule] ?? 0))
          reached.set(rule, (reached.get(rule) ?? 0) + 1)
    }
    for (const [rule, count] of reached) {
      const { share } = alarmLimit(rule, series)
      expect(share, rule).toBeLessThanOrEqual(0.05)
      // The table is of 4,000 series itself; beside its cells a limit is reached less often than it says.
      expect(count / TRIALS, rule).toBeLessThan(
        share + chanceError(0.05, TRIALS) * Math.sqrt(1 + TRIALS / 4000),
      )
    }
  })

  it('grows with the series beyond the table', () => {
    const limit = (points: number) => alarmLimit('beyond-limits', { phi: 0, baseline: 20, points }).extent
    expect(limit(1000)).toBe(47)
    expect(limit(2000)).toBe(94)
  })
})
