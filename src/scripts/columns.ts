/** The column files as the pages' scripts read them. */
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
    readonly sampled: readonly string[]
    readonly state: readonly string[]
    readonly class: readonly (string | null)[]
    readonly outcome: Readonly<Record<string, readonly number[]>>
  }
}

export interface ShipmentColumns {
  readonly columns: {
    readonly bill: readonly string[]
    readonly date: readonly string[]
    readonly lot: readonly number[]
  }
}

/** What every list of lots shows of one; empty texts for a place that no lot has. */
export interface ListedLot {
  readonly id: string
  readonly number: string
  readonly sampled: string
  readonly state: string
}

export function lotAt({ columns }: LotColumns, index: number): ListedLot {
  return {
    id: columns.lot[index] ?? '',
    number: columns.number[index] ?? '',
    sampled: columns.sampled[index] ?? '',
    state: columns.state[index] ?? '',
  }
}
