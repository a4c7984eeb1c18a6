/** Whether a result lies in its laboratory's accreditation scope on the day it was obtained. */
import { inForce, type Moment } from '../../core/measure/moment.ts'
import type { Laboratory } from '../../records/schema/loaded-records.ts'

/** What accreditation asks of a result. */
export interface AccreditedWork {
  readonly property: string
  readonly condition?: string
  readonly tested: Moment
}

/** The accreditation in force for the work, or undefined: "not accredited". */
export function accreditationFor(
  laboratory: Laboratory,
  work: AccreditedWork,
): { body: string; number: string } | undefined {
  return laboratory.accreditation?.find(
    (entry) =>
      inForce(entry, work.tested) &&
      entry.scope.includes(work.property as (typeof entry.scope)[number]) &&
      (work.condition === undefined ||
        entry.conditions === undefined ||
        entry.conditions.includes(work.condition)),
  )
}

/** Whether any accreditation of a laboratory is on record, in force or not. */
export function hasAccreditation({ accreditation = [] }: Laboratory): boolean {
  return accreditation.length > 0
}

/** What accreditations are in force on a date, for the certificate's head; null without any. */
export function accreditationOn(laboratory: Laboratory, date: Moment): string | null {
  const entries = laboratory.accreditation?.filter((entry) => inForce(entry, date)) ?? []
  return entries.length === 0 ? null : entries.map((entry) => `${entry.body}, ${entry.number}`).join('; ')
}
