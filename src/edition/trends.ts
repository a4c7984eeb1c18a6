/** What the trend charts of a source show beside its series: limit lines and bands of the governing criterion, events. */
import { type Comparison, type Criterion, everyClause, EVERY_CLASS } from '../core/criterion.ts'
import { property } from '../core/properties.ts'
import type { Series, SourceEntry } from './edition.ts'
import { unitSign } from './print.ts'

export interface TrendContext {
  readonly limits: readonly { readonly value: number; readonly label: string }[]
  readonly band?: { readonly half: number; readonly relative: boolean }
}

const WORDS: Readonly<Record<string, string>> = { 'at-least': 'at least', 'at-most': 'at most', above: 'above', below: 'below', between: 'limit', 'magnitude-at-most': 'at most ±' }

/** Limit lines that any of the criteria sets for a series and class, the governing one's first; and the uniformity band of the governing one. */
export function trendContext(series: Pick<Series, 'property' | 'condition' | 'age'>, criteria: readonly Criterion[], lotClass: string | null): TrendContext {
  const clauses = criteria.flatMap((criterion) => [...everyClause(criterion.clauses)]).filter((clause): clause is Comparison => clause.form === 'comparison' && matches(clause, series))
  const limits = clauses.filter((clause) => clause.deviation === undefined).flatMap((clause) => limitLines(clause, lotClass))
  const uniformity = clauses.find((clause) => clause.deviation?.from === 'preceding')
  const half = uniformity?.limits[0]?.byClass[lotClass ?? ''] ?? uniformity?.limits[0]?.byClass[EVERY_CLASS]
  return {
    limits: limits.filter((limit, index) => limits.findIndex((other) => other.value === limit.value) === index),
    ...(uniformity?.deviation?.from !== 'preceding' || half?.[0] === undefined ? {} : { band: { half: half[0].value, relative: uniformity.deviation.relative } }),
  }
}

function matches(clause: Comparison, series: Pick<Series, 'property' | 'condition' | 'age'>): boolean {
  return clause.property === series.property && clause.condition === series.condition && clause.age === series.age
}

function limitLines(clause: Comparison, lotClass: string | null): { value: number; label: string }[] {
  return clause.limits.flatMap((limit) => (limit.byClass[lotClass ?? ''] ?? limit.byClass[EVERY_CLASS] ?? []).map((quantity) => ({
    value: quantity.value, label: `${WORDS[limit.operator] ?? ''} ${quantity.written.replace('%', '').trim()} ${unitSign(property(clause.property).kind === 'fraction' ? '%' : quantity.unit)}`.trim(),
  })))
}

/** Events of a source for its charts. */
export function trendEvents(source: SourceEntry): { from: string; to?: string; title: string }[] {
  return (source.record.events ?? []).map((event) => ({ from: event.date, title: event.title, ...(event.to === undefined ? {} : { to: event.to }) }))
}

/** "Strength activity index, 20 %, 23 °C, constant flow, 28 d". */
export function seriesTitle(series: Pick<Series, 'property' | 'condition' | 'age'>, conditionTitle: (id: string) => string): string {
  return [property(series.property).title, series.condition === undefined ? undefined : conditionTitle(series.condition), series.age].filter((part) => part !== undefined).join(', ')
}
