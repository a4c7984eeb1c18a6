/** Whether a result lies in its laboratory's accreditation scope on the day it was obtained. */
import { isOfStandard } from '../../core/measure/designation.ts'
import { inForce, type Moment } from '../../core/measure/moment.ts'
import type { Records } from '../../records/records.ts'
import type { Laboratory } from '../../records/schema/loaded-records.ts'

/** What accreditation asks of a result. */
export interface AccreditedWork {
  readonly property: string
  readonly condition?: string
  /** As the result has it, with its edition. */
  readonly method?: string
  readonly tested: Moment
}

type Accreditation = NonNullable<Laboratory['accreditation']>[number]

/**
 * The accreditation in force for the work, or undefined: "not accredited".
 * @param conditions on record, which tell a standard's own from a modified one
 */
export function accreditationFor(
  laboratory: Laboratory,
  work: AccreditedWork,
  conditions: Records['conditions'],
): { body: string; number: string } | undefined {
  return laboratory.accreditation?.find(
    (entry) =>
      inForce(entry, work.tested) && (coversProperty(entry, work) || coversMethod(entry, work, conditions)),
  )
}

function coversProperty({ scope = [], conditions }: Accreditation, { property, condition }: AccreditedWork) {
  const isListed = scope.some((key) => key === property)
  return isListed && (condition === undefined || (conditions?.includes(condition) ?? true))
}

/** What is done otherwise than the standard says is not in the scope of the standard. */
function coversMethod(
  { standards = [], conditions }: Accreditation,
  { method, condition }: AccreditedWork,
  onRecord: Records['conditions'],
): boolean {
  if (method === undefined || !standards.some((standard) => isOfStandard(method, standard))) return false
  return (
    condition === undefined ||
    (conditions?.includes(condition) ?? onRecord.get(condition)?.standing === 'standard')
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
