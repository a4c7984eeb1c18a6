/**
 * Two indices of the same lots against each other as plain values: marks, limit lines and corners, ready to
 * be written as SVG.
 */
import { extent, scaleLinear, scaleLog, ticks } from 'd3'
import { type PlacedLabel, placeLabels } from './labels.ts'
import { LEFT, RIGHT, rounded } from './trend-axes.ts'

/**
 * A source; a reference that is known to be inert, with open marks; others that only stand beside; what the
 * picture is about.
 */
export type PairedRole = 'source' | 'inert' | 'beside' | 'subject'

export interface PairedSeries {
  readonly name: string
  readonly role: PairedRole
  /** Both values above zero. */
  readonly points: readonly { readonly x: number; readonly y: number }[]
}
export interface PairedLimit {
  readonly value: number
  readonly label: string
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
  /** From 0, below TONES; counted over the sources. */
  readonly tone: number
  readonly shape: string
  /** Where a shape comes again: "b" the second time. */
  readonly letter: string
  /** All marks as one path. */
  readonly marks: string
  readonly letters: readonly { readonly x: number; readonly y: number }[]
}
export interface TextAt {
  readonly text: string
  readonly x: number
  readonly y: number
  readonly anchor: 'start' | 'end'
}

export interface PairedModel {
  readonly width: number
  readonly height: number
  readonly plot: {
    readonly left: number
    readonly right: number
    readonly top: number
    readonly bottom: number
  }
  readonly series: readonly DrawnSeries[]
  readonly xLimits: readonly { readonly x: number; readonly label: PlacedLabel; readonly labelY: number }[]
  readonly yLimits: readonly { readonly y: number; readonly label: TextAt }[]
  readonly corners: readonly TextAt[]
  readonly xTicks: readonly { readonly x: number; readonly value: number }[]
  readonly yTicks: readonly { readonly y: number; readonly value: number }[]
}

type Draw = (x: number, y: number, scale: number) => string
type Corner = readonly [across: number, down: number]

function polygon(corners: readonly Corner[]): Draw {
  return (x, y, scale) =>
    `M${corners.map(([across, down]) => `${rounded(x + scale * across)},${rounded(y + scale * down)}`).join('L')}Z`
}
function circle(radius: number): Draw {
  return (x, y, scale) => {
    const r = rounded(radius * scale)
    return `M${rounded(x - r)},${rounded(y)}a${r},${r} 0 1,0 ${rounded(2 * r)},0a${r},${r} 0 1,0 ${rounded(-2 * r)},0Z`
  }
}
function bar(half: number, tall: number): Draw {
  return polygon([
    [-half, -tall],
    [half, -tall],
    [half, tall],
    [-half, tall],
  ])
}

/** Told apart by outline alone; the word names the shape in legend and table. */
const SHAPES: readonly { readonly word: string; readonly draw: Draw }[] = [
  { word: 'circle', draw: circle(3.8) },
  { word: 'square', draw: bar(3.5, 3.5) },
  {
    word: 'triangle',
    draw: polygon([
      [0, -4.8],
      [4.6, 3.2],
      [-4.6, 3.2],
    ]),
  },
  {
    word: 'diamond',
    draw: polygon([
      [0, -5.2],
      [4.4, 0],
      [0, 5.2],
      [-4.4, 0],
    ]),
  },
  {
    word: 'plus',
    draw: polygon([
      [-1.4, -4.8],
      [1.4, -4.8],
      [1.4, -1.4],
      [4.8, -1.4],
      [4.8, 1.4],
      [1.4, 1.4],
      [1.4, 4.8],
      [-1.4, 4.8],
      [-1.4, 1.4],
      [-4.8, 1.4],
      [-4.8, -1.4],
      [-1.4, -1.4],
    ]),
  },
  {
    word: 'triangle pointing down',
    draw: polygon([
      [0, 4.8],
      [4.6, -3.2],
      [-4.6, -3.2],
    ]),
  },
  { word: 'upright bar', draw: bar(1.9, 5.2) },
  { word: 'flat bar', draw: bar(5.2, 1.9) },
]
/** A narrow drawing has the same marks in less room. */
const NARROW = 500
const SMALLER = 0.78
/** How a role's marks differ in size from a source's. */
const SIZE: Readonly<Record<PairedRole, number>> = { source: 1, inert: 1, beside: 0.75, subject: 1.6 }
/** Tones that only help the shapes; only sources take one. */
export const TONES = 4

/**
 * The mark of the n-th source: its word, its letter from the second round on, and its path around a place.
 */
export function pairedMark(place: number): { word: string; letter: string; draw: Draw } {
  const shape = SHAPES[place % SHAPES.length] as (typeof SHAPES)[number]
  const round = Math.floor(place / SHAPES.length)
  return { ...shape, letter: round === 0 ? '' : String.fromCharCode(97 + round) }
}

/** Width that a letter of a label needs, about, in a 12 px face; height of a line of text. */
const LETTER = 6.2
const ROW = 14
/** Rooms above the plot for the title of the axis, and below it for ticks and title. */
const HEAD = 24
const FOOT = 40
/** Smallest share of the plot on either side of a limit that parts it: its corner must hold a word. */
const SIDE = 0.27

/**
 * The model of a scatter; null without any point. Strength across on an even axis, resistivity upwards on a
 * logarithmic one.
 */
export function pairedModel(input: PairedInput): PairedModel | null {
  const { limits, quadrants, width, series } = input
  const points = series.flatMap((entry) => entry.points)
  if (points.length === 0) return null
  const [left, right] = [LEFT, width - RIGHT]
  const x = acrossScale([...points.map((point) => point.x), ...limits.x.map((limit) => limit.value)], {
    left,
    right,
    part: quadrants?.x,
  })
  const xLabels = placeLabels(
    limits.x.map((limit) => labelWish(limit, rounded(x(limit.value)), right - left)),
    { left, right },
  )
  const head = ROW * (xLabels.length === 0 ? 0 : 1 + Math.max(...xLabels.map((label) => label.row)))
  const [top, height] = [HEAD + head, input.height + head]
  const plot = { left, right, top, bottom: height - FOOT }
  const words = cornerWords(quadrants === undefined ? null : rounded(x(quadrants.x)), plot)
  const y = upwardScale([...points.map((point) => point.y), ...limits.y.map((limit) => limit.value)], {
    top,
    bottom: plot.bottom,
    inset: 10 + ROW * words.rows,
    part: quadrants?.y,
  })
  const at = ({ points: own }: PairedSeries): Place[] => own.map((point) => [x(point.x), y(point.y)])
  const scale = width < NARROW ? SMALLER : 1
  const drawn = series.map((entry, place) => drawnSeries(series, place, { places: at(entry), scale }))
  const marks = series
    .flatMap(at)
    .map(([across, down]): Box => ({ left: across - 5, right: across + 5, top: down - 5, bottom: down + 5 }))
  return {
    width,
    height,
    plot,
    series: drawn,
    xLimits: limits.x.map((limit, index) => ({
      x: rounded(x(limit.value)),
      label: xLabels[index] as PlacedLabel,
      labelY: top - 5 - ROW * (xLabels[index]?.row ?? 0),
    })),
    yLimits: yLimitLines(limits.y, y, { plot, marks, taken: words.corners.map(boxOf) }),
    corners: words.corners,
    xTicks: x.ticks(width < NARROW ? 5 : 9).map((value) => ({ x: rounded(x(value)), value })),
    yTicks: logTicks(y.domain() as [number, number]).map((value) => ({ y: rounded(y(value)), value })),
  }
}

/** Moves the ends apart so that a value between them leaves at least a share of the whole on either side. */
function withSides([low, high]: readonly [number, number], part: number | undefined): [number, number] {
  if (part === undefined) return [low, high]
  const from = Math.min(low, (part - SIDE * high) / (1 - SIDE))
  return [from, Math.max(high, (part - SIDE * from) / (1 - SIDE))]
}

function spread(values: readonly number[], room: number): [number, number] {
  const [low = 0, high = 0] = extent(values)
  return low === high ? [low - room, high + room] : [low, high]
}

interface Across {
  readonly left: number
  readonly right: number
  readonly part: number | undefined
}
function acrossScale(values: readonly number[], { left, right, part }: Across) {
  const inner = scaleLinear(withSides(spread(values, 5), part), [left + 12, right - 12])
  return scaleLinear([inner.invert(left), inner.invert(right)], [left, right])
}

interface Upward {
  readonly top: number
  readonly bottom: number
  readonly inset: number
  readonly part: number | undefined
}
/** Marks stay off the rows of the corners' words at top and bottom. */
function upwardScale(values: readonly number[], { top, bottom, inset, part }: Upward) {
  const logs = withSides(
    spread(values.map(Math.log10), 0.1),
    part === undefined ? undefined : Math.log10(part),
  )
  const inner = scaleLinear(logs, [bottom - inset, top + inset])
  return scaleLog([10 ** inner.invert(bottom), 10 ** inner.invert(top)], [bottom, top])
}

/** 1, 2 and 5 of each decade; even steps where the axis is too short for three of those. */
export function logTicks([low, high]: readonly [number, number]): number[] {
  const decades = Array.from(
    { length: Math.floor(Math.log10(high)) - Math.floor(Math.log10(low)) + 1 },
    (_, index) => Math.floor(Math.log10(low)) + index,
  )
  const coarse = decades
    .flatMap((decade) => [1, 2, 5].map((digit) => Number(`${digit}e${decade}`)))
    .filter((value) => low <= value && value <= high)
  return 3 <= coarse.length ? coarse : ticks(low, high, 5).filter((value) => 0 < value)
}

/** Middle of a mark on the drawing. */
type Place = readonly [x: number, y: number]

function drawnSeries(
  series: readonly PairedSeries[],
  place: number,
  { places, scale }: { places: readonly Place[]; scale: number },
): DrawnSeries {
  const { word, letter, draw } = pairedMark(place)
  const { name = '', role = 'source' } = series[place] ?? {}
  return {
    name,
    role,
    tone: series.slice(0, place).filter((entry) => entry.role === 'source').length % TONES,
    shape: word,
    letter,
    marks: places.map(([x, y]) => draw(x, y, scale * SIZE[role])).join(''),
    letters: letter === '' ? [] : places.map(([x, y]) => ({ x: rounded(x + 6), y: rounded(y + 4) })),
  }
}

function labelWish(
  { label }: PairedLimit,
  x: number,
  room: number,
): { text: string; x: number; width: number } {
  const text = shortened(label, room)
  return { text, x, width: text.length * LETTER }
}

/** A label wider than the plot is cut; the legend tells it whole. */
function shortened(text: string, room: number): string {
  const letters = Math.floor(room / LETTER)
  return text.length <= letters ? text : `${text.slice(0, letters - 1).trimEnd()}…`
}

type Plot = PairedModel['plot']

/** The quadrants' names in the four corners, broken where the quadrant is narrower than its name. */
function cornerWords(part: number | null, plot: Plot): { corners: TextAt[]; rows: number } {
  if (part === null) return { corners: [], rows: 0 }
  const [leftRoom, rightRoom] = [part - plot.left - 10, plot.right - part - 10]
  const names = {
    topLeft: broken('meets resistivity alone', leftRoom),
    topRight: broken('meets both', rightRoom),
    bottomLeft: broken('meets neither', leftRoom),
    bottomRight: broken('meets strength alone', rightRoom),
  }
  const atTop = (lines: readonly string[], row: number) => ({
    text: lines[row] ?? '',
    y: plot.top + ROW * (row + 1),
  })
  const atBottom = (lines: readonly string[], row: number) => ({
    text: lines[row] ?? '',
    y: plot.bottom - 6 - ROW * (lines.length - 1 - row),
  })
  const start = { x: plot.left + 6, anchor: 'start' } as const
  const end = { x: plot.right - 6, anchor: 'end' } as const
  return {
    corners: [
      ...names.topLeft.map((_, row) => ({ ...atTop(names.topLeft, row), ...start })),
      ...names.topRight.map((_, row) => ({ ...atTop(names.topRight, row), ...end })),
      ...names.bottomLeft.map((_, row) => ({ ...atBottom(names.bottomLeft, row), ...start })),
      ...names.bottomRight.map((_, row) => ({ ...atBottom(names.bottomRight, row), ...end })),
    ],
    rows: Math.max(...Object.values(names).map((lines) => lines.length)),
  }
}

function broken(text: string, room: number): string[] {
  const lines: string[] = []
  for (const word of text.split(' ')) {
    const joined = `${lines.at(-1) ?? ''} ${word}`
    if (0 < lines.length && joined.length * LETTER <= room) lines[lines.length - 1] = joined
    else lines.push(word)
  }
  return lines
}

interface Box {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

function boxOf({ text, x, y, anchor }: TextAt): Box {
  const width = text.length * LETTER
  return {
    left: anchor === 'start' ? x : x - width,
    right: anchor === 'start' ? x + width : x,
    top: y - 11,
    bottom: y + 3,
  }
}

function overlap(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom
}

/** Each label stands at that end and side of its line where it covers the fewest marks, and no other text. */
function yLimitLines(
  limits: readonly PairedLimit[],
  y: (value: number) => number,
  { plot, marks, taken }: { plot: Plot; marks: readonly Box[]; taken: readonly Box[] },
): PairedModel['yLimits'] {
  const texts = [...taken]
  return limits.map((limit) => {
    const height = rounded(y(limit.value))
    const text = shortened(limit.label, plot.right - plot.left - 12)
    const wishes = (
      [
        ['start', plot.left + 6],
        ['end', plot.right - 6],
      ] as const
    ).flatMap(([anchor, x]) =>
      [height - 5, height + 14].map((labelY): TextAt => ({ text, x, y: rounded(labelY), anchor })),
    )
    const cost = (wish: TextAt) => {
      const box = boxOf(wish)
      const outside = box.top < plot.top || plot.bottom < box.bottom
      return (
        (outside ? 1e6 : 0) +
        1e4 * texts.filter((other) => overlap(box, other)).length +
        marks.filter((mark) => overlap(box, mark)).length
      )
    }
    const label = wishes.reduce((best, wish) => (cost(wish) < cost(best) ? wish : best))
    texts.push(boxOf(label))
    return { y: height, label }
  })
}
