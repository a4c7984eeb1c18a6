/**
 * What the pipeline of `core/readings/` needs to know of a test on mortar: one description for each test, and one
 * line in `mortar-measurements.ts`.
 */
import type { PropertyKey } from '../measure/properties.ts'
import type { ResultReason } from '../result/reason.ts'
import type { SizeTerm, WorkingStep } from '../result/working.ts'
import type { Interval } from '../statistics/ratio-interval.ts'
import type { BatchRangeRule, Mortar, MortarCondition, MortarReading, SpecimenCount } from './mortar.ts'

/** What one specimen gives, in the stored unit of the property. */
export interface SpecimenValue {
  /** Null where a size that it needs is not known, or nothing was read. */
  readonly value: number | null
  /** The reading as in the record; null where there is none. */
  readonly written: string | null
  /** What was done to the reading; empty where the value itself is on record. */
  readonly terms: readonly SizeTerm[]
  /** Loaded area that the value was computed with, where sizes of test and control must agree. */
  readonly areaMm2?: number
  /** What was read lies beyond the meter: the value is at least this. */
  readonly above?: true
  /** Why no value follows, where it is more than a size that is not known. */
  readonly fault?: ResultReason
  /** What is worth saying of a value that counts; once for a reading, however many specimens say it. */
  readonly note?: ResultReason
}

export type SpecimenOf<Reading extends MortarReading> = NonNullable<Reading['specimens']>[string]

/**
 * Note: its functions are methods, so that a list can hold descriptions of different readings: each is only ever
 * given what its own `readingsOf` returned.
 */
export interface MortarMeasurement<Reading extends MortarReading = MortarReading> {
  /** The mean of one mortar. */
  readonly property: PropertyKey
  /** The test mortar's mean over its control's. */
  readonly index: PropertyKey
  /** Decimals of a specimen and of a mean in a working. */
  readonly workingDecimals: number
  /** Every test of a mortar, planned ones too. */
  readingsOf(mortar: Mortar): readonly Reading[] | undefined
  specimenOf(specimen: SpecimenOf<Reading>, reading: Reading, condition: MortarCondition): SpecimenValue
  /** What is said where a specimen that counts has no value and tells no fault of its own. */
  readonly valueUnknown: ResultReason
  /** Permissible ranges by number of specimens; left out where specimens are never dropped. */
  rangeRulesOf?(condition: MortarCondition): readonly BatchRangeRule[]
  /** How many specimens the condition asks for; left out where it never does. */
  specimenCountOf?(condition: MortarCondition): SpecimenCount | undefined
  /** What makes a reading unfit for judgement, besides its age, its specimens and a retest. */
  readingFaults?(reading: Reading, condition: MortarCondition): ResultReason[]
  /** What is worth saying of a reading that still counts, beside what its specimens say. */
  readingNotes?(reading: Reading, condition: MortarCondition): ResultReason[]
  /** What is worth saying of a reading beside the others of its mortar. */
  historyNotes?(reading: Reading, all: readonly Reading[], condition: MortarCondition): ResultReason[]
  /** What is worth saying of two readings that are divided all the same. */
  pairNotes?(
    pair: { readonly test: Reading; readonly control: Reading },
    condition: MortarCondition,
  ): ResultReason[]
  /** What makes two readings unfit to be divided; `readWithinCelsius` where the condition sets none. */
  pairFaults?(
    pair: { readonly test: Reading; readonly control: Reading },
    condition: MortarCondition,
    readWithinCelsius: number,
  ): ResultReason[]
  /** Per cent, from two means above zero in one unit. */
  ratioOf(testMean: number, controlMean: number): number
  /** Where that ratio is defined. */
  readonly ratioSource: string
  /** From the specimens that count; null where they show no scatter. */
  intervalOf(test: readonly number[], control: readonly number[]): Interval | null
  /** What a working says of a mean beside its specimens, for information. */
  meanNotes?(mean: number, reading: Reading, condition: MortarCondition): WorkingStep[]
}
