/** The limits that the governing set puts on a single result of a series, as lines and as the ends they admit. */
import { type ClauseScope, comparisonsFor } from '../../core/criteria/comparisons-for.ts'
import type { Criterion } from '../../core/criteria/criterion.ts'
import { type ClassLimit, limitsForClass } from '../../core/criteria/limits-for-class.ts'
import { effectiveEnds } from '../../core/judging/effective-ends.ts'
import { isSameAge } from '../../core/measure/age.ts'
import type { Series } from '../shape/edition.ts'

export interface OwnLimit {
  /** In the unit of the series. */
  readonly value: number
  /** "75 at least". */
  readonly label: string
  /** What is admitted before rounding. */
  readonly low: number
  readonly high: number
}

const SIDES = {
  'at-least': ['at least'],
  above: ['above'],
  'at-most': ['at most'],
  below: ['below'],
  between: ['at least', 'at most'],
  'magnitude-at-most': ['at most ±'],
} as const

/** Each limit once; clauses for other classes or kinds, for deviations and statistics set none. */
export function ownLimits(
  { clauses }: Criterion,
  series: Pick<Series, 'property' | 'condition' | 'age'>,
  scope: ClauseScope,
): OwnLimit[] {
  const lines = comparisonsFor(clauses, scope)
    .filter(
      (clause) =>
        clause.property === series.property &&
        clause.condition === series.condition &&
        isSameAge(clause.age, series.age) &&
        clause.deviation === undefined &&
        clause.statistic === undefined &&
        !clause.information &&
        !clause.optional,
    )
    .flatMap((clause) =>
      limitsForClass(clause.limits, scope.class).flatMap((limit) => linesOf(limit, clause.resolution)),
    )
  return [...new Map(lines.map((line) => [`${line.value}|${line.label}`, line])).values()]
}

function linesOf(limit: ClassLimit, resolution: Parameters<typeof effectiveEnds>[1]): OwnLimit[] {
  const { low, high } = effectiveEnds(limit, resolution)
  return limit.quantities.map(({ value, written }, place) => ({
    value,
    label: `${/^[-\d.]+/.exec(written)?.[0] ?? String(value)} ${SIDES[limit.operator][place] ?? ''}`.trim(),
    low: low?.at ?? Number.NEGATIVE_INFINITY,
    high: high?.at ?? Number.POSITIVE_INFINITY,
  }))
}
