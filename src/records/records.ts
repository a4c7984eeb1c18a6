/** Everything read from a content folder, typed; a record with an error is not among it. */
import type { Criterion } from '../core/criteria/criterion.ts'
import type { MethodPage } from './yaml/method-page.ts'
import type { ReferenceTest } from '../core/studies/reference/reference-tests.ts'
import type { StudyReading } from '../core/studies/study-reading.ts'
import type {
  Condition,
  Control,
  Laboratory,
  Lot,
  Producer,
  Site,
  Source,
  Study,
} from './schema/loaded-records.ts'

/** A condition whose details are on record: a mortar can be tested at it. */
export type DescribedCondition = Condition &
  Required<Pick<Condition, 'replacement' | 'water' | 'curing' | 'ages'>>

/** A study with its readings, in the order of their file. */
export interface StudyRecord {
  readonly record: Study
  readonly readings: readonly StudyReading[]
  readonly reference: readonly ReferenceTest[]
}

export interface Records {
  readonly contentDir: string
  readonly site: Site
  readonly producers: ReadonlyMap<string, Producer>
  readonly laboratories: ReadonlyMap<string, Laboratory>
  readonly sources: ReadonlyMap<string, Source>
  readonly conditions: ReadonlyMap<string, DescribedCondition>
  /** Conditions that are named only: their details are to be entered from a standard. */
  readonly announcedConditions: ReadonlyMap<string, Condition>
  readonly controls: ReadonlyMap<string, Control>
  readonly criteria: ReadonlyMap<string, Criterion>
  /** By SOURCE/LOT. */
  readonly lots: ReadonlyMap<string, Lot>
  readonly studies: ReadonlyMap<string, StudyRecord>
  readonly methods: readonly MethodPage[]
  /** Issued documents with a fault, as SOURCE/LOT/N.json: nothing may be read from them. */
  readonly unsoundDocuments: ReadonlySet<string>
  /** Printed numbers of lots that have a fault and are not among the lots, by SOURCE/LOT. */
  readonly faultyNumbers: ReadonlyMap<string, string>
}
