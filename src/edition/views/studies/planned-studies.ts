/** Studies that have a programme. */
import type { Edition } from '../../shape/edition.ts'

/** Ids, in the order of the edition. */
export function plannedStudies(edition: Edition): string[] {
  return [...edition.studies.keys()].filter((id) => edition.study(id).record.programme !== undefined)
}
