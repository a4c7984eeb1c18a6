/** A reading of a study, as its file or its table holds it. */
import type { Age } from '../measure/age.ts'
import type { Moment } from '../measure/moment.ts'

/** What a bench reads, or a laboratory reports finished. */
export const MEASURES = {
  load: 'force',
  strength: 'stress',
  resistance: 'resistance',
  resistivity: 'resistivity',
  'strength-activity-index': 'fraction',
  'resistivity-index': 'fraction',
} as const

export type Measure = keyof typeof MEASURES

/** Code of the control mortar among the materials. */
export const CONTROL = 'control'

export interface StudyReading {
  /** Code of the material, or `control`. */
  readonly material: string
  readonly condition: string
  readonly laboratory: string
  readonly batch: string
  readonly age: Age
  readonly tested?: Moment
  readonly measure: Measure
  /** kN, MPa, ohm, ohm m or %, by the measure. */
  readonly value: number
  /** The value is a ceiling that the reading lies above. */
  readonly above: boolean
}

/** What a study asks: which condition separates, how far laboratories agree, which tolerance matters. */
export type StudyKind = 'screening' | 'interlaboratory' | 'ruggedness'

export type StudyIndexProperty = 'strength-activity-index' | 'resistivity-index'
