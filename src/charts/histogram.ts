/**
 * A histogram about an edge: bars that begin at the edge, and a curve of what is expected in a bar. Across in thousandths
 * of the width, down in pixels.
 */
import { extent, line, max, scaleLinear } from 'd3'
import { rounded } from './plot.ts'

export interface HistogramInput {
  readonly values: readonly number[]
  readonly edge: number
  /** Of a bar, above zero. */
  readonly barWidth: number
  /** Drawn as a ground about the edge. */
  readonly window: { readonly from: number; readonly to: number }
  /** Expected count of a bar whose middle lies at a value; null draws no curve. */
  readonly expected: ((middle: number) => number) | null
  readonly height: number
}

export interface HistogramBar {
  readonly from: number
  readonly to: number
  readonly count: number
  /** By the curve; null without one. */
  readonly expected: number | null
}

export interface HistogramModel {
  readonly height: number
  readonly bars: readonly HistogramBar[]
  /** Top of each bar, in their order; thousandths across. */
  readonly tops: readonly { readonly x: number; readonly y: number }[]
  /** All bars as one path. */
  readonly path: string
  readonly curve: string
  readonly edge: number
  readonly window: { readonly x: number; readonly width: number }
  /** Pixels from the top at which no result stands. */
  readonly base: number
  readonly ticks: readonly { readonly x: number; readonly value: number }[]
  readonly counts: readonly { readonly y: number; readonly count: number }[]
}

const TOP = 8
/** Room for the values below the bars. */
const FOOT = 22
/** Points of the curve in a bar. */
const STEPS = 4

/** null without a value. */
export function histogram(input: HistogramInput): HistogramModel | null {
  const { values, edge, barWidth, window, height } = input
  const [least, most] = extent(values)
  if (least === undefined || most === undefined) return null
  const bars = barsOf(input, { least, most })
  const [first, last] = [bars[0]?.from ?? edge, (bars.at(-1)?.from ?? edge) + barWidth]
  const x = scaleLinear([first, last], [0, 1000])
  const curve = curveOf(input, first, last)
  const highest = max([...bars.map(({ count }) => count), ...curve.map(([, count]) => count), 1]) ?? 1
  const base = height - FOOT
  const y = scaleLinear([0, highest], [base, TOP])
  const across = (value: number) => rounded(x(value), 1)
  return {
    height,
    bars,
    tops: bars.map(({ from, count }) => ({ x: across(from + barWidth / 2), y: rounded(y(count), 1) })),
    path: bars
      .filter(({ count }) => 0 < count)
      .map(({ from, count }) =>
        barPath([across(from), across(from + barWidth)], [rounded(y(count), 1), base]),
      )
      .join(''),
    curve:
      line<[number, number]>(
        ([value]) => x(value),
        ([, count]) => y(count),
      ).digits(1)(curve) ?? '',
    edge: across(edge),
    window: { x: across(window.from), width: rounded(x(window.to) - x(window.from), 1) },
    base,
    ticks: x.ticks(5).map((value) => ({ value, x: across(value) })),
    counts: y
      .ticks(3)
      .filter((count) => Number.isInteger(count))
      .map((count) => ({ count, y: rounded(y(count), 1) })),
  }
}

/** From the first bar with a value to the last, and over the whole window in any case. */
function barsOf(
  { values, edge, barWidth, window, expected }: HistogramInput,
  { least, most }: { least: number; most: number },
): HistogramBar[] {
  const place = (value: number) => Math.floor((value - edge) / barWidth)
  const counts = new Map<number, number>()
  for (const value of values) counts.set(place(value), (counts.get(place(value)) ?? 0) + 1)
  const first = Math.min(place(least), Math.round((window.from - edge) / barWidth))
  const last = Math.max(place(most), Math.round((window.to - edge) / barWidth) - 1)
  return Array.from({ length: last - first + 1 }, (_, step) => {
    const from = edge + (first + step) * barWidth
    return {
      from,
      to: from + barWidth,
      count: counts.get(first + step) ?? 0,
      expected: expected === null ? null : expected(from + barWidth / 2),
    }
  })
}

function curveOf({ expected, barWidth }: HistogramInput, from: number, to: number): [number, number][] {
  if (expected === null) return []
  const steps = Math.round(((to - from) / barWidth) * STEPS)
  return Array.from({ length: steps + 1 }, (_, step) => {
    const value = from + ((to - from) * step) / steps
    return [value, expected(value)]
  })
}

function barPath([left, right]: [number, number], [top, base]: [number, number]): string {
  return `M${left},${base}V${top}H${right}V${base}Z`
}
