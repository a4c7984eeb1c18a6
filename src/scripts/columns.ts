/** The column files as the pages' scripts read them: days are texts in the file, read once. */
import { type Moment, readMoment } from '../core/measure/moment.ts'
import type { WithTexts } from '../core/measure/texts-of-times.ts'

export interface LotColumns {
  readonly criteria: readonly string[]
  readonly sources: readonly string[]
  readonly outcomes: readonly string[]
  /** Earlier ids of lots, to the place of the lot. */
  readonly formerly: Readonly<Record<string, number>>
  readonly columns: {
    readonly lot: readonly string[]
    readonly number: readonly string[]
    readonly source: readonly number[]
    readonly sampled: readonly Moment[]
    readonly state: readonly string[]
    readonly class: readonly (string | null)[]
    readonly outcome: Readonly<Record<string, readonly number[]>>
  }
}

export interface ShipmentColumns {
  readonly columns: {
    readonly bill: readonly string[]
    readonly date: readonly Moment[]
    readonly lot: readonly number[]
  }
}

export function readLotColumns(file: WithTexts<LotColumns>): LotColumns {
  return { ...file, columns: { ...file.columns, sampled: file.columns.sampled.map(readMoment) } }
}

export function readShipmentColumns({ columns }: WithTexts<ShipmentColumns>): ShipmentColumns {
  return { columns: { ...columns, date: columns.date.map(readMoment) } }
}

/** What every list of lots shows of one; empty texts, and no day, for a place that no lot has. */
export interface ListedLot {
  readonly id: string
  readonly number: string
  readonly sampled: Moment | null
  readonly state: string
}

export function lotAt({ columns }: LotColumns, index: number): ListedLot {
  return {
    id: columns.lot[index] ?? '',
    number: columns.number[index] ?? '',
    sampled: columns.sampled[index] ?? null,
    state: columns.state[index] ?? '',
  }
}
