/** The two axes of a trend: time across, values upwards, with the ticks that are labelled. */
import type { Moment } from '../core/measure/moment.ts'
import { extent, scaleLinear, scaleLog, scaleUtc, utcDay, utcFormat, utcHour } from 'd3'
import { LEFT, RIGHT, rounded } from './plot.ts'

/** Largest over smallest value from which a linear axis hides the small ones. */
const LOG_FROM = 8
/** A span above which a tick of January names its year alone: two years. */
const LONG_HOURS = 2 * 365.25 * 24
/** Days left free on either side of a single date. */
const LONE_DAYS = 15

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
export function utcDate({ day }: Moment): Date {
  return utcDay.offset(new Date(0), day)
}

export function timeScale(dates: readonly Moment[], width: number): TimeScale {
  const [first = new Date(0), last = first] = extent(dates, utcDate)
  const room = (last.getTime() - first.getTime()) * 0.02
  const ends =
    room === 0
      ? [utcDay.offset(first, -LONE_DAYS), utcDay.offset(last, LONE_DAYS)]
      : [new Date(first.getTime() - room), new Date(last.getTime() + room)]
  return scaleUtc<number, number>(ends, [LEFT, width - RIGHT])
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
  const long = utcHour.offset(from, LONG_HOURS) < to
  const [year, month] = [utcFormat('%Y'), utcFormat('%b %Y')]
  const label = (date: Date) => (long && date.getUTCMonth() === 0 ? year(date) : month(date))
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

/** Decimals that tell the labels of an axis apart: none for whole numbers, two at most. */
export function tickDecimals(ticks: readonly { readonly value: number }[]): number {
  const digits = ticks.map(({ value }) => (String(value).split('.')[1] ?? '').length)
  return Math.min(2, Math.max(0, ...digits))
}
