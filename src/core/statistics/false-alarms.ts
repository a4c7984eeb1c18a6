/**
 * How often the rules of a control chart signal without any cause: textbook rates assume independent points and
 * known limits, these are simulated for correlated points and limits estimated from a baseline.
 */
import { CHART_RULES, type ChartRule, chartOf } from './chart-signals.ts'

/** A series without any cause: normal, of the first order. */
export interface CauselessSeries {
  /** Correlation of neighbours, from 0 to below 1. */
  readonly phi: number
  /** Points that set the limits, at the head of the series. */
  readonly baseline: number
  /** Points in all. */
  readonly points: number
}

export interface AlarmRates {
  /** Share of points that signal. */
  readonly perPoint: number
  /** Share of series with a signal. */
  readonly inSeries: number
}

/**
 * Simulated rates of each rule, over series of several lengths at once.
 * @param series with the largest number of points
 * @param lengths points in all, each from the baseline to the largest number
 * @param trials series drawn
 * @param normal standard normal numbers, by chance
 * @returns by rule, one entry for each length
 */
export function simulatedAlarms(
  { phi, baseline, points }: CauselessSeries,
  lengths: readonly number[],
  trials: number,
  normal: () => number,
): Record<ChartRule, AlarmRates[]> {
  const counts = Object.fromEntries(
    CHART_RULES.map((rule) => [rule, lengths.map(() => ({ signals: 0, series: 0 }))]),
  ) as Record<ChartRule, { signals: number; series: number }[]>
  for (let trial = 0; trial < trials; trial += 1) {
    const values = correlated(phi, points, normal)
    const signals = chartOf(values, values.slice(0, baseline))?.signals ?? []
    for (const rule of CHART_RULES) {
      const own = signals.filter((signal) => signal.rule === rule)
      lengths.forEach((length, place) => {
        const count = counts[rule][place]
        const seen = own.filter(({ at }) => at < length).length
        if (count === undefined || seen === 0) return
        count.signals += seen
        count.series += 1
      })
    }
  }
  return Object.fromEntries(
    CHART_RULES.map((rule) => [
      rule,
      counts[rule].map(({ signals, series }, place) => ({
        perPoint: signals / trials / (lengths[place] ?? 1),
        inSeries: series / trials,
      })),
    ]),
  ) as Record<ChartRule, AlarmRates[]>
}

/**
 * A series of the first order with standard deviation 1.
 * @param phi correlation of neighbours, from 0 to below 1
 * @param points how many
 * @param normal standard normal numbers, by chance
 */
export function correlated(phi: number, points: number, normal: () => number): number[] {
  let state = normal()
  const fresh = Math.sqrt(1 - phi * phi)
  return Array.from({ length: points }, (_, place) => {
    if (place > 0) state = phi * state + fresh * normal()
    return state
  })
}
