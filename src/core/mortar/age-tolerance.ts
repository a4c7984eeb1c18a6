/** Whether a test was made at its age: a condition gives each age a tolerance. */
import { type Age, isSameAge } from '../measure/age.ts'
import { daysBetween, hoursBetween, type Moment } from '../measure/moment.ts'
import type { ResultReason } from '../result/reason.ts'
import type { MortarCondition, MortarReading } from './mortar.ts'

/**
 * Whether a test was made at its age.
 * @param cast moment at which the mortar was cast
 * @returns the one thing to say of the age, and whether the test counts all the same
 * Notes: 1. an age without a tolerance in the condition is not checked; 2. an age that cannot be verified
 * counts, with a note.
 */
export function ageReasons(
  cast: Moment,
  { age, tested }: Pick<MortarReading, 'age' | 'tested'>,
  { ages }: Pick<MortarCondition, 'ages'>,
): { valid: boolean; reasons: ResultReason[] } {
  const tolerance = ages.find((entry) => isSameAge(entry.age, age))?.within
  if (tolerance === undefined || tested === undefined) return { valid: true, reasons: [] }
  const found = checkAge(cast, tested, age, tolerance.value)
  switch (found.check) {
    case 'within':
      return { valid: true, reasons: [] }
    case 'cannot-be-verified':
      return { valid: true, reasons: [{ code: 'age-cannot-be-verified', params: {} }] }
    case 'outside': {
      const params = { testedHours: found.hours, age: age.text, writtenTolerance: tolerance.written }
      return { valid: false, reasons: [{ code: 'age-outside', params }] }
    }
  }
}

type AgeCheck =
  | { readonly check: 'within' }
  | { readonly check: 'outside'; readonly hours: number }
  | { readonly check: 'cannot-be-verified' }

/**
 * The age at which a specimen was tested, against its nominal age.
 * @param cast,tested moments as in the records
 * @param age nominal age
 * @param toleranceHours largest distance from it, hours, the limit itself included
 * Note: where either moment is a date alone the age cannot be verified, unless the dates alone put it out of
 * reach: then it is outside.
 */
export function checkAge(cast: Moment, tested: Moment, age: Age, toleranceHours: number): AgeCheck {
  const hours = hoursBetween(cast, tested)
  if (hours === null) return checkDates(cast, tested, age, toleranceHours)
  // A minute's binary dust must not fail an age on the very limit.
  return Math.abs(hours - age.hours) <= toleranceHours + 1e-9
    ? { check: 'within' }
    : { check: 'outside', hours }
}

/** With whole days between the dates, the true age lies less than a day to either side. */
function checkDates(cast: Moment, tested: Moment, age: Age, toleranceHours: number): AgeCheck {
  const hours = 24 * daysBetween(cast, tested)
  return Math.abs(hours - age.hours) - 24 >= toleranceHours
    ? { check: 'outside', hours }
    : { check: 'cannot-be-verified' }
}
