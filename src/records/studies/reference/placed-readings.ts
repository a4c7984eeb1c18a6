/** A reference test on its way from the record to the core: where it stands, and its readings in stored units. */
import type { ReferenceReadings } from '../../../core/studies/reference/reference-tests.ts'
import type { FileReport } from '../../diagnostics/report.ts'
import type { MaterialReference } from '../../schema/loaded-records.ts'
import type { ReadRows } from './reading-rows.ts'
import type { ReferenceTables } from './reference-tables.ts'

/** What a record says of one test. */
export type Entry<Key extends keyof MaterialReference> = NonNullable<MaterialReference[Key]>

/** Where a test stands in its study. */
export interface TestPlace {
  readonly material: string
  readonly pointer: string
  readonly tables: ReferenceTables
  readonly report: FileReport
}

/** Readings, and the rows that they came from; null for a test without a table. */
export interface PlacedReadings {
  readonly of: ReferenceReadings
  readonly rows: ReadRows | null
}
