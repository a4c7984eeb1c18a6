/** What a trend is marked with beside its results: limits as level lines, events as bands with labels. */
import type { Moment } from '../core/measure/moment.ts'
import { labelWidth, type PlacedLabel, placeLabels, shortened } from './labels.ts'
import { LEFT, RIGHT, rounded } from './plot.ts'
import { type TimeScale, utcDate, type ValueScale } from './trend-axes.ts'

export interface TrendLimit {
  readonly value: number
  readonly label: string
  /** Names of the sets that set it, for the legend. */
  readonly sets?: readonly string[]
}

export interface LimitLine {
  readonly y: number
  readonly label: string
  readonly labelY: number
}

export interface TrendEvent {
  readonly from: Moment
  readonly to?: Moment
  readonly title: string
}

export interface EventBand {
  readonly x: number
  readonly width: number
  readonly label: PlacedLabel
}

/** Least distances of a limit's label: from its line, the label above it, the top of the plot. */
const LABEL = { aboveLine: 5, belowOther: 13, belowTop: 10 }
/** An event of one day is drawn this wide. */
const THINNEST = 1.5

/** Lines from the highest limit down, their labels one below the other where the lines lie close. */
export function limitLines(limits: readonly TrendLimit[], y: ValueScale, top: number): LimitLine[] {
  const placed: LimitLine[] = []
  for (const limit of [...limits].sort((a, b) => b.value - a.value)) {
    const height = rounded(y(limit.value))
    const above = placed.at(-1)?.labelY ?? Number.NEGATIVE_INFINITY
    placed.push({
      y: height,
      label: limit.label,
      labelY: Math.max(height - LABEL.aboveLine, above + LABEL.belowOther, top + LABEL.belowTop),
    })
  }
  return placed
}

/** Events as far as they lie within the plot, with labels that cover none of their neighbours'. */
export function eventBands(events: readonly TrendEvent[], x: TimeScale, width: number): EventBand[] {
  const bounds = { left: LEFT, right: width - RIGHT }
  const bands = events
    .map((event) => {
      const from = rounded(x(utcDate(event.from)))
      const to = rounded(x(utcDate(event.to ?? event.from)))
      return {
        title: shortened(event.title, bounds.right - bounds.left),
        x: Math.max(bounds.left, from),
        end: Math.min(bounds.right, Math.max(to, from + THINNEST)),
      }
    })
    .filter((band) => band.x < bounds.right && bounds.left < band.end)
  const labels = placeLabels(
    bands.map(({ title, x: from, end }) => ({ text: title, x: (from + end) / 2, width: labelWidth(title) })),
    bounds,
  )
  return bands.map((band, index) => ({
    x: band.x,
    width: rounded(band.end - band.x),
    label: labels[index] as PlacedLabel,
  }))
}
