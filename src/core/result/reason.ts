/**
 * Reasons are data: a permanent code with what its sentence needs. `src/words/` makes the sentence; nobody reads
 * one back.
 */
import type { PropertyKey } from '../measure/properties.ts'
import type { Bounds } from './bounds.ts'

/** A closed union with one member for each code of a table of parameters. */
export type ReasonOf<Params> = {
  readonly [Code in keyof Params]: { readonly code: Code; readonly params: Params[Code] }
}[keyof Params]

/** Nothing that the sentence needs. */
type Nothing = Readonly<Record<string, never>>

/** How far the specimens of a batch lie apart, and what the condition allows. */
interface Spread {
  /** Largest less smallest, or largest distance of one from the mean. */
  readonly measure: 'range' | 'distance'
  /** Number of specimens. */
  readonly of: number
  /** Both in per cent of the mean. */
  readonly percent: number
  readonly limitPercent: number
}

/**
 * Why a result does not count, or what was noted about it: one entry for each code, with what its sentence needs.
 * Numbers are in the unit that their name says; `written` quantities, ages and moments are texts of the record.
 * Codes are permanent: they stand in the check report and in published files. New ones are added, none changes
 * its meaning.
 */
export interface ResultReasonParams {
  // Specimens of a batch
  'only-mean-on-record': Nothing
  'number-not-stated': Nothing
  /** Loads in pounds-force, and neither a mould nor a measured size on record. */
  'mould-assumed': Nothing
  'specimen-excluded': { readonly mark: string; readonly why: string }
  'no-specimen-counts': Nothing
  'loaded-area-unknown': Nothing
  'geometry-unknown': Nothing
  'end-contacts-exceed-reading': Nothing
  /** The specimen farthest from the mean was left out, and the others agree. */
  'specimen-dropped': Spread & { readonly mark: string }
  /** The specimens disagree, and leaving one out does not bring them into range. */
  'range-beyond': Spread
  /** The condition has rules for other numbers of specimens only. */
  'range-not-checked': { readonly of: number }
  'fewer-specimens': { readonly n: number; readonly planned: number }
  'too-few-specimens': { readonly n: number; readonly atLeast: number }
  /** Of an index: a specimen was dropped, and the scatter of the others is too small for the level stated. */
  'interval-too-narrow': { readonly levelPercent: number }

  // One test: its age, its retest
  'age-cannot-be-verified': Nothing
  'age-outside': { readonly testedHours: number; readonly age: string; readonly writtenTolerance: string }
  /** Moment of the retest. */
  'replaced-by-retest': { readonly retested: string }

  // A resistance reading against what its condition asks
  'reading-not-described': Nothing
  'conditioning-not-on-record': Nothing
  'conditioning-differs': { readonly read: string; readonly asked: string }
  'temperature-not-on-record': Nothing
  'temperature-outside': {
    readonly readCelsius: number
    readonly askedCelsius: number
    readonly withinCelsius: number
  }
  /** Share of the smallest reading that counts. */
  'end-contacts-beyond': { readonly percent: number; readonly writtenLimit: string }
  'meter-not-verified': Nothing
  'meter-off': { readonly writtenRead: string; readonly writtenKnown: string; readonly writtenLimit: string }
  'saturation-not-stated': Nothing
  /** In a dummy specimen. */
  'core-temperature-outside': {
    readonly readCelsius: number
    readonly askedCelsius: number
    readonly withinCelsius: number
  }
  'out-of-liquid-too-long': { readonly written: string; readonly writtenLimit: string }
  'cooled-too-short': { readonly cooledHours: number; readonly writtenLimit: string }
  /** Numbers of directions in which single specimens were read. */
  'directions-differ': { readonly read: readonly number[]; readonly asked: number }
  /** `written` is the reading that lies beyond the smallest or the largest resistor of the condition. */
  'beyond-check-resistors': {
    readonly written: string
    readonly writtenSmallest: string
    readonly writtenLargest: string
  }
  /** `written` with the ceiling of the meter; the mean is at least what follows from it. */
  'above-ceiling': { readonly written: string }
  /** Specimens that were read at an earlier age, where the condition has each read once. */
  'read-before': { readonly marks: readonly string[]; readonly age: string }
  /** Specimens that were not read at an earlier age, where the condition returns them to the bath. */
  'not-read-before': { readonly marks: readonly string[]; readonly age: string }

  // A control, and a test mortar beside it
  /** What is wrong with the control itself. */
  'control-fault': { readonly control: string; readonly reason: ResultReason }
  /** Nothing is known of the control but this strength. */
  'control-stated': { readonly written: string }
  'mean-not-above-zero': Nothing
  /** `fields` in which the two conditions differ, where both are on record. */
  'control-of-another-condition': { readonly control: string; readonly fields?: readonly string[] }
  /** Mean loaded areas of the specimens that count. */
  'specimen-sizes-differ': { readonly testMm2: number; readonly controlMm2: number }
  /** One mortar's strengths are computed from loads, the other's are as the laboratory states them. */
  'stated-with-computed': { readonly stated: 'test' | 'control' }
  'control-of-another-laboratory': { readonly laboratory: string }
  /** Days that the control was cast before the test mortar; negative where it was cast after. */
  'control-cast-apart': { readonly daysBefore: number }
  /** As before, where the condition asks for one day. */
  'not-cast-together': { readonly daysBefore: number }
  'cement-alkalis-not-on-record': Nothing
  'cement-alkalis-low': { readonly written: string; readonly writtenLimit: string }
  'cement-alkalis-high': { readonly written: string; readonly writtenLimit: string }
  'control-strength-low': {
    readonly age: string
    readonly strengthMPa: number
    readonly writtenLimit: string
  }
  'flows-apart': {
    readonly writtenTest: string
    readonly writtenControl: string
    readonly writtenLimit: string
  }
  'flow-not-on-record': { readonly of: 'test' | 'control' | 'both'; readonly writtenLimit: string }
  'cooled-apart': {
    readonly testHours: number
    readonly controlHours: number
    readonly writtenLimit: string
  }
  'out-of-liquid-apart': {
    readonly writtenTest: string
    readonly writtenControl: string
    readonly writtenLimit: string
  }
  'temperatures-apart': {
    readonly testCelsius: number
    readonly controlCelsius: number
    readonly withinCelsius: number
  }

  // A figure reported finished
  /**
   * The readings of the same test are on record, and what they give counts in its place: a value, or null where
   * they give none that is valid.
   */
  'readings-stand': {
    readonly recomputed: number | null
    /** Where the value is known only within bounds. */
    readonly bounds?: Bounds
    readonly unit: string
    readonly decimals: number
  }

  // A reported value, and a sum of reported values
  'value-excluded': { readonly why: string }
  /** `written` is null where the record gives no text of its own. */
  'enters-with-bound': { readonly property: PropertyKey; readonly written: string | null }
  /** `basis` is null where none is stated. */
  'bases-differ': {
    readonly members: readonly { readonly property: PropertyKey; readonly basis: string | null }[]
  }
}

export type ResultReason = ReasonOf<ResultReasonParams>
