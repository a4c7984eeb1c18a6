/** What a criterion admits of a single result of a series. */
import { comparisonsFor } from '../../core/criteria/comparisons-for.ts'
import type { Comparison, Criterion } from '../../core/criteria/criterion.ts'
import { limitsForClass, statedLimit } from '../../core/criteria/limits-for-class.ts'
import type { SeriesLimit } from '../../core/history/source-history.ts'
import { effectiveEnds } from '../../core/judging/effective-ends.ts'
import { isSameAge } from '../../core/measure/age.ts'
import type { MaterialKind } from '../../core/measure/material-kind.ts'
import type { PropertyKey } from '../../core/measure/properties.ts'
import type { SeriesHead } from './series-points.ts'

/**
 * The limits of a criterion on a single result, by clause.
 * @param criterion undefined where none governs
 * @param head what the series is of; clauses for another class, duty, condition or age set it no limit
 */
export function seriesLimits(
  criterion: Criterion | undefined,
  head: SeriesHead,
  kind: MaterialKind,
): SeriesLimit[] {
  if (criterion === undefined) return []
  return singleLimits(criterion, head.class, kind)
    .filter((clause) => isOn(clause, head))
    .flatMap((clause) =>
      limitsForClass(clause.limits, head.class).map((limit) => {
        const { low, high } = effectiveEnds(limit, clause.resolution)
        return {
          criterion: criterion.id,
          clause: clause.id,
          low: low?.at ?? null,
          high: high?.at ?? null,
          written: statedLimit(limit).written,
          operator: limit.operator,
        }
      }),
    )
}

/** Properties that a criterion limits for a class of a kind. */
export function limitedProperties(
  criterion: Criterion | undefined,
  lotClass: string | null,
  kind: MaterialKind,
): PropertyKey[] {
  return criterion === undefined
    ? []
    : singleLimits(criterion, lotClass, kind).map(({ property }) => property)
}

function singleLimits({ clauses }: Criterion, lotClass: string | null, kind: MaterialKind): Comparison[] {
  return comparisonsFor(clauses, { class: lotClass, kind }).filter(
    ({ deviation, statistic, limits }) =>
      deviation === undefined &&
      statistic === undefined &&
      limits.some(({ operator }) => operator !== 'report'),
  )
}

function isOn(clause: Comparison, head: SeriesHead): boolean {
  return (
    clause.property === head.property &&
    clause.condition === head.condition &&
    isSameAge(clause.age, head.age) &&
    (clause.duty === undefined || clause.duty === head.duty)
  )
}
