/**
 * Two indices of the same lots against each other as plain values: marks, limit lines and corners, ready to
 * be written as SVG.
 */
import { type LabelWish, labelWidth, type PlacedLabel, placeLabels, rowsOf, shortened } from './labels.ts'
import { acrossScale, logTicks, upwardScale } from './paired-axes.ts'
import {
  cornerWords,
  type LevelLine,
  levelLines,
  type PairedLimit,
  ROW,
  type TextAt,
} from './paired-labels.ts'
import { pairedMark } from './paired-marks.ts'
import { LEFT, type Plot, RIGHT, rounded } from './plot.ts'

/**
 * A source; a reference that is known to be inert, with open marks; others that only stand beside; what the
 * picture is about.
 */
export type PairedRole = 'source' | 'inert' | 'beside' | 'subject'

export interface PairedSeries {
  readonly name: string
  readonly role: PairedRole
  /** Which mark it takes, from 0, so that a source has the same one on every chart; its place without it. */
  readonly mark?: number
  /** Both values above zero. */
  readonly points: readonly { readonly x: number; readonly y: number }[]
}

export interface PairedInput {
  readonly series: readonly PairedSeries[]
  readonly limits: { readonly x: readonly PairedLimit[]; readonly y: readonly PairedLimit[] }
  /** The two limits that part the plot into named quadrants; at least these values meet. */
  readonly quadrants?: { readonly x: number; readonly y: number }
  readonly width: number
  /** Without the rows of labels of the upright limit lines, which are added above. */
  readonly height: number
}

export interface DrawnSeries {
  readonly name: string
  readonly role: PairedRole
  /** From 0, below TONES; goes with the mark. */
  readonly tone: number
  readonly shape: string
  /** Where a shape comes again: "b" the second time. */
  readonly letter: string
  /** All marks as one path. */
  readonly marks: string
  readonly letters: readonly { readonly x: number; readonly y: number }[]
}

export interface PairedModel {
  readonly width: number
  readonly height: number
  readonly plot: Plot
  readonly series: readonly DrawnSeries[]
  readonly xLimits: readonly { readonly x: number; readonly label: PlacedLabel; readonly labelY: number }[]
  readonly yLimits: readonly LevelLine[]
  readonly corners: readonly TextAt[]
  /** Middles of the marks, by series and point. */
  readonly middles: readonly (readonly Middle[])[]
  readonly xTicks: readonly { readonly x: number; readonly value: number }[]
  readonly yTicks: readonly { readonly y: number; readonly value: number }[]
}

/** A narrow drawing has the same marks in less room. */
const NARROW = 500
const SMALLER = 0.78
/** How a role's marks differ in size from a source's. */
const SIZE: Readonly<Record<PairedRole, number>> = { source: 1, inert: 1, beside: 0.75, subject: 1.6 }
/** Tones that only help the shapes; only sources take one. */
const TONES = 4
/** Rooms above the plot for the title of the axis, and below it for ticks and title. */
const HEAD = 24
/** Room at the right for the value of a level limit. */
const MARGIN = 40
const FOOT = 40

/**
 * The model of a scatter; null without any point. Strength across on an even axis, resistivity upwards on a
 * logarithmic one.
 */
export function pairedModel(input: PairedInput): PairedModel | null {
  const { limits, quadrants, series } = input
  const points = series.flatMap((entry) => entry.points)
  if (points.length === 0) return null
  const { x, labels, ends } = across(input)
  const head = ROW * rowsOf(labels)
  const height = input.height + head
  const plot: Plot = { ...ends, top: HEAD + head, bottom: height - FOOT }
  const words = cornerWords(quadrants === undefined ? null : rounded(x(quadrants.x)), plot)
  const y = upwardScale([...points.map((point) => point.y), ...limits.y.map((limit) => limit.value)], {
    top: plot.top,
    bottom: plot.bottom,
    inset: 10 + ROW * words.rows,
    part: quadrants?.y,
  })
  const middles = series.map((entry) => entry.points.map((point): Middle => [x(point.x), y(point.y)]))
  return {
    width: input.width,
    height,
    plot,
    series: series.map((_, place) => drawnSeries(input, place, middles[place] ?? [])),
    xLimits: uprightLines(limits.x, labels, { x, top: plot.top }),
    yLimits: levelLines(limits.y, y, plot),
    corners: words.corners,
    middles: middles.map((own) => own.map(([across, up]): Middle => [rounded(across), rounded(up)])),
    xTicks: x.ticks(input.width < NARROW ? 5 : 9).map((value) => ({ x: rounded(x(value)), value })),
    yTicks: withoutNear(
      logTicks(y.domain() as [number, number]),
      limits.y.map(({ value }) => value),
      y,
    ).map((value) => ({ y: rounded(y(value)), value })),
  }
}

/** A limit is a tick of its own beside its line; a round number that would stand on it gives way. */
function withoutNear(
  ticks: readonly number[],
  limits: readonly number[],
  y: (value: number) => number,
): number[] {
  const far = ticks.filter((tick) => limits.every((limit) => ROW <= Math.abs(y(tick) - y(limit))))
  return [...far, ...limits].sort((a, b) => a - b)
}

type Scale = ReturnType<typeof acrossScale>

/** The axis across with the labels of its limits, whose rows decide how high the drawing is. */
function across({ series, limits, quadrants, width }: PairedInput): {
  x: Scale
  labels: PlacedLabel[]
  ends: { left: number; right: number }
} {
  // Values of level limits stand in the right margin, off the marks.
  const ends = { left: LEFT, right: width - RIGHT - (limits.y.length === 0 ? 0 : MARGIN) }
  const values = series.flatMap((entry) => entry.points.map((point) => point.x))
  const x = acrossScale([...values, ...limits.x.map((limit) => limit.value)], {
    ...ends,
    part: quadrants?.x,
  })
  const wishes = limits.x.map((limit): LabelWish => {
    const text = shortened(limit.label, ends.right - ends.left)
    return { text, x: rounded(x(limit.value)), width: labelWidth(text) }
  })
  return { x, labels: placeLabels(wishes, ends), ends }
}

function uprightLines(
  limits: readonly PairedLimit[],
  labels: readonly PlacedLabel[],
  { x, top }: { x: Scale; top: number },
): PairedModel['xLimits'] {
  return limits.map((limit, index) => ({
    x: rounded(x(limit.value)),
    label: labels[index] as PlacedLabel,
    labelY: top - 5 - ROW * (labels[index]?.row ?? 0),
  }))
}

/** Middle of a mark on the drawing. */
type Middle = readonly [x: number, y: number]

function drawnSeries({ series, width }: PairedInput, place: number, middles: readonly Middle[]): DrawnSeries {
  const { name = '', role = 'source', mark = place } = series[place] ?? {}
  const { word, letter, draw } = pairedMark(mark)
  const scale = SIZE[role] * (width < NARROW ? SMALLER : 1)
  return {
    name,
    role,
    tone: mark % TONES,
    shape: word,
    letter,
    marks: middles.map(([x, y]) => draw(x, y, scale)).join(''),
    letters: letter === '' ? [] : middles.map(([x, y]) => ({ x: rounded(x + 6), y: rounded(y + 4) })),
  }
}
