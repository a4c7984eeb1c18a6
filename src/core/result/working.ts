/** How a result was computed, step by step, as data. `src/words/` prints it; nobody reads a printed line back. */
import type { PropertyKey } from '../measure/properties.ts'
import type { Bounds } from './bounds.ts'
import type { Interval } from '../statistics/ratio-interval.ts'

/** Whose specimens a step is about. */
export type MortarRole = 'test' | 'control'

/** A number with the unit it is stored in and the decimals it is printed with. */
export interface Figure {
  readonly value: number
  readonly unit: string
  readonly decimals: number
}

/** What is done to a reading to make a specimen's value of it, in this order. */
export interface SizeTerm {
  readonly does: 'less-end-contact' | 'times' | 'divided-by'
  readonly value: number
  readonly unit: string
  /** No size is on record: the one that is assumed, as a bench would write it. */
  readonly assumed?: { readonly written: string; readonly of: string }
}

/** A reported value within a sum, as it stands in the record. */
export interface Summand {
  readonly property: PropertyKey
  readonly value: number
  readonly decimals: number
  readonly below: boolean
}

export type WorkingStep =
  /** A figure as its laboratory reported it, without the readings behind it. */
  | { readonly step: 'reported-figure'; readonly written: string; readonly result: Figure }
  /** A laboratory's own mean, without its specimens. */
  | {
      readonly step: 'reported-mean'
      readonly of: MortarRole
      /** Null where the laboratory does not state it. */
      readonly n: number | null
      readonly result: Figure
    }
  | {
      readonly step: 'specimen'
      readonly of: MortarRole
      readonly mark: string
      /** Text of the record; null where there is no reading. */
      readonly written: string | null
      /** Empty where the value itself was reported. */
      readonly terms: readonly SizeTerm[]
      readonly excluded?: string
      /** Null where there is none. */
      readonly result: Figure | null
    }
  | {
      readonly step: 'range-check'
      readonly measure: 'range' | 'distance'
      readonly of: number
      /** Both in per cent of the mean. */
      readonly percent: number
      readonly limitPercent: number
      readonly kept: boolean
    }
  /** `marks` only where some of the specimens may have been dropped, so that it matters which are left. */
  | {
      readonly step: 'mean'
      readonly of: MortarRole
      readonly n: number
      readonly marks?: readonly string[]
      readonly result: Figure
    }
  /** What the mean would be at the temperature that the condition asks for: information, never judged. */
  | {
      readonly step: 'at-another-temperature'
      readonly readCelsius: number
      readonly askedCelsius: number
      readonly activationEnergyKJ: number
      readonly result: Figure
    }
  /** 100 × test over control. */
  | {
      readonly step: 'ratio'
      readonly test: number
      readonly control: number
      /** Stored unit and decimals of both. */
      readonly unit: string
      readonly decimals: number
      readonly source: string
      readonly result: Figure
    }
  /** Points by which an index falls when its control rises by one per cent. */
  | { readonly step: 'control-drift'; readonly points: number; readonly decimals: number }
  /** Null where neither mortar shows a scatter. */
  | { readonly step: 'interval'; readonly interval: Interval | null; readonly decimals: number }
  | {
      readonly step: 'water-requirement'
      readonly writtenTest: string
      readonly writtenControl: string
      readonly result: Figure
    }
  | { readonly step: 'oxide-sum'; readonly summands: readonly Summand[]; readonly result: Figure }
  | {
      readonly step: 'alkali-equivalent'
      readonly soda: Summand
      readonly potash: Summand
      readonly result: Figure
    }
  /** What a value may be that is known only within bounds; null where nothing bounds it on that side. */
  | {
      readonly step: 'bounds'
      readonly low: number | null
      readonly high: number | null
      readonly unit: string
      readonly decimals: number
    }
  /** The class that calcium oxide alone would give: information, never judged. */
  | { readonly step: 'class-by-calcium'; readonly lime: Summand; readonly class: 'F' | 'C' }

/** What a value known only within bounds may be, in the unit and decimals of its figure; none for a value that is known. */
export function boundsStep(
  bounds: Bounds | undefined,
  { unit, decimals }: Pick<Figure, 'unit' | 'decimals'>,
): WorkingStep[] {
  return bounds === undefined ? [] : [{ step: 'bounds', low: bounds.low, high: bounds.high, unit, decimals }]
}
