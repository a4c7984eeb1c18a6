/** What a source is that came later to the scenario, and what one of its lots is written from. */
import type { CastControl } from './bench.ts'
import type { Chance } from './chance.ts'
import type { DemoFile } from './site-records.ts'

/** One lot of a further source as its series calls for it. */
export interface FurtherLot {
  readonly place: number
  readonly day: number
  readonly castDay: number
  readonly lastDay: number
  readonly billNumber: () => string
}

/** What a lot of a further source is written as. */
export interface WrittenLot {
  readonly text: string
  readonly controls: readonly CastControl[]
}

export interface FurtherSource {
  readonly id: string
  readonly prefix: string
  readonly lots: number
  /** Numbers that no lot bears; none without it. */
  readonly notUsed?: readonly string[]
  /** Sampling day of the first lot, and days from one to the next. */
  readonly from: string
  readonly every: number
  readonly bills: number
  /** Lots before the first, a stretch of their own: what they draw moves no reading of a later one. */
  readonly earlier?: {
    readonly lots: number
    readonly from: string
    readonly every: number
    readonly bills: number
    readonly series: (chance: Chance) => (lot: FurtherLot) => WrittenLot
  }
  readonly issuer: { readonly name: string; readonly function: string }
  /** Days after casting at which a certificate is issued, with its reason. */
  readonly issues: readonly (readonly [days: number, reason: string])[]
  readonly producer: DemoFile
  /** A laboratory that no source before it names; without one the scenario has it already. */
  readonly laboratory?: DemoFile
  readonly source: DemoFile
  /** The next lot; a lot resembles the one before it. */
  readonly series: (chance: Chance) => (lot: FurtherLot) => WrittenLot
}
