/** All rules of a control chart at once: limits from a baseline, patterns over every point. */
import { CUSUM_DECISION, cusum, type CusumPoint } from './cusum.ts'
import { EWMA_LAMBDA, EWMA_WIDTH, ewma, type EwmaPoint } from './ewma.ts'
import { firstAtOrAfter } from './first-at-or-after.ts'
import { individualsLimits, type IndividualsLimits, movingRanges } from './individuals-chart.ts'
import { heldPlaces, type HeldPattern, type RunPattern, runSignals } from './run-rules.ts'

export type ChartRule = RunPattern | 'moving-range' | 'ewma' | 'cusum'

/** Rules by which a chart is held against chance: those of which a longer excursion says more. */
export type WatchedRule = HeldPattern | 'ewma' | 'cusum'

export const WATCHED_RULES: readonly WatchedRule[] = [
  'beyond-limits',
  'run-of-eight',
  'six-rising-or-falling',
  'ewma',
  'cusum',
]

/** In the order in which rules are listed. */
export const CHART_RULES: readonly ChartRule[] = [
  'beyond-limits',
  'run-of-eight',
  'six-rising-or-falling',
  'two-of-three',
  'moving-range',
  'ewma',
  'cusum',
]

export interface ChartSignal {
  readonly rule: ChartRule
  /** Where the rule first holds, and where its pattern begins. */
  readonly at: number
  readonly from: number
  readonly side: 'high' | 'low' | null
}

export interface Chart {
  readonly limits: IndividualsLimits
  readonly averages: readonly EwmaPoint[]
  readonly signals: readonly ChartSignal[]
  /** Places at which each rule holds, in order; a signal is the first of them that lie together. */
  readonly held: Readonly<Record<WatchedRule, readonly number[]>>
  /** Cumulative sums, in standard deviations of single values. */
  readonly sums: readonly CusumPoint[]
}

/**
 * A chart of single values, moving ranges and weighted averages.
 * @param values all points, in order
 * @param baseline those that set centre and limits, in order, two or more, not all alike
 * @returns signals over all points, those of the baseline among them, in order of place; null where the baseline has
 * no scatter
 * @throws RangeError for a baseline of fewer than two
 */
export function chartOf(values: readonly number[], baseline: readonly number[]): Chart | null {
  const limits = individualsLimits(baseline)
  const { centre, sigma, movingRangeHigh } = limits
  if (sigma === 0) return null
  const averages = ewma(values, { centre, sigma, lambda: EWMA_LAMBDA, width: EWMA_WIDTH })
  const deviations = values.map((value) => (value - centre) / sigma)
  const sums = cusum(deviations)
  const [weighted, summed] = [averages.map(sideOf), sums.map(sideOfSums)]
  const signals = [
    ...runSignals(deviations),
    ...rangeSignals(values, movingRangeHigh),
    ...excursions('ewma', weighted),
    ...excursions('cusum', summed),
  ].sort((a, b) => a.at - b.at)
  const held = { ...heldPlaces(deviations), ewma: placesBeyond(weighted), cusum: placesBeyond(summed) }
  return { limits, averages, sums, signals, held }
}

/**
 * How far each rule was carried in the first points of a chart.
 * @param length of them
 * @returns the number of places of a pattern; the farthest average in its own standard deviations; the largest sum in
 * those of single values
 */
export function extentsWithin({ held, averages, sums }: Chart, length: number): Record<WatchedRule, number> {
  const places = (rule: HeldPattern) => firstAtOrAfter(held[rule], (at) => at, length)
  const largest = <Point>(points: readonly Point[], of: (point: Point) => number) =>
    points.slice(0, length).reduce((most, point) => Math.max(most, of(point)), 0)
  return {
    'beyond-limits': places('beyond-limits'),
    'run-of-eight': places('run-of-eight'),
    'six-rising-or-falling': places('six-rising-or-falling'),
    ewma: largest(averages, farFromCentre),
    cusum: largest(sums, ({ high, low }) => Math.max(high, low)),
  }
}

function farFromCentre({ value, low, high }: EwmaPoint): number {
  return (EWMA_WIDTH * Math.abs(2 * value - low - high)) / (high - low)
}

function rangeSignals(values: readonly number[], high: number): ChartSignal[] {
  return movingRanges(values).flatMap((range, from) =>
    high < range ? [{ rule: 'moving-range', at: from + 1, from, side: null }] : [],
  )
}

/** The first point of each excursion. */
function excursions(rule: 'ewma' | 'cusum', sides: readonly ('high' | 'low' | null)[]): ChartSignal[] {
  return sides.flatMap((side, at) =>
    side === null || side === sides[at - 1] ? [] : [{ rule, at, from: at, side }],
  )
}

function sideOf({ value, low, high }: EwmaPoint): 'high' | 'low' | null {
  return high < value ? 'high' : value < low ? 'low' : null
}

function placesBeyond(sides: readonly ('high' | 'low' | null)[]): number[] {
  return sides.flatMap((side, at) => (side === null ? [] : [at]))
}

function sideOfSums({ high, low }: CusumPoint): 'high' | 'low' | null {
  return CUSUM_DECISION < high ? 'high' : CUSUM_DECISION < low ? 'low' : null
}
