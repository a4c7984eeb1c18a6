/** The column files as the pages' scripts read them: days are texts in the file, read once. */
import { type Moment, readMoment } from '../core/measure/moment.ts'
import type { LotStanding } from '../words/standing.ts'
import type { WithTexts } from '../core/measure/texts-of-times.ts'

type StandingText = Pick<LotStanding, 'mark' | 'text'>

export interface LotColumns {
  readonly criteria: readonly string[]
  readonly sources: readonly string[]
  /** State and outcome of a lot in words, with the mark beside them. */
  readonly standings: readonly StandingText[]
  /** Governing sets, with class. */
  readonly sets: readonly string[]
  /** Earlier ids of lots, to the place of the lot. */
  readonly formerly: Readonly<Record<string, number>>
  readonly columns: {
    readonly lot: readonly string[]
    readonly number: readonly string[]
    readonly source: readonly number[]
    readonly sampled: readonly Moment[]
    readonly class: readonly (string | null)[]
    /** By criterion, places in `standings`. */
    readonly standing: Readonly<Record<string, readonly number[]>>
    /** The same under the set that governs. */
    readonly governingStanding: readonly number[]
    /** Places in `sets`. */
    readonly governingSet: readonly number[]
    /** Which clause of the governing set is not met and by how much. */
    readonly governingShortfall: readonly (string | null)[]
  }
}

export interface ShipmentColumns {
  /** What was not known on the day that a shipment left. */
  readonly left: readonly string[]
  readonly columns: {
    readonly bill: readonly string[]
    readonly date: readonly Moment[]
    /** Place of its lot; −1 for a shipment of `several`. */
    readonly lot: readonly number[]
    /** Places in `left`; −1 where everything was known. */
    readonly left: readonly number[]
  }
  /** Shipments that may be of any of several lots. */
  readonly several: readonly SeveralLots[]
}

export interface SeveralLots {
  /** Place among the shipments. */
  readonly shipment: number
  /** Places of the possible lots. */
  readonly lots: readonly number[]
  readonly mark: StandingText['mark']
  /** How the worst of them stands; empty where nobody can say. */
  readonly standing: string
  readonly note: string
}

export function readLotColumns(file: WithTexts<LotColumns>): LotColumns {
  return { ...file, columns: { ...file.columns, sampled: file.columns.sampled.map(readMoment) } }
}

export function readShipmentColumns({ columns, ...file }: WithTexts<ShipmentColumns>): ShipmentColumns {
  return { ...file, columns: { ...columns, date: columns.date.map(readMoment) } }
}

/** What every list of lots shows of one; empty texts, and no day, for a place that no lot has. */
export interface ListedLot {
  readonly id: string
  readonly number: string
  readonly sampled: Moment | null
}

export function lotAt({ columns }: LotColumns, index: number): ListedLot {
  return {
    id: columns.lot[index] ?? '',
    number: columns.number[index] ?? '',
    sampled: columns.sampled[index] ?? null,
  }
}

/** How a lot stands under one set; without words for a place that no lot has. */
export function standingAt(data: LotColumns, criterion: string, index: number): StandingText {
  return standingOf(data, data.columns.standing[criterion]?.[index])
}

/** The same under the set that governs it. */
export function governingStandingAt(data: LotColumns, index: number): StandingText {
  return standingOf(data, data.columns.governingStanding[index])
}

/** The set that governs a lot; empty where none does. */
export function governingSetAt({ sets, columns }: LotColumns, index: number): string {
  return sets[columns.governingSet[index] ?? -1] ?? ''
}

function standingOf({ standings }: LotColumns, place: number | undefined): StandingText {
  return standings[place ?? -1] ?? { mark: null, text: '' }
}
