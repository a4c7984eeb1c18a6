/** A study, computed. */
import type { StudyIndices } from '../../core/studies/batch-indices.ts'
import type { RoundRobinMaterial } from '../../core/studies/interlaboratory/round-robin.ts'
import type { RuggednessOf } from '../../core/studies/ruggedness/ruggedness-study.ts'
import type { ScreenedRoute } from '../../core/studies/screening/screening.ts'
import type { ReferenceResult } from './reference-result.ts'
import type { Study } from '../../records/schema/loaded-records.ts'

/** A study as lists need it. */
export interface ListedStudy {
  readonly id: string
  readonly title: string
  readonly kind: Study['kind']
}

/** What its readings say, by its kind. */
export type StudyFound =
  | { readonly kind: 'screening'; readonly routes: readonly ScreenedRoute[] }
  | { readonly kind: 'interlaboratory'; readonly materials: readonly RoundRobinMaterial[] }
  | { readonly kind: 'ruggedness'; readonly effects: readonly RuggednessOf[] }

/** The whole of a study. */
export interface StudyEntry extends ListedStudy {
  readonly record: Study
  /** Readings known by the as-of day. */
  readonly readings: number
  readonly indices: StudyIndices
  /** Of the materials, in their order and that of the tests. */
  readonly reference: readonly ReferenceResult[]
  readonly found: StudyFound
}
