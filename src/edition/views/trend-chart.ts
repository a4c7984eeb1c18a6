/** A trend chart in words: its description, its table, and what is read out at a point. */
import type { TrendInput } from '../../charts/trend.ts'
import { bound, number, shortDate, unitSign } from '../../words/print.ts'

/** What is drawn, and how it is named. */
export interface TrendChartInput extends Omit<TrendInput, 'width' | 'height'> {
  readonly title: string
  /** Stored unit. */
  readonly unit: string
  /** What a point stands for: "lot", "control batch". */
  readonly of: string
}

type TrendPoint = TrendInput['points'][number]

export interface TrendChartView {
  readonly title: string
  readonly unit: string
  readonly of: string
  /** For the drawing. */
  readonly drawn: Omit<TrendInput, 'width' | 'height'>
  /** States other than valid that occur. */
  readonly has: Readonly<Record<'not-valid' | 'withdrawn' | 'pending', boolean>>
  /** Each limit with its sets; "limit" where no line has any. */
  readonly limitWords: string
  readonly description: string
  /** What is read out at each point. */
  readonly readings: readonly string[]
  readonly pointCount: number
  /** The newest points first, as many as a page has room for. */
  readonly rows: readonly TrendRow[]
}

export interface TrendRow {
  readonly id: string
  readonly at: string
  /** Empty where there is no value. */
  readonly value: string
  readonly state: string
  readonly remark: string
}

/** Rows of the table; a source may have thousands of lots, which the file has all. */
const NEWEST = 100

export function trendChartView({ title, unit, of, ...drawn }: TrendChartInput): TrendChartView {
  const { points, limits, decimals } = drawn
  const has = (status: TrendPoint['status']) => points.some((point) => point.status === status)
  return {
    title: bound(title),
    unit,
    of,
    drawn,
    has: { 'not-valid': has('not-valid'), withdrawn: has('withdrawn'), pending: has('pending') },
    limitWords: limitWords(limits),
    description: description(drawn, unit),
    readings: points.map((point) => reading(point, decimals, unit)),
    pointCount: points.length,
    rows: points
      .slice(-NEWEST)
      .reverse()
      .map((point) => trendRow(point, decimals)),
  }
}

function limitWords(limits: TrendInput['limits']): string {
  return limits.every(({ sets }) => sets === undefined)
    ? 'limit'
    : limits.map(({ label, sets }) => `${label}: ${(sets ?? []).join('; ')}`).join(' · ')
}

function description({ points, limits, decimals }: TrendChartView['drawn'], unit: string): string {
  const values = points.flatMap(({ status, value }) => (status === 'valid' && value !== null ? [value] : []))
  if (values.length === 0) return 'No valid result yet.'
  const text = (value: number) => number(value, decimals)
  const [least, most] = [values.reduce((a, b) => Math.min(a, b)), values.reduce((a, b) => Math.max(a, b))]
  const range = `${text(least)} to ${text(most)} ${unitSign(unit)}, the last ${text(values.at(-1) ?? 0)}`
  return `${values.length} valid results from ${range}. ${limits.map(({ label }) => `Limit: ${label}.`).join(' ')}`
}

function reading({ lot, at, value, status, note }: TrendPoint, decimals: number, unit: string): string {
  const result = value === null ? 'no result' : `${number(value, decimals)} ${unitSign(unit)}`
  const state = status === 'valid' ? '' : `, ${stateWords(status)}`
  return `${lot}, ${shortDate(at)}: ${result}${state}${note === undefined ? '' : `, ${note}`}`
}

function trendRow({ lot, at, value, status, note = '' }: TrendPoint, decimals: number): TrendRow {
  return {
    id: lot,
    at,
    value: value === null ? '' : number(value, decimals),
    state: stateWords(status),
    remark: note,
  }
}

function stateWords(status: TrendPoint['status']): string {
  return status === 'pending' ? 'awaited' : status.replace('-', ' ')
}
