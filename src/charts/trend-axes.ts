/** The two axes of a trend: time across, values upwards, with the ticks that are labelled. */
import { extent, scaleLinear, scaleLog, scaleUtc, utcFormat } from 'd3'

/** Room for the labels of the value axis, and at the other end. */
export const LEFT = 46
export const RIGHT = 12
/** Largest over smallest value from which a linear axis hides the small ones. */
const LOG_FROM = 8
const MS_PER_DAY = 86_400_000
const MS_PER_YEAR = 365.25 * MS_PER_DAY

export type TimeScale = ReturnType<typeof scaleUtc<number, number>>
export type ValueScale = ((value: number) => number) & { ticks(count?: number): number[] }
export interface TimeTick {
  readonly x: number
  readonly label: string
}
export interface ValueTick {
  readonly y: number
  readonly value: number
}

/** Midnight of the day in UTC, so that no machine's zone moves a point. */
export function utcDate(text: string): Date {
  return new Date(`${text.slice(0, 10)}T00:00:00Z`)
}

/** Two decimals of a pixel: the same digits on every machine. */
export function rounded(value: number): number {
  return Math.round(value * 100) / 100
}

export function timeScale(dates: readonly string[], width: number): TimeScale {
  const [first = 0, last = 0] = extent(dates, (text) => utcDate(text).getTime())
  const room = first === last ? 15 * MS_PER_DAY : (last - first) * 0.02
  return scaleUtc<number, number>([new Date(first - room), new Date(last + room)], [LEFT, width - RIGHT])
}

/** By spread: logarithmic where a linear axis would press the small values together. */
export function valueScale(
  values: readonly number[],
  range: [number, number],
  axis: 'linear' | 'by-spread',
): { y: ValueScale; logarithmic: boolean } {
  const [low = 0, high = 0] = extent(values)
  if (axis === 'by-spread' && 0 < low && LOG_FROM < high / low)
    return { y: scaleLog([low * 0.9, high * 1.1], range), logarithmic: true }
  const room = low === high ? Math.max(Math.abs(low) * 0.1, 0.1) : (high - low) * 0.08
  return {
    y: scaleLinear([low < 0 || room < low ? low - room : Math.min(low, 0), high + room], range).nice(5),
    logarithmic: false,
  }
}

export function timeTicks(x: TimeScale, width: number): TimeTick[] {
  const [from, to] = x.domain() as [Date, Date]
  const years = (to.getTime() - from.getTime()) / MS_PER_YEAR
  const month = utcFormat('%b %Y')
  const label = (date: Date) =>
    2 < years && date.getUTCMonth() === 0 ? String(date.getUTCFullYear()) : month(date)
  return x
    .ticks(width < 500 ? 3 : 7)
    .map((date) => ({ x: rounded(x(date)), label: label(date) }))
    .filter((tick) => tick.x < width - RIGHT - 18 && LEFT + 12 < tick.x)
}

/**
 * Ticks no finer than the results are printed; a logarithmic axis is labelled at 1, 2 and 5 of each decade
 * only.
 */
export function valueTicks(y: ValueScale, logarithmic: boolean, decimals: number): ValueTick[] {
  const all = y.ticks(4)
  const chosen = logarithmic ? all.filter((value) => /^[125]0*$/.test(String(value)) || value < 1) : all
  const step = 1 / 10 ** decimals
  return chosen
    .filter(
      (value) => logarithmic || Math.abs(value / step - Math.round(value / step)) < 1e-6 || chosen.length < 4,
    )
    .map((value) => ({ y: rounded(y(value)), value }))
}
