/** What is said of a point of a chart, read out and in the table behind it. */
import type { Moment } from '../core/measure/moment.ts'
import { shortDate } from './dates.ts'
import { number, plural } from './numbers.ts'

export type ChartedStatus = 'valid' | 'not-valid' | 'pending' | 'withdrawn'

const STATES: Readonly<Record<ChartedStatus, string>> = {
  valid: 'valid',
  'not-valid': 'not valid',
  pending: 'awaited',
  withdrawn: 'withdrawn',
}

/** State of a result on a chart: "not valid". */
export function chartedState(status: ChartedStatus): string {
  return STATES[status]
}

export interface ReadResult {
  /** Lot or batch. */
  readonly of: string
  readonly at: Moment
  /** With its unit; null while it is awaited. */
  readonly value: string | null
  readonly status: ChartedStatus
  /** Beyond a limit of the governing specification. */
  readonly outside: boolean
  readonly remarks: readonly string[]
}

/** "SA-2025-014, 3 Nov 2025: 6.42 %, outside the limit". */
export function resultReading({ of, at, value, status, outside, remarks }: ReadResult): string {
  const parts = [
    value ?? chartedState('pending'),
    ...(value === null || status === 'valid' ? [] : [chartedState(status)]),
    ...(outside ? ['outside the limit'] : []),
    ...remarks,
  ]
  return `${of}, ${shortDate(at)}: ${parts.join(', ')}`
}

/** "mean of the 4 before it 17.2 %". */
export function meanBefore(count: number, value: string): string {
  return `mean of the ${count} before it ${value}`
}

const AXES = {
  date: 'Sampling date across.',
  lot: 'Lots across at even distances, in order of sampling.',
  shipment: 'Trucks across, lot by lot in order of sampling.',
} as const

/** What stands across. */
export function acrossWords(kind: keyof typeof AXES): string {
  return AXES[kind]
}

export interface ReadShipped {
  readonly of: string
  readonly value: string | null
  readonly status: ChartedStatus
  readonly outside: boolean
  readonly trucks: number
  /** Trucks that left before the result was known. */
  readonly before: number
  /** The lot does not meet. */
  readonly failed: boolean
}

/** "SA-2025-014: 6.42 %, outside the limit; 12 shipments, 3 left before this result was known". */
export function shippedReading({ of, value, status, outside, trucks, before, failed }: ReadShipped): string {
  const result = [
    value ?? chartedState('pending'),
    ...(value === null || status === 'valid' ? [] : [chartedState(status)]),
    ...(outside ? ['outside the limit'] : []),
  ].join(', ')
  const early = before === 0 ? '' : `, ${before} left before this result was known`
  return `${of}: ${result}; ${plural(trucks, 'shipment', 'shipments')}${early}${failed ? '; the lot does not meet' : ''}`
}

/** How many shipments of single lots are drawn. */
export function trucksWords(drawn: number, of: number): string {
  return drawn === of
    ? `All ${plural(of, 'shipment', 'shipments')} of single lots`
    : `The newest ${number(drawn, 0)} of ${number(of, 0)} shipments of single lots`
}

const AXIS_NAMES = { date: 'sampling date', lot: 'lot', shipment: 'shipment' } as const

/** Name of an axis in a choice and in a title. */
export function acrossName(kind: keyof typeof AXIS_NAMES): string {
  return AXIS_NAMES[kind]
}

/** "12 % below the batches before it": a control batch that is far off. */
export function offWords(percent: number): string {
  return `${number(Math.abs(percent), 0)} % ${percent < 0 ? 'below' : 'above'} the batches before it`
}

export interface ReadBar {
  readonly from: string
  readonly to: string
  readonly unit: string
  readonly count: number
  readonly expected: number | null
}

/** "74.5 to 75.6 %: 3 results, 1.9 expected from the curve". */
export function barReading({ from, to, unit, count, expected }: ReadBar): string {
  const curve = expected === null ? '' : `, ${number(expected, 1)} expected from the curve`
  return `${from} to ${to} ${unit}: ${plural(count, 'result', 'results')}${curve}`
}
