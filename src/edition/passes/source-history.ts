/** The history of a source with its statistics, as of the day by which its state was made. */
import { compareTexts } from '../../core/measure/compare-texts.ts'
import type { Criterion } from '../../core/criteria/criterion.ts'
import { type AgePair, ageFit } from '../../core/history/age-prediction.ts'
import { closestLimit } from '../../core/history/closest-limit.ts'
import { type Bridge, type ComparableGroup, comparableGroups } from '../../core/history/comparable-points.ts'
import { stepsOf } from '../../core/history/event-steps.ts'
import { monthEffects } from '../../core/history/month-effects.ts'
import { segmentOf } from '../../core/history/segment.ts'
import type {
  AgePrediction,
  SourceHistory,
  SourceSeries,
  UniformityCount,
} from '../../core/history/source-history.ts'
import type { Verdict } from '../../core/criteria/verdict.ts'
import { everyClauseOutcome } from '../../core/criteria/verdict.ts'
import { defined } from '../../core/measure/defined.ts'
import { kept } from '../../core/measure/kept.ts'
import { property, storedUnit } from '../../core/measure/properties.ts'
import { RATIO_OF } from '../../core/measure/ratio-indices.ts'
import type { Source } from '../../records/schema/loaded-records.ts'
import { CHARTED } from './series.ts'
import { limitedProperties, seriesLimits } from './series-limits.ts'
import { type GatheredSeries, gatheredSeries, type PointsFrom } from './series-points.ts'
import type { SourceState } from './source-state.ts'

export interface HistoryFrom extends Omit<PointsFrom, 'wanted'> {
  readonly bridges: readonly Bridge[]
  /** The set that governs the newest lot. */
  readonly governing: Criterion | undefined
  /** Lots of the source with their verdicts, the governing one first, in order of sampling. */
  readonly lots: readonly { readonly id: string; readonly verdicts: readonly Verdict[] }[]
}

/** Made once, when somebody asks: a build that shows one source computes that of no other. */
export function sourceHistory(state: SourceState, from: HistoryFrom): SourceHistory {
  const { kind } = state.record
  const classes = new Set(state.lots.map((lot) => lot.class))
  const limited = [...classes].flatMap((own) => limitedProperties(from.governing, own, kind))
  const wanted = new Set([...CHARTED, ...limited])
  const gathered = gatheredSeries(state.lots, { ...from, wanted })
  const order = [...wanted]
  const series = gathered.map((one) => seriesOf(state, from, one)).sort((a, b) => byPlace(a, b, order))
  const withdrawn = new Set(state.lots.filter((lot) => lot.withdrawn !== undefined).map(({ id }) => id))
  return {
    asOf: state.asOf,
    series,
    closest: closestLimit(series),
    uniformity: uniformityCounts(from.lots.filter(({ id }) => !withdrawn.has(id))),
    predictions: predictionsOf(gathered),
  }
}

/** What governs first: series with a limit, then by property as charts are, condition and age. */
function byPlace(a: SourceSeries, b: SourceSeries, order: readonly string[]): number {
  return (
    Number(a.limits.length === 0) - Number(b.limits.length === 0) ||
    order.indexOf(a.property) - order.indexOf(b.property) ||
    compareTexts(a.condition ?? '', b.condition ?? '') ||
    (a.age?.hours ?? 0) - (b.age?.hours ?? 0) ||
    compareTexts(a.key, b.key)
  )
}

function seriesOf(state: SourceState, from: HistoryFrom, gathered: GatheredSeries): SourceSeries {
  const { head, points, comparable } = gathered
  const { record, history } = state
  const limits = seriesLimits(from.governing, head, record.kind)
  const groups = comparableGroups(comparable, history.restartDays, from.bridges)
  const context = {
    limits,
    phases: (record.phases ?? []).filter(
      ({ properties }) => properties === undefined || properties.includes(head.property),
    ),
    divertedWithoutResults: divertedWithout(record, head.property),
  }
  return {
    ...head,
    unit: storedUnit(head.property),
    decimals: property(head.property).decimals,
    limits,
    points,
    segments: groups.map((group: ComparableGroup) => segmentOf(group, context)),
    steps: stepsOf(comparable, record.events ?? []),
    months: monthEffects(groups),
  }
}

function divertedWithout({ diverted = [] }: Source, key: SourceSeries['property']): number[] {
  return diverted.filter(({ results }) => results?.[key] === undefined).map(({ on }) => on.day)
}

/** By criterion and clause, in the order in which verdicts name them. */
function uniformityCounts(lots: HistoryFrom['lots']): UniformityCount[] {
  const counts = new Map<string, UniformityCount>()
  for (const { id, verdicts } of lots) {
    const [verdict] = verdicts
    for (const clause of everyClauseOutcome(verdict?.clauses ?? [])) {
      const judged = clause.outcome === 'meets' || clause.outcome === 'does-not-meet'
      const [half] = clause.limit?.values ?? []
      if (clause.kind !== 'deviation' || clause.against?.from !== 'preceding' || !judged) continue
      if (verdict === undefined || clause.property === undefined || half === undefined) continue
      const key = `${verdict.criterion}|${clause.id}`
      const unit = clause.limit?.unit ?? ''
      const before = counts.get(key) ?? {
        criterion: verdict.criterion,
        clause: clause.id,
        property: clause.property,
        half,
        unit,
        outside: 0,
        judged: 0,
        lots: [],
      }
      const outside = clause.outcome === 'does-not-meet'
      counts.set(key, {
        ...before,
        judged: before.judged + 1,
        outside: before.outside + (outside ? 1 : 0),
        lots: outside ? [...before.lots, id] : before.lots,
      })
    }
  }
  return [...counts.values()]
}

/** Each age of an index foretold from the age before it, by laboratory. */
function predictionsOf(gathered: readonly GatheredSeries[]): AgePrediction[] {
  const indices = gathered.filter(({ head }) => head.property in RATIO_OF && head.age !== undefined)
  const alike = Map.groupBy(indices, ({ head }) =>
    [head.class, head.property, head.condition, head.method, head.duty].join('|'),
  )
  return [...alike.values()].flatMap((own) => {
    const byAge = own.toSorted((a, b) => (a.head.age?.hours ?? 0) - (b.head.age?.hours ?? 0))
    return byAge.slice(1).flatMap((late, at) => predictionsFrom(byAge[at], late))
  })
}

function predictionsFrom(early: GatheredSeries | undefined, late: GatheredSeries): AgePrediction[] {
  const { property: key, condition, age: to, class: lotClass } = late.head
  const from = early?.head.age
  if (early === undefined || from === undefined || to === undefined || condition === undefined) return []
  const head = { property: key, condition, from, to, class: lotClass }
  return [...pairsByLaboratory(early, late)].map(([laboratory, pairs]) => ({
    ...head,
    laboratory,
    fit: ageFit(pairs),
  }))
}

/** Results on one mortar: of one lot, sample, laboratory and control. */
function pairsByLaboratory(early: GatheredSeries, late: GatheredSeries): Map<string, AgePair[]> {
  const later = new Map(late.points.map((point) => [mortarOf(point.named), point]))
  const bounded = new Set([early, late].flatMap(({ points }) => points.filter((point) => point.bounds)))
  const pairs = new Map<string, AgePair[]>()
  for (const point of early.points) {
    const { named, value, status } = point
    const other = later.get(mortarOf(named))
    if (named === null || value === null || status !== 'valid' || other === undefined) continue
    if (bounded.has(point) || bounded.has(other)) continue
    const known = other.status === 'valid' ? (other.value ?? undefined) : undefined
    if (known === undefined && other.status !== 'pending') continue
    kept(pairs, named.laboratory, (): AgePair[] => []).push({
      lot: named.lot,
      early: value,
      ...defined({ late: known }),
    })
  }
  return pairs
}

function mortarOf(named: GatheredSeries['points'][number]['named']): string {
  return named === null ? '' : `${named.lot}|${named.sample}|${named.laboratory}`
}
