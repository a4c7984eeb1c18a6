/** References between records. */
import type { RelatedPlace } from '../diagnostics/diagnostic.ts'
import { nearNames } from '../diagnostics/near-names.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { Records } from '../records.ts'
import type { RecordKind } from '../schema/schemas.ts'

/** Every record that could be read, and the ids of all that have a file: what a reference may name. */
export interface AllRecords extends Records {
  /**
   * Whether a file of that id exists, even one with a fault, whose own fault is enough; of a lot also whether
   * one had the id before, for what was issued goes on naming it so.
   */
  readonly has: (kind: RecordKind, id: string) => boolean
  /** The same set at each call. */
  readonly names: (kind: RecordKind) => ReadonlySet<string>
  /** A place of another record, to be shown beside a fault; undefined where it is not there. */
  readonly place: (kind: RecordKind, id: string, pointer: string, message: string) => RelatedPlace | undefined
}

/**
 * Reports a mortar made at a condition that does not exist, or whose details nobody has entered: nothing can
 * be computed at it.
 */
export function checkMortarCondition(id: string, pointer: string, all: AllRecords, report: FileReport): void {
  checkReference('condition', id, pointer, all, report)
  if (!all.announcedConditions.has(id)) return
  report.at(
    pointer,
    'reference-mismatch',
    `the details of the condition "${id}" are still to be entered`,
    'enter replacement, water, curing and ages in its record first',
  )
}

/** Reports a reference to a record that does not exist. */
export function checkReference(
  kind: RecordKind,
  id: string | undefined,
  pointer: string,
  all: AllRecords,
  report: FileReport,
): void {
  if (id === undefined || all.has(kind, id)) return
  report.at(
    pointer,
    'reference-unknown',
    `there is no ${kind} "${id}"`,
    nearNames(id, all.names(kind)) || `write its file first, or use the id of one that exists`,
  )
}
