/** A certificate's lot among those before it: one small chart for each activity index, at its latest age. */
import { everyClauseOutcome } from '../../core/criteria/verdict.ts'
import { type Moment, compareMoments, readMoment } from '../../core/measure/moment.ts'
import { hoursOf } from './document-ages.ts'
import { type HistoryModel, lotHistoryModel } from '../../charts/lot-history.ts'
import { nameInSource } from '../../core/measure/lot-id.ts'
import { property } from '../../core/measure/properties.ts'
import { shortDate } from '../../words/dates.ts'
import { number } from '../../words/numbers.ts'
import { unbroken } from '../../words/sentences.ts'
import { quantity, unitSign } from '../../words/units.ts'
import type { CertificateDocument, DocumentHistory } from '../shape/document.ts'
import type { DocumentClause } from './document-clauses.ts'
import { conditionIn } from './document-names.ts'

export interface HistoryCharts {
  readonly charts: readonly HistoryChart[]
  /** Every lot of the charts, the newest first. */
  readonly lots: readonly {
    readonly name: string
    readonly sampled: string
    readonly cells: readonly string[]
  }[]
  readonly asOf: string
}
export interface HistoryChart {
  readonly caption: string
  /** Heading of its column. */
  readonly heading: string
  /** For those who do not see the drawing. */
  readonly label: string
  readonly model: HistoryModel
}

type WithHistory = Pick<CertificateDocument, 'history' | 'verdicts' | 'conditions' | 'asOf'>

/** @returns null where no index has two values to compare */
export function historyCharts(document: WithHistory): HistoryCharts | null {
  const drawn = document.history.flatMap((history) => {
    const chart = chartOf(history, document)
    return chart === null ? [] : [{ history, chart }]
  })
  if (drawn.length === 0) return null
  const histories = drawn.map(({ history }) => history)
  return {
    charts: drawn.map(({ chart }) => chart),
    lots: newestFirst(histories).map(({ lot, at }) => ({
      name: nameInSource(lot),
      sampled: shortDate(at),
      cells: histories.map((history) => cell(history, lot)),
    })),
    asOf: shortDate(document.asOf),
  }
}

function chartOf(history: DocumentHistory, document: WithHistory): HistoryChart | null {
  const { points, unit, decimals } = history
  if (points.filter(({ value }) => value !== null).length < 2) return null
  const limits = limitsOn(history, document)
  const model = lotHistoryModel({ points, limits, width: 300, height: 96 })
  if (model === null) return null
  const name = nameOf(history, document)
  const last = points.at(-1)?.value ?? null
  const limitWords = limits.map((limit) => quantity(limit, 0, unit)).join(' and ')
  return {
    caption: unbroken(name),
    heading: unbroken(`${name}, ${unitSign(unit)}`),
    label: `${name}: ${points.length} lots, the last one ${last === null ? 'awaited' : quantity(last, decimals, unit)}${limitWords === '' ? '' : `, limit ${limitWords}`}`,
    model,
  }
}

/** Limits that any set has for a single result. */
function limitsOn(history: DocumentHistory, { verdicts }: WithHistory): number[] {
  const limits = verdicts
    .flatMap((verdict) => [...everyClauseOutcome<DocumentClause>(verdict.clauses)])
    .filter(
      (clause) =>
        clause.kind === 'value' &&
        clause.property === history.property &&
        clause.condition === history.condition &&
        hoursOf(clause.age) === hoursOf(history.age),
    )
    .flatMap((clause) => clause.limit?.values ?? [])
  return [...new Set(limits)]
}

function nameOf(history: DocumentHistory, document: WithHistory): string {
  const condition = conditionIn(document, history.condition)
  return [
    property(history.property).title,
    condition?.standing === 'standard' ? condition.title : condition && `modified (${condition.title})`,
    history.age,
  ]
    .filter((part) => part !== undefined)
    .join(', ')
}

function newestFirst(histories: readonly DocumentHistory[]): { lot: string; at: Moment }[] {
  const sampled = new Map(histories.flatMap(({ points }) => points.map(({ lot, at }) => [lot, at] as const)))
  return [...sampled]
    .map(([lot, text]) => ({ lot, at: readMoment(text) }))
    .sort((a, b) => compareMoments(b.at, a.at) || descending(a.lot, b.lot))
}

function descending(a: string, b: string): number {
  return a === b ? 0 : a < b ? 1 : -1
}

function cell({ points, decimals }: DocumentHistory, lot: string): string {
  const point = points.find((candidate) => candidate.lot === lot)
  if (point === undefined) return ''
  if (point.value === null) return 'awaited'
  return `${number(point.value, decimals)}${point.status === 'valid' ? '' : ', not valid'}`
}
