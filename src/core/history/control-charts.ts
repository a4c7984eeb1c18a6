/** Control charts of points that may be compared, with the false alarms of their own correlation and length. */
import { inForce, type Moment } from '../measure/moment.ts'
import { correlationOfNeighbours, lag1 } from '../statistics/autocorrelation.ts'
import {
  CHART_RULES,
  type Chart,
  type ChartRule,
  chartOf,
  extentsWithin,
  WATCHED_RULES,
} from '../statistics/chart-signals.ts'
import { EWMA_LAMBDA, EWMA_WIDTH, steadyLimits } from '../statistics/ewma.ts'
import { alarmLimit, falseAlarmRates } from '../statistics/false-alarm-rates.ts'
import { lineThrough } from '../statistics/least-squares.ts'
import type { ComparablePoint } from './comparable-points.ts'
import { type NotShown, notShown, type Shown } from './not-shown.ts'
import type { Baseline, EwmaChart, FalseAlarm, IndividualsChart, RuleHeld } from './segment-figures.ts'

/** A period declared in the record whose points set centre and limits. */
export interface Phase {
  readonly from: Moment
  readonly to: Moment
  readonly title: string
}

/** Fewer points set no limits: own choice. */
export const LEAST_BASELINE = 8
/** Without a phase so many first points set them: common practice is 20 to 30, no source. */
const FIRST_POINTS = 20
/** Cumulative sums are kept for control mortar. */
const OF_SOURCES = CHART_RULES.filter((rule) => rule !== 'cusum')

/**
 * Chart of single values and of weighted averages.
 * @param points of one segment, in order
 * @param phases declared for the property
 * @param rules that signals are looked for by; those of a source without them
 * Notes: 1. the last phase that holds enough points sets the limits, else the first 20 points, else all; 2. signals are
 * looked for in all points, those of the baseline among them.
 */
export function controlCharts(
  points: readonly ComparablePoint[],
  phases: readonly Phase[],
  rules: readonly ChartRule[] = OF_SOURCES,
): { chart: Shown<IndividualsChart>; ewma: Shown<EwmaChart> } {
  const reason = unfit(points, LEAST_BASELINE)
  if (reason !== undefined) return { chart: notShown(reason), ewma: notShown(reason) }
  const baseline = baselineOf(points, phases)
  const ofBaseline = new Set(baseline.places)
  const chart = chartOf(
    points.map(({ value }) => value),
    points.filter(({ place }) => ofBaseline.has(place)).map(({ value }) => value),
  )
  if (chart === null) {
    const flat = notShown({ code: 'no-scatter', params: {} })
    return { chart: flat, ewma: flat }
  }
  return { chart: individuals(points, baseline, { chart, rules }), ewma: averages(points, chart) }
}

/**
 * Why points have no statistic.
 * @param needed points at least
 * @returns undefined where there are enough, each of them known
 */
export function unfit(points: readonly ComparablePoint[], needed: number): NotShown | undefined {
  const bounded = points.filter((point) => point.bounded).length
  if (points.length < needed) return { code: 'too-few', params: { n: points.length, needed } }
  return 0 < bounded ? { code: 'known-within-bounds', params: { n: bounded } } : undefined
}

function baselineOf(points: readonly ComparablePoint[], phases: readonly Phase[]): Baseline {
  const placesOf = (of: readonly ComparablePoint[]) => of.map(({ place }) => place)
  const declared = phases
    .toSorted((a, b) => b.from.day - a.from.day)
    .map((phase) => ({ phase, inside: points.filter(({ sampled }) => inForce(phase, sampled)) }))
    .find(({ inside }) => LEAST_BASELINE <= inside.length)
  if (declared !== undefined)
    return { by: 'phase', title: declared.phase.title, places: placesOf(declared.inside) }
  return points.length <= FIRST_POINTS
    ? { by: 'all-points', places: placesOf(points) }
    : { by: 'first-points', places: placesOf(points.slice(0, FIRST_POINTS)) }
}

function individuals(
  points: readonly ComparablePoint[],
  baseline: Baseline,
  { chart, rules }: { readonly chart: Chart; readonly rules: readonly ChartRule[] },
): Shown<IndividualsChart> {
  const placeAt = (at: number) => points[at]?.place ?? at
  return {
    shown: true,
    baseline,
    ...chart.limits,
    signals: chart.signals
      .filter(({ rule }) => rules.includes(rule))
      .map(({ rule, at, from, side }) => ({
        rule,
        place: placeAt(at),
        places: Array.from({ length: at - from + 1 }, (_, step) => placeAt(from + step)),
        side,
      })),
    falseAlarms: falseAlarmsOf(points, baseline.places.length, rules),
    held: heldAt(points, baseline.places.length, rules, chart),
  }
}

function heldAt(
  points: readonly ComparablePoint[],
  baseline: number,
  rules: readonly ChartRule[],
  chart: Chart,
): RuleHeld[] {
  const phi = roundedCorrelation(points)
  const extents = extentsWithin(chart, points.length)
  return WATCHED_RULES.filter((rule) => rules.includes(rule)).map((rule) => {
    const { extent: limit, share } = alarmLimit(rule, { phi, baseline, points: points.length })
    const places = chart.held[rule].map((at) => points[at]?.place ?? at)
    const extent = extents[rule]
    return { rule, places, extent, limit, share, tooMany: limit <= extent, phi }
  })
}

/** The largest correlation that alarms were simulated for. */
const MOST_SIMULATED = 0.8

/** As the table of simulated alarms has it. */
function roundedCorrelation(points: readonly ComparablePoint[]): number {
  return Math.min(MOST_SIMULATED, Math.round(10 * ownCorrelation(points)) / 10)
}

function falseAlarmsOf(
  points: readonly ComparablePoint[],
  baseline: number,
  rules: readonly ChartRule[],
): FalseAlarm[] {
  const phi = roundedCorrelation(points)
  return rules.map((rule) => ({
    rule,
    ...falseAlarmRates(rule, { phi, baseline, points: points.length }),
    phi,
    baseline,
    watched: points.length,
    simulated: true,
  }))
}

/**
 * Correlation of neighbours about a line, so that a drift, which is what a chart is to find, does not count as one.
 * @param points eight or more
 * @returns from 0 to 0.9
 */
export function ownCorrelation(points: readonly ComparablePoint[]): number {
  const { residuals } = lineThrough(
    points.map((_, at) => at),
    points.map(({ value }) => value),
  )
  return correlationOfNeighbours(lag1(residuals) ?? 0, points.length, 2)
}

function averages(points: readonly ComparablePoint[], { limits, averages: found }: Chart): Shown<EwmaChart> {
  const { centre, sigma } = limits
  const design = { centre, sigma, lambda: EWMA_LAMBDA, width: EWMA_WIDTH }
  return {
    shown: true,
    lambda: EWMA_LAMBDA,
    width: EWMA_WIDTH,
    points: found.map((one, at) => ({ place: points[at]?.place ?? at, ...one })),
    steady: steadyLimits(design),
  }
}
