/** Means before and after events of a source, and where its laboratory or control cement changed. */
import type { Moment } from '../measure/moment.ts'
import { correlationOfNeighbours, lag1 } from '../statistics/autocorrelation.ts'
import { firstAtOrAfter } from '../statistics/first-at-or-after.ts'
import { mean } from '../statistics/descriptive.ts'
import { twoSampleT, type TwoSampleT } from '../statistics/student-t-test.ts'
import { clustersOf, type ComparablePoint } from './comparable-points.ts'
import { LEVEL, notShown, type Shown, type TInterval } from './not-shown.ts'
import type { StepFigures } from './segment-figures.ts'
import type { Step, StepEvent } from './source-history.ts'

/** An event of the source's record. */
export interface SourceEvent {
  readonly date: Moment
  readonly to?: Moment
  readonly title: string
  readonly kind: string
}

/** So many points on each side are compared, as far as no other event lies between; fewer than the second say nothing: own choices. */
const [MOST, LEAST] = [20, 4]

interface Cut {
  readonly event: StepEvent
  /** Points before it ends, and before it begins: an outage takes out those between. */
  readonly ends: number
  readonly begins: number
}

/** What bounds the points compared: an event is compared across changes of laboratory and cement, and says so. */
const BOUNDED_BY: Readonly<Record<StepEvent['by'], readonly StepEvent['by'][]>> = {
  event: ['event'],
  laboratory: ['event', 'laboratory'],
  'control-cement': ['event', 'laboratory', 'control-cement'],
}

/**
 * A step for each event, each change of laboratory and each change of control cement, in order.
 * @param points valid ones of a series, in order of sampling
 * @param events of the source, by the as-of date
 * Note: a change that an event of the record names stands as that event alone.
 */
export function stepsOf(points: readonly ComparablePoint[], events: readonly SourceEvent[]): Step[] {
  const named = eventCuts(points, events)
  const changes = changeCuts(points).filter(({ event, begins }) => !named.some(isSame(event, begins)))
  const cuts = [...named, ...changes].sort((a, b) => a.begins - b.begins)
  return cuts.map((cut) => {
    const bounds = cuts.filter(({ event }) => BOUNDED_BY[cut.event.by].includes(event.by))
    const from = bounds.findLast(({ begins }) => begins < cut.ends)?.begins ?? 0
    const to = bounds.find(({ ends }) => cut.begins < ends)?.ends ?? points.length
    const [before, after] = [points.slice(from, cut.ends), points.slice(cut.begins, to)]
    const figures = figuresOf(before.slice(-MOST), after.slice(0, MOST))
    return {
      event: cut.event,
      figures: figures.shown ? { ...figures, beside: besideOf(cut, cuts) } : figures,
    }
  })
}

/** Between two cuts so close no mean can be taken. */
function besideOf(cut: Cut, cuts: readonly Cut[]): StepEvent[] {
  return cuts
    .filter((one) => one !== cut && one.begins - cut.ends < LEAST && cut.begins - one.ends < LEAST)
    .map(({ event }) => event)
}

/** Whether an event of the record names a change that the points show at the same place. */
function isSame({ by }: StepEvent, at: number): (cut: Cut) => boolean {
  const kind = by === 'laboratory' ? 'laboratory-change' : 'cement-change'
  return ({ event, begins }) => event.by === 'event' && event.kind === kind && begins === at
}

/** Events before the first point or after the last say nothing of them. */
function eventCuts(points: readonly ComparablePoint[], events: readonly SourceEvent[]): Cut[] {
  const before = (day: number) => firstAtOrAfter(points, ({ sampled }) => sampled.day, day)
  return events
    .map(({ date, to, title, kind }) => ({
      event: { by: 'event' as const, date, title, kind },
      ends: before(date.day),
      begins: before(to === undefined ? date.day : to.day + 1),
    }))
    .filter(({ ends, begins }) => 0 < ends && begins < points.length)
}

function changeCuts(points: readonly ComparablePoint[]): Cut[] {
  return points.flatMap((point, at) => {
    const before = points[at - 1]
    const event = before === undefined ? undefined : changeOf(before, point)
    return event === undefined ? [] : [{ event, ends: at, begins: at }]
  })
}

function changeOf(before: ComparablePoint, point: ComparablePoint): StepEvent | undefined {
  const { sampled: date } = point
  if (before.laboratory !== point.laboratory)
    return { by: 'laboratory', date, from: before.laboratory, to: point.laboratory }
  return before.cement === undefined || point.cement === undefined || before.cement === point.cement
    ? undefined
    : { by: 'control-cement', date, from: before.cement, to: point.cement }
}

function figuresOf(
  before: readonly ComparablePoint[],
  after: readonly ComparablePoint[],
): Shown<Omit<StepFigures, 'beside'>> {
  const [one, other] = [before, after].map((side) => clustersOf(side).map(({ value }) => value)) as [
    number[],
    number[],
  ]
  const n = Math.min(one.length, other.length)
  if (n < LEAST) return notShown({ code: 'too-few', params: { n, needed: LEAST } })
  const bounded = [...before, ...after].filter((point) => point.bounded).length
  if (0 < bounded) return notShown({ code: 'known-within-bounds', params: { n: bounded } })
  const test = twoSampleT(other, one, { form: 'welch', confidence: LEVEL })
  if (test === null) return notShown({ code: 'no-scatter', params: {} })
  const interval = widened(test, sharedCorrelation(one, other))
  return {
    shown: true,
    before: { n: before.length, mean: mean(one) },
    after: { n: after.length, mean: mean(other) },
    difference: test.difference,
    interval,
    clear: 0 < interval.low || interval.high < 0,
    alsoChanged: alsoChanged(before, after),
  }
}

/** Neighbours that are alike make a mean the less certain. */
function widened({ difference, interval: [from], df }: TwoSampleT, phi: number): TInterval {
  const half = (difference - from) * Math.sqrt((1 + phi) / (1 - phi))
  return { low: difference - half, high: difference + half, level: LEVEL, df }
}

/** Of neighbours on either side, by the points that each side has. */
function sharedCorrelation(one: readonly number[], other: readonly number[]): number {
  const sides = [one, other].map((side) => ({
    n: side.length,
    phi: correlationOfNeighbours(lag1(side) ?? 0, side.length),
  }))
  const n = sides.reduce((sum, side) => sum + side.n, 0)
  return sides.reduce((sum, side) => sum + (side.n * side.phi) / n, 0)
}

function alsoChanged(
  before: readonly ComparablePoint[],
  after: readonly ComparablePoint[],
): StepFigures['alsoChanged'] {
  const differ = (of: (point: ComparablePoint) => string | undefined) =>
    new Set([...before, ...after].map(of)).size > 1
  return [
    ...(differ(({ laboratory }) => laboratory) ? ['laboratory' as const] : []),
    ...(differ(({ cement }) => cement) ? ['control-cement' as const] : []),
  ]
}
