/**
 * How often the rules of a control chart signal without any cause: textbook rates assume independent points and
 * known limits, these are simulated for correlated points and limits estimated from a baseline.
 */
import { CHART_RULES, type ChartRule, chartOf, WATCHED_RULES, type WatchedRule } from './chart-signals.ts'

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

/** More points at which a rule holds than chance explains. */
export interface AlarmLimit {
  /** The smallest number that at most one in twenty series without any cause reach. */
  readonly points: number
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
  const held = counters(WATCHED_RULES, lengths)
  for (let trial = 0; trial < trials; trial += 1) {
    const values = correlated(phi, points, normal)
    const chart = chartOf(values, values.slice(0, baseline))
    for (const rule of CHART_RULES) {
      const own = chart?.signals.filter((signal) => signal.rule === rule).map(({ at }) => at) ?? []
      addCounts(signals[rule], own, lengths)
    }
    for (const rule of WATCHED_RULES) addCounts(held[rule], chart?.held[rule] ?? [], lengths)
  }
  return {
    rates: eachRule(CHART_RULES, (rule) =>
      signals[rule].map((counts, place) => ratesOf(counts, lengths[place] ?? 1)),
    ),
    limits: eachRule(WATCHED_RULES, (rule) => held[rule].map(limitOf)),
  }
}

function eachRule<Rule extends string, T>(rules: readonly Rule[], of: (rule: Rule) => T): Record<Rule, T> {
  return Object.fromEntries(rules.map((rule) => [rule, of(rule)])) as Record<Rule, T>
}

/** By rule and length the count of each series. */
function counters<Rule extends string>(rules: readonly Rule[], lengths: readonly number[]) {
  return eachRule(rules, () => lengths.map((): number[] => []))
}

function addCounts(counts: number[][], places: readonly number[], lengths: readonly number[]): void {
  for (const [at, length] of lengths.entries()) counts[at]?.push(countBelow(places, length))
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

function limitOf(counts: readonly number[]): AlarmLimit {
  const falling = counts.toSorted((a, b) => b - a)
  // The largest count that more than one in twenty reach is not yet too many.
  const points = (falling[Math.floor(SELDOM * counts.length)] ?? 0) + 1
  return { points, share: counts.filter((count) => points <= count).length / counts.length }
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
