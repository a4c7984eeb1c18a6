/**
 * A value against its limit on a short line. The limit keeps its place (a lower limit near the left, an upper
 * one near the right, both ends of a range evenly), so that a column of strips can be read downwards;
 * distances are in proportion to the limit.
 */
import { rounded } from './plot.ts'

/** What a strip is drawn from, all in the unit of the value. */
export interface StripInput {
  /** Absent where there is none yet. */
  readonly value?: number
  /** Ends of what meets the limit: one alone for a limit to one side. */
  readonly from?: number
  readonly to?: number
  /** Standard uncertainty. */
  readonly u?: number
}

export interface StripModel {
  readonly width: number
  readonly height: number
  /** The part of the line that meets the limit. */
  readonly allowed: { readonly x: number; readonly width: number }
  readonly limits: readonly number[]
  /** Where the value stands; `beyond` when it lies outside the line and is drawn at its end. */
  readonly mark: { readonly x: number; readonly beyond: 'left' | 'right' | null } | null
  /**
   * From low to high, two standard uncertainties to each side, cut off at the line's ends; null without an
   * uncertainty.
   */
  readonly interval: { readonly from: number; readonly to: number } | null
}

const WIDTH = 120
const HEIGHT = 16
/** Room at the ends, so that a mark is never cut. */
const MARGIN = 6

/** Places of limits on a line of length 1: own design, chosen so that both sides of a limit can be seen. */
const LOWER_AT = 0.3
const UPPER_AT = 0.7
const RANGE_FROM = 0.25

/** Standard uncertainties that an interval reaches to each side: about 95 % of a normal distribution. */
const COVERAGE = 2

interface Scale {
  readonly at: (value: number) => number
  readonly allowed: readonly [number, number]
  readonly limits: readonly number[]
}

/**
 * @returns the strip; null where there is no limit to draw, or none that distances can be in proportion to
 */
export function limitStrip({ value, u, ...limit }: StripInput): StripModel | null {
  const scale = scaleFor(limit)
  if (scale === null) return null
  const [from, to] = scale.allowed
  return {
    width: WIDTH,
    height: HEIGHT,
    allowed: { x: pixel(from), width: rounded(pixel(to) - pixel(from)) },
    limits: scale.limits.map(pixel),
    mark: value === undefined ? null : markAt(scale.at(value)),
    interval:
      value === undefined || u === undefined
        ? null
        : { from: cut(scale.at(value - COVERAGE * u)), to: cut(scale.at(value + COVERAGE * u)) },
  }
}

function scaleFor({ from, to }: Pick<StripInput, 'from' | 'to'>): Scale | null {
  if (from !== undefined && to !== undefined) return from < to ? rangeScale(from, to) : null
  if (from !== undefined) return 0 < from ? lowerScale(from) : null
  return to !== undefined && 0 < to ? upperScale(to) : null
}

function rangeScale(from: number, to: number): Scale {
  const ends = [RANGE_FROM, 1 - RANGE_FROM] as const
  return {
    at: (value) => RANGE_FROM + ((1 - 2 * RANGE_FROM) * (value - from)) / (to - from),
    allowed: ends,
    limits: ends,
  }
}

function lowerScale(from: number): Scale {
  return {
    at: (value) => LOWER_AT + (UPPER_AT * (value - from)) / from,
    allowed: [LOWER_AT, 1],
    limits: [LOWER_AT],
  }
}

function upperScale(to: number): Scale {
  return { at: (value) => (UPPER_AT * value) / to, allowed: [0, UPPER_AT], limits: [UPPER_AT] }
}

function markAt(place: number): StripModel['mark'] {
  const beyond = place < 0 ? 'left' : 1 < place ? 'right' : null
  return { x: cut(place), beyond }
}

function cut(place: number): number {
  return pixel(Math.min(1, Math.max(0, place)))
}

function pixel(place: number): number {
  return rounded(MARGIN + place * (WIDTH - 2 * MARGIN))
}
