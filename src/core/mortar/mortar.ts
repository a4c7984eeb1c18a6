/**
 * What the core needs to know of a mortar, its control and its condition. The shapes are those of the records
 * (keys as in YAML, quantities loaded), so that a loaded record is taken as it is.
 */
import { defined } from '../measure/defined.ts'
import { type Duty, dutyOf, type SampleKind } from '../measure/duty.ts'
import type { Moment } from '../measure/moment.ts'
import type { Age } from '../measure/age.ts'
import type { MaterialKind } from '../measure/material-kind.ts'
import type { Quantity } from '../measure/units.ts'

export type CuringMedium = 'saturated-lime-water' | 'fog' | 'sealed' | 'pore-solution' | 'water'

export interface SpecimenShape {
  readonly shape: 'cube' | 'prism' | 'half-prism' | 'cylinder'
  readonly side?: Quantity
  readonly length?: Quantity
  readonly diameter?: Quantity
  /** The side is that of the laboratory's own moulds. */
  readonly ofMould?: true
}

export interface BatchRangeRule {
  readonly of: number
  readonly 'at-most'?: Quantity
  readonly within?: Quantity
}

/** How many specimens a condition asks for at each age. */
export interface SpecimenCount {
  readonly planned?: number
  readonly 'at-least'?: number
  readonly fewer?: 'not-valid' | 'flag'
}

export interface MortarCondition {
  readonly title: string
  readonly standing: 'standard' | 'modified' | 'details-to-be-entered'
  readonly water: { readonly 'flow-within'?: Quantity }
  readonly curing: { readonly medium: CuringMedium }
  readonly 'before-test'?: { readonly for?: Quantity; readonly 'control-and-test-within'?: Quantity }
  readonly ages: readonly { readonly age: Age; readonly within: Quantity }[]
  readonly control?: {
    readonly 'cast-with-test'?: 'yes' | 'no'
    readonly 'cement-alkalis'?: { readonly 'at-least'?: Quantity; readonly 'at-most'?: Quantity }
    readonly strength?: { readonly age: Age; readonly 'at-least': Quantity }
    readonly broken?: 'not-valid' | 'flag'
  }
  readonly strength?: {
    readonly specimen: SpecimenShape
    readonly specimens?: SpecimenCount
    readonly 'batch-range'?: readonly BatchRangeRule[]
  }
  readonly resistivity?: {
    readonly specimen: SpecimenShape
    readonly specimens?: SpecimenCount
    readonly conditioning?: CuringMedium
    readonly reading: {
      readonly temperature: Quantity
      readonly within: Quantity
      readonly 'control-and-test-within'?: Quantity
      readonly 'end-contact-at-most'?: Quantity
      readonly 'verification-within'?: Quantity
    }
    readonly handling?: {
      readonly 'out-of-liquid-at-most'?: Quantity
      readonly 'control-and-test-within'?: Quantity
      readonly 'after-reading'?: 'read-once' | 'returned'
    }
    readonly directions?: number
    readonly meter?: { readonly 'check-resistors'?: readonly Quantity[]; readonly ceiling?: Quantity }
    readonly saturation?: 'stated' | 'not-asked'
    readonly 'activation-energy'?: number
  }
}

/** Sizes measured on a specimen, and why it is left out where it is. */
export interface MeasuredSpecimen {
  readonly side?: Quantity
  readonly 'other-side'?: Quantity
  readonly length?: Quantity
  readonly diameter?: Quantity
  readonly area?: Quantity
  readonly excluded?: string
  /** Since when; from the reading on without it. */
  readonly 'excluded-on'?: Moment
}
export interface CrushedSpecimen extends MeasuredSpecimen {
  readonly load?: Quantity
  readonly strength?: Quantity
}
export interface ConductingSpecimen extends MeasuredSpecimen {
  readonly resistance?: Quantity
  /** Resistances of this one specimen in several directions: one value, no replicates. */
  readonly directions?: Readonly<Record<string, Quantity>>
  readonly resistivity?: Quantity
}
/** A quantity alone is what was read, or the value itself, as its unit tells. */
export type StrengthSpecimen = Quantity | CrushedSpecimen
export type ResistivitySpecimen = Quantity | ConductingSpecimen

/** One test of a mortar at one age: its specimens by mark, or a mean alone; planned while it has neither. */
export interface MortarReading<Specimen extends object = Quantity | MeasuredSpecimen> {
  readonly age: Age
  readonly tested?: Moment
  /** When the reading became known, where that was later. */
  readonly reported?: Moment
  readonly specimens?: Readonly<Record<string, Specimen>>
  readonly mean?: Quantity
  readonly of?: number
  readonly deviations?: string
  readonly 'retest-of'?: Moment
}
export interface StrengthReading extends MortarReading<StrengthSpecimen> {
  /** Mean strength of a control that has no record of its own. */
  readonly control?: Quantity
}
export interface ResistivityReading extends MortarReading<ResistivitySpecimen> {
  readonly temperature?: Quantity
  /** In a dummy specimen. */
  readonly core?: Quantity
  /** When cooling began; the age ends at `tested`. */
  readonly 'left-bath'?: Moment
  readonly 'out-of-liquid'?: Quantity
  readonly conditioning?: CuringMedium
  readonly 'end-contact'?: Quantity
  readonly saturation?: string
  readonly verification?: { readonly known: Quantity; readonly read: Quantity }
}

export interface Mortar {
  readonly condition: string
  readonly laboratory: string
  readonly cast: Moment
  readonly flow?: Quantity
  readonly water?: Quantity
  /** Side of the cubes; the laboratory's usual without it. */
  readonly mould?: Quantity
  readonly strength?: readonly StrengthReading[]
  readonly resistivity?: readonly ResistivityReading[]
}
export interface ControlMortar extends Mortar {
  readonly cement?: { readonly lot?: string; readonly 'Na2O-equivalent'?: Quantity }
}
export interface TestMortar extends Mortar {
  readonly sample: string
  /** Absent where no batch of a control is on record. */
  readonly control?: string
}

export interface Sample {
  readonly id: string
  readonly kind: Exclude<SampleKind, 'control'>
  readonly duty?: Duty
}

/** A value of an analysis with what is said of it. */
export interface ReportedFigure {
  readonly value: Quantity
  /** Of the mortar, for a figure that the laboratory reports finished. */
  readonly condition?: string
  readonly age?: Age
  readonly 'standard-uncertainty'?: Quantity
  readonly basis?: string
  readonly method?: string
  readonly of?: number
  readonly excluded?: string
  readonly 'excluded-on'?: Moment
}
/** Several figures differ by the condition or age of their mortars. */
export type ReportedValue = Quantity | ReportedFigure | readonly ReportedFigure[]

export interface Analysis {
  readonly laboratory: string
  readonly sample: string
  readonly tested: Moment
  /** When the results became known, where that was later. */
  readonly reported?: Moment
  readonly results: Readonly<Record<string, ReportedValue | undefined>>
  readonly 'control-results'?: Readonly<Record<string, ReportedValue | undefined>>
}

/** A lot with everything it refers to. */
export interface LotEvidence {
  readonly samples: readonly Sample[]
  readonly analyses: readonly Analysis[]
  readonly tests: readonly TestMortar[]
  readonly verification: readonly Analysis[]
  readonly conditions: ReadonlyMap<string, MortarCondition>
  readonly controls: ReadonlyMap<string, ControlMortar>
  readonly kind: MaterialKind
  /** The laboratory's method for a property on a date; undefined where none is stated. */
  readonly methodOf: (laboratory: string, property: string, date: Moment) => string | undefined
  /** Side of the cubes that a laboratory casts on a date; undefined where none is stated. */
  readonly mouldOf?: (laboratory: string, date: Moment) => Quantity | undefined
  /** Calendar date; readings taken later are planned. */
  readonly asOf: Moment
  readonly graceHours: number
  /** Largest difference of control and test temperatures at reading, °C, where the condition sets none. */
  readonly readWithin: number
}

/** Whether a specimen or a reported value is written as one quantity. */
export function isQuantity(value: object): value is Quantity {
  return 'written' in value
}

/** The figures that an analysis reports of one property, however they are written. */
export function figuresOf(value: ReportedValue): readonly ReportedFigure[] {
  if (isQuantity(value)) return [{ value }]
  return 'value' in value ? [value] : value
}

/**
 * How a sample was taken and, where it is stated, what it serves; one without a record of it counts as a grab.
 * @param id of the sample
 */
export function sampleOf(
  id: string,
  { samples }: Pick<LotEvidence, 'samples'>,
): { readonly sampleKind: Sample['kind']; readonly duty?: Duty } {
  const sample = samples.find((candidate) => candidate.id === id)
  return { sampleKind: sample?.kind ?? 'grab', ...defined({ duty: sample?.duty }) }
}

/**
 * Whose results those on a sample are: an agency's where the sample is there to check the producer's.
 * @param id of the sample
 */
export function roleOf(id: string, lot: Pick<LotEvidence, 'samples'>): 'producer' | 'verification' {
  return dutyOf(sampleOf(id, lot)) === 'verification' ? 'verification' : 'producer'
}
