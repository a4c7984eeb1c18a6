/** A certificate's lot among those before it: one small chart for each activity index, at its latest age. */
import { readAge } from '../../core/measure/age.ts'
import { everyClauseOutcome, type Verdict } from '../../core/criteria/verdict.ts'
import { type HistoryModel, lotHistoryModel } from '../../charts/lot-history.ts'
import { nameInSource } from '../../core/measure/lot-id.ts'
import { property } from '../../core/measure/properties.ts'
import { shortDate } from '../../words/dates.ts'
import { number } from '../../words/numbers.ts'
import { unbroken } from '../../words/sentences.ts'
import { quantity } from '../../words/units.ts'
import { unitSign } from '../../words/unit-signs.ts'
import { UNISSUED_LOT } from '../../words/withheld.ts'
import { conditionTitle } from '../shape/condition-title.ts'
import type { Edition, LotEntry } from '../shape/edition.ts'
import type { HistorySeries } from '../shape/lot-history.ts'
import { printedUnit, type UnitSystem } from '../../words/unit-systems.ts'

export interface HistoryCharts {
  readonly charts: readonly HistoryChart[]
  /** Every lot of the charts, the newest first. */
  readonly lots: readonly {
    readonly name: string
    readonly sampled: string
    readonly cells: readonly string[]
  }[]
}
export interface HistoryChart {
  readonly caption: string
  /** Heading of its column. */
  readonly heading: string
  /** For those who do not see the drawing. */
  readonly label: string
  readonly model: HistoryModel
}

type Seen = Pick<Edition, 'conditions' | 'announcedConditions' | 'site'>

/** @returns null where no index has two values to compare */
export function historyCharts(
  edition: Seen,
  { history, verdicts }: Pick<LotEntry, 'history' | 'verdicts'>,
): HistoryCharts | null {
  const drawn = inOrderOfClauses(history(), verdicts).flatMap((series) => {
    const chart = chartOf(series, verdicts, edition)
    return chart === null ? [] : [{ series, chart }]
  })
  if (drawn.length === 0) return null
  const all = drawn.map(({ series }) => series)
  return {
    charts: drawn.map(({ chart }) => chart),
    lots: newestFirst(all).map(({ place, named }) => ({
      name: named === null ? UNISSUED_LOT : nameInSource(named.lot),
      sampled: named === null ? '' : shortDate(named.at),
      cells: all.map((series) => cell(series, place, edition.site.units)),
    })),
  }
}

/** As the sets name the tests, the governing set first; those of no set last. */
function inOrderOfClauses(all: readonly HistorySeries[], verdicts: readonly Verdict[]): HistorySeries[] {
  const clauses = verdicts.flatMap((verdict) => [...everyClauseOutcome(verdict.clauses)])
  const placeOf = ({ property: key, condition }: HistorySeries) => {
    const place = clauses.findIndex((clause) => clause.property === key && clause.condition === condition)
    return place === -1 ? clauses.length : place
  }
  return all.toSorted((a, b) => placeOf(a) - placeOf(b))
}

function chartOf(series: HistorySeries, verdicts: readonly Verdict[], edition: Seen): HistoryChart | null {
  const { unit, decimals, of } = printedUnit(series.unit, series.decimals, edition.site.units)
  const points = series.points.map((point) =>
    point.value === null ? point : { ...point, value: of(point.value) },
  )
  if (points.filter(({ value }) => value !== null).length < 2) return null
  const limits = limitsOn(series, verdicts).map(of)
  const model = lotHistoryModel({ points, limits, width: 300, height: 96 })
  if (model === null) return null
  const name = nameOf(series, edition)
  const last = points.at(-1)?.value ?? null
  const limitWords = limits.map((limit) => quantity(limit, 0, unit, edition.site.units)).join(' and ')
  return {
    caption: unbroken(name),
    heading: unbroken(`${name}, ${unitSign(unit)}`),
    label: `${name}: ${points.length} lots, the last one ${last === null ? 'awaited' : quantity(last, decimals, unit, edition.site.units)}${limitWords === '' ? '' : `, limit ${limitWords}`}`,
    model,
  }
}

/** Limits that any set has for a single result. */
function limitsOn({ property: key, condition, age }: HistorySeries, verdicts: readonly Verdict[]): number[] {
  const hours = age === undefined ? undefined : readAge(age).hours
  const limits = verdicts
    .flatMap((verdict) => [...everyClauseOutcome(verdict.clauses)])
    .filter(
      (clause) =>
        clause.kind === 'value' &&
        clause.property === key &&
        clause.condition === condition &&
        clause.age?.hours === hours,
    )
    .flatMap((clause) => clause.limit?.values ?? [])
  return [...new Set(limits)]
}

function nameOf({ property: key, condition, age }: HistorySeries, edition: Seen): string {
  const standing = condition === undefined ? undefined : edition.conditions.get(condition)?.standing
  const title = condition && conditionTitle(edition, condition)
  return [property(key).title, standing === 'standard' ? title : title && `modified (${title})`, age]
    .filter((part) => part !== undefined)
    .join(', ')
}

type Point = HistorySeries['points'][number]

function newestFirst(all: readonly HistorySeries[]): Point[] {
  const byPlace = new Map(all.flatMap(({ points }) => points.map((point) => [point.place, point] as const)))
  return [...byPlace.values()].sort((a, b) => b.place - a.place)
}

function cell({ points, unit, decimals: stored }: HistorySeries, place: number, units: UnitSystem): string {
  const { decimals, of } = printedUnit(unit, stored, units)
  const point = points.find((candidate) => candidate.place === place)
  if (point === undefined) return ''
  if (point.value === null) return 'awaited'
  return `${number(of(point.value), decimals, units)}${point.status === 'valid' ? '' : ', not valid'}`
}
