/**
 * The axis that all panels of a source share: days across, in thousandths of the width, so that letters keep their
 * size at every width.
 */
import { rounded } from './plot.ts'

/** Width of a panel in its own units across. */
export const ACROSS = 1000
/** Left free at either end. */
const ROOM = 12

export interface DayAxis {
  /** First and last day, since 1970-01-01. */
  readonly from: number
  readonly to: number
}

export interface AxisTick {
  /** Thousandths of the width. */
  readonly x: number
  readonly text: string
  /** Kept where there is little room. */
  readonly major: boolean
}

/** Thousandths of the width for a day. */
export function acrossOf({ from, to }: DayAxis, day: number): number {
  const share = from === to ? 0.5 : (day - from) / (to - from)
  return rounded(ROOM + share * (ACROSS - 2 * ROOM), 1)
}

/** Thousandths of the width for one of so many places. */
export function acrossOfPlace(place: number, count: number): number {
  return acrossOf({ from: 0, to: Math.max(1, count - 1) }, place)
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']
/** Labels that a phone has room for, and least distance between labels elsewhere. */
const FEW = 12
/** Of the months of an axis without a January, one in so many has room on a phone. */
const FEW_MONTHS = 3

/** The first days of months or years, as many as can be told apart. */
export function axisTicks(axis: DayAxis): AxisTick[] {
  const starts = monthStarts(axis)
  const step = [1, 2, 3, 4, 6, 12, 24, 60, 120].find((months) => starts.length / months <= FEW) ?? 240
  const named = starts.filter(({ year, month }) => (year * 12 + month) % step === 0)
  const hasYear = named.some(({ month }) => month === 0)
  return named.map(({ day, year, month }, place) => ({
    x: acrossOf(axis, day),
    text: textOf({ year, month }, !hasYear && place === 0 ? 'with-year' : 'month'),
    major: hasYear ? month === 0 : place % FEW_MONTHS === 0,
  }))
}

/** January stands as its year; where an axis has none, its first month says which year it is. */
function textOf({ year, month }: { year: number; month: number }, form: 'with-year' | 'month'): string {
  if (month === 0) return String(year)
  return form === 'month' ? (MONTHS[month] ?? '') : `${MONTHS[month] ?? ''} ${year}`
}

/** Least distance between two names of lots, in thousandths; on a phone, twice and more of it. */
const NAMES_APART = 110
const FEW_NAMES = 4

/** As many names as have room, from the first on. @param places in order across */
export function placeTicks(places: readonly { readonly x: number; readonly text: string }[]): AxisTick[] {
  const named: { x: number; text: string }[] = []
  for (const place of places)
    if (named.length === 0 || NAMES_APART <= place.x - (named.at(-1)?.x ?? 0)) named.push(place)
  return named.map(({ x, text }, place) => ({ x, text, major: place % FEW_NAMES === 0 }))
}

function monthStarts({ from, to }: DayAxis): { day: number; year: number; month: number }[] {
  const first = new Date(from * 86_400_000)
  const found: { day: number; year: number; month: number }[] = []
  for (let at = first.getUTCFullYear() * 12 + first.getUTCMonth(); ; at++) {
    const [year, month] = [Math.floor(at / 12), at % 12]
    const day = Date.UTC(year, month, 1) / 86_400_000
    if (to < day) return found
    if (from <= day) found.push({ day, year, month })
  }
}

/** Thousandths of the width as SVG writes them. */
export function percent(x: number): string {
  return `${rounded(x / 10, 2)}%`
}
