/** Errors of both classes over the threshold: one panel for each, on one logarithmic axis. Pixels. */
import { scaleLinear, scaleLog } from 'd3'
import type { ClassErrors, ErrorsAtThreshold } from '../core/studies/screening/errors-at-threshold.ts'
import { dodged } from './dodged.ts'
import { logTicks } from './log-ticks.ts'
import { LEFT, type Plot, rounded } from './plot.ts'

/** What a mark in the margin reads off its curve. */
export type ErrorReading = 'seen' | 'further' | 'new'

export interface ErrorPanel {
  readonly plot: Plot
  /** From the share of the materials seen to the bound for a new one. */
  readonly ground: string
  readonly bound: string
  readonly seen: string
  /** Seen, with what is undecided; null where nothing is. */
  readonly withUndecided: string | null
  /** As far as it is known; null where it is not. */
  readonly further: string | null
  readonly yTicks: readonly { readonly y: number; readonly share: number }[]
  /** At the threshold: the mark on the curve and its label in the margin. */
  readonly readings: readonly {
    readonly reading: ErrorReading
    readonly y: number
    readonly labelY: number
  }[]
}

export interface ErrorCurvesModel {
  readonly width: number
  readonly height: number
  readonly panels: readonly ErrorPanel[]
  readonly threshold: number | null
  readonly xTicks: readonly { readonly x: number; readonly value: number }[]
}

const WIDTH = 380
/** For the labels at the right. */
const MARGIN = 142
const PANEL = 92
/** Above each panel: its name, and below that of the first the threshold's. */
const HEADS = [42, 32] as const
const FOOT = 22
const LABEL = 13

/**
 * @param curve by rising threshold, two or more
 * @param at the threshold; null draws none
 */
export function errorCurves(
  curve: readonly ErrorsAtThreshold[],
  at: ErrorsAtThreshold | null,
): ErrorCurvesModel | null {
  const [from, to] = [curve[0]?.threshold, curve.at(-1)?.threshold]
  if (from === undefined || to === undefined || to <= from) return null
  const [left, right] = [LEFT, WIDTH - MARGIN]
  const x = scaleLog([from, to], [left, right])
  const panels = (['inert', 'reactive'] as const).map((own, place) => {
    const top = HEADS[0] + place * (PANEL + HEADS[1])
    const points = curve.map((one) => ({ x: rounded(x(one.threshold), 1), errors: one[own] }))
    return panelOf(points, at === null ? null : at[own], { left, right, top, bottom: top + PANEL })
  })
  return {
    width: WIDTH,
    height: HEADS[0] + HEADS[1] + 2 * PANEL + FOOT,
    panels,
    threshold: at === null ? null : rounded(x(at.threshold), 1),
    xTicks: logTicks(from, to, 30 / (right - left)).map((value) => ({ value, x: rounded(x(value), 1) })),
  }
}

interface CurvePoint {
  readonly x: number
  readonly errors: ClassErrors
}

function panelOf(points: readonly CurvePoint[], at: ClassErrors | null, plot: Plot): ErrorPanel {
  const y = scaleLinear([0, 1], [plot.bottom, plot.top])
  const line = (share: (errors: ClassErrors) => number, among = points) =>
    thinned(among.map(({ x, errors }) => `${x} ${rounded(y(share(errors)), 1)}`))
  const [seen, bound] = [line(seenShare), line(({ newMaterial }) => newMaterial)]
  // It ends where a material is no longer decided.
  const further = points.filter(({ errors }) => errors.furtherBatches !== null)
  return {
    plot,
    ground: `M${[...bound, ...seen.toReversed()].join('L')}Z`,
    bound: `M${bound.join('L')}`,
    seen: `M${seen.join('L')}`,
    withUndecided: points.some(({ errors }) => 0 < errors.undecided.length)
      ? `M${line(({ wrong, undecided, n }) => (wrong.length + undecided.length) / n).join('L')}`
      : null,
    further:
      further.length < 2 ? null : `M${line(({ furtherBatches }) => furtherBatches ?? 0, further).join('L')}`,
    yTicks: [0, 0.5, 1].map((share) => ({ share, y: rounded(y(share), 1) })),
    readings: at === null ? [] : readingsOf(at, y, plot),
  }
}

function readingsOf(at: ClassErrors, y: (share: number) => number, plot: Plot): ErrorPanel['readings'] {
  const shares: readonly (readonly [ErrorReading, number | null])[] = [
    ['new', at.newMaterial],
    ['further', at.furtherBatches],
    ['seen', seenShare(at)],
  ]
  const found = shares.flatMap(([reading, share]) =>
    share === null ? [] : [{ reading, y: rounded(y(share), 1) }],
  )
  const places = dodged(
    found.map((one) => one.y),
    LABEL,
    plot,
  )
  return found.map((one, place) => ({ ...one, labelY: rounded(places?.[place] ?? one.y, 1) }))
}

function seenShare({ wrong, n }: ClassErrors): number {
  return wrong.length / n
}

/** Without points in the middle of a level stretch. */
function thinned(points: readonly string[]): string[] {
  const level = (point: string | undefined) => point?.split(' ')[1]
  return points.filter(
    (point, place) =>
      place === 0 ||
      place === points.length - 1 ||
      level(point) !== level(points[place - 1]) ||
      level(point) !== level(points[place + 1]),
  )
}
