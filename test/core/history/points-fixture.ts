/** Points of a series, a week apart. */
import type { ComparablePoint } from '../../../src/core/history/comparable-points.ts'
import { momentOfDay } from '../../../src/core/measure/moment.ts'

interface Made {
  readonly laboratory?: string
  readonly cement?: string
  /** By point; each its own without them. */
  readonly clusters?: readonly string[]
  readonly controls?: readonly number[]
  readonly duplicates?: readonly number[]
  readonly stated?: number
  /** Place of the first. */
  readonly from?: number
  /** Days between neighbours. */
  readonly every?: number
}

/** 2026-01-01 in days since 1970-01-01. */
const FIRST = 20_454

export function pointsOf(
  values: readonly number[],
  { laboratory = 'works', cement, clusters, controls, duplicates, stated, from = 0, every = 7 }: Made = {},
): ComparablePoint[] {
  return values.map((value, at) => ({
    place: from + at,
    value,
    bounded: false,
    sampled: momentOfDay(FIRST + every * (from + at)),
    laboratory,
    cluster: clusters?.[at] ?? `lot ${from + at}`,
    ...(cement === undefined ? {} : { cement }),
    ...(controls?.[at] === undefined ? {} : { controlValue: controls[at] }),
    ...(duplicates?.[at] === undefined ? {} : { duplicates: duplicates[at] }),
    ...(stated === undefined ? {} : { stated }),
  }))
}

/** Up and down about 80 without a trend and without any correlation worth the name. */
export const LEVEL_VALUES = [
  80.4, 78.9, 81.2, 79.5, 80.9, 79.1, 80.2, 78.6, 81.4, 80.1, 79.8, 80.7, 78.8, 81.0, 79.6, 80.3, 79.2, 80.8,
  79.9, 80.5, 79.0, 81.1, 80.0, 79.4,
]
