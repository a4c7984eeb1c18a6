/** What the charts of a source show beside its series: limit lines of the criteria and the band of the governing one. */
import { isSameAge } from '../../core/measure/age.ts'
import { type ClauseScope, comparisonsFor } from '../../core/criteria/comparisons-for.ts'
import { type Comparison, type Criterion, setName } from '../../core/criteria/criterion.ts'
import { quantitiesFor } from '../../core/criteria/limits-for-class.ts'
import type { Series } from '../shape/edition.ts'
import { printedUnits } from '../../words/as-written.ts'

export interface TrendContext {
  /** Equal limits of several sets are one, with the names of all. */
  readonly limits: readonly {
    readonly value: number
    readonly label: string
    readonly sets: readonly string[]
  }[]
  readonly band?: { readonly half: number; readonly relative: boolean }
}

const WORDS: Readonly<Record<string, string>> = {
  'at-least': 'at least',
  'at-most': 'at most',
  above: 'above',
  below: 'below',
  between: 'limit',
  'magnitude-at-most': 'at most ±',
}

/**
 * Limit lines that any of the criteria sets for a series, the governing one's first; and the first uniformity
 * band.
 */
export function trendContext(
  series: Pick<Series, 'property' | 'condition' | 'age'>,
  criteria: readonly Criterion[],
  scope: ClauseScope,
): TrendContext {
  const lotClass = scope.class
  const asked = criteria.flatMap((criterion) =>
    comparisonsFor(criterion.clauses, scope)
      .filter((clause) => matches(clause, series))
      .map((clause) => ({ clause, set: setName(criterion) })),
  )
  const lines = asked
    .filter(({ clause }) => clause.deviation === undefined && clause.statistic === undefined)
    .flatMap(({ clause, set }) => limitLines(clause, lotClass).map((line) => ({ ...line, set })))
  const uniformity = asked.find(({ clause }) => clause.deviation?.from === 'preceding')?.clause
  const half = uniformity?.limits[0] && quantitiesFor(uniformity.limits[0], lotClass)
  return {
    limits: [...Map.groupBy(lines, ({ value }) => value)].map(([value, own]) => ({
      value,
      label: own[0]?.label ?? '',
      sets: [...new Set(own.map(({ set }) => set))],
    })),
    ...(uniformity?.deviation?.from !== 'preceding' || half?.[0] === undefined
      ? {}
      : { band: { half: half[0].value, relative: uniformity.deviation.relative } }),
  }
}

function matches(clause: Comparison, series: Pick<Series, 'property' | 'condition' | 'age'>): boolean {
  return (
    clause.property === series.property &&
    clause.condition === series.condition &&
    isSameAge(clause.age, series.age)
  )
}

function limitLines(clause: Comparison, lotClass: string | null): { value: number; label: string }[] {
  return clause.limits.flatMap((limit) =>
    (quantitiesFor(limit, lotClass) ?? []).map((quantity) => ({
      value: quantity.value,
      label: `${WORDS[limit.operator] ?? ''} ${printedUnits(quantity.written)}`.trim(),
    })),
  )
}
