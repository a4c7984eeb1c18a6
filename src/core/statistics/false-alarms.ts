/**
 * How often the rules of a control chart signal without any cause: textbook rates assume independent points and
 * known limits, these are simulated for correlated points and limits estimated from a baseline.
 */
import { CUSUM_DECISION } from './cusum.ts'
import { EWMA_WIDTH } from './ewma.ts'
import {
  CHART_RULES,
  type ChartRule,
  chartOf,
  extentsWithin,
  WATCHED_RULES,
  type WatchedRule,
} from './chart-signals.ts'

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

/** How far chance carries a rule, as `extentsWithin` has it. */
export interface AlarmLimit {
  /** The smallest extent that at most one in twenty series without any cause reach, and at which there is a signal. */
  readonly extent: number
  /** Share of such series that reach it. */
  readonly share: number
}

/** As seldom does chance reach a limit: the level of every interval of a history. */
export const SELDOM = 0.05

export interface SimulatedAlarms {
  /** By rule, one entry for each length. */
  readonly rates: Readonly<Record<ChartRule, readonly AlarmRates[]>>
  readonly limits: Readonly<Record<WatchedRule, readonly AlarmLimit[]>>
}

/**
 * Simulated rates of each rule, over series of several lengths at once.
 * @param series with the largest number of points
 * @param lengths points in all, each from the baseline to the largest number
 * @param trials series drawn
 * @param normal standard normal numbers, by chance
 */
export function simulatedAlarms(
  { phi, baseline, points }: CauselessSeries,
  lengths: readonly number[],
  trials: number,
  normal: () => number,
): SimulatedAlarms {
  const signals = counters(CHART_RULES, lengths)
  const extents = counters(WATCHED_RULES, lengths)
  for (let trial = 0; trial < trials; trial += 1) {
    const values = correlated(phi, points, normal)
    const chart = chartOf(values, values.slice(0, baseline))
    for (const rule of CHART_RULES) {
      const own = chart?.signals.filter((signal) => signal.rule === rule).map(({ at }) => at) ?? []
      for (const [at, length] of lengths.entries()) signals[rule][at]?.push(countBelow(own, length))
    }
    for (const [at, length] of lengths.entries()) {
      const extent = chart === null ? undefined : extentsWithin(chart, length)
      for (const rule of WATCHED_RULES) extents[rule][at]?.push(extent?.[rule] ?? 0)
    }
  }
  return {
    rates: eachRule(CHART_RULES, (rule) =>
      signals[rule].map((counts, place) => ratesOf(counts, lengths[place] ?? 1)),
    ),
    limits: eachRule(WATCHED_RULES, (rule) => extents[rule].map((own) => limitOf(rule, own))),
  }
}

function eachRule<Rule extends string, T>(rules: readonly Rule[], of: (rule: Rule) => T): Record<Rule, T> {
  return Object.fromEntries(rules.map((rule) => [rule, of(rule)])) as Record<Rule, T>
}

/** By rule and length the count of each series. */
function counters<Rule extends string>(rules: readonly Rule[], lengths: readonly number[]) {
  return eachRule(rules, () => lengths.map((): number[] => []))
}

/** @param places in rising order */
function countBelow(places: readonly number[], length: number): number {
  const end = places.findIndex((at) => length <= at)
  return end < 0 ? places.length : end
}

function ratesOf(counts: readonly number[], length: number): AlarmRates {
  const sum = counts.reduce((total, count) => total + count, 0)
  return {
    perPoint: sum / counts.length / length,
    inSeries: counts.filter((count) => 0 < count).length / counts.length,
  }
}

/** Where a rule signals at all, and the step of its limits. */
const SIGNALS: Readonly<Record<WatchedRule, { readonly from: number; readonly step: number }>> = {
  'beyond-limits': { from: 1, step: 1 },
  'run-of-eight': { from: 1, step: 1 },
  'six-rising-or-falling': { from: 1, step: 1 },
  ewma: { from: EWMA_WIDTH, step: 0.01 },
  cusum: { from: CUSUM_DECISION, step: 0.01 },
}

function limitOf(rule: WatchedRule, extents: readonly number[]): AlarmLimit {
  const { from, step } = SIGNALS[rule]
  const falling = extents.toSorted((a, b) => b - a)
  // The largest extent that more than one in twenty reach is not yet too far.
  const reached = falling[Math.floor(SELDOM * extents.length)] ?? 0
  const extent = Math.max(from, step * (Math.floor(reached / step) + 1))
  return { extent, share: extents.filter((one) => extent <= one).length / extents.length }
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
