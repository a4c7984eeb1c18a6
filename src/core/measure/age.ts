/** Age of a specimen at test against the nominal age and its tolerance. */
import { ageHours, daysBetween, hoursBetween } from './moment.ts'

export type AgeCheck =
  | { readonly check: 'within'; readonly hours: number }
  | { readonly check: 'outside'; readonly hours: number }
  | { readonly check: 'cannot-be-verified' }

/**
 * @param cast,tested moments as in the records
 * @param age nominal age, "28 d"
 * @param toleranceHours largest distance from it, hours, inclusive
 * Note: where either moment is a date alone the age cannot be verified, unless the dates alone put it out of
 * reach: then it is outside.
 */
export function checkAge(cast: string, tested: string, age: string, toleranceHours: number): AgeCheck {
  const hours = hoursBetween(cast, tested)
  if (hours === null) return checkDates(cast, tested, age, toleranceHours)
  // A minute's binary dust must not fail an age on the very limit.
  return Math.abs(hours - ageHours(age)) <= toleranceHours + 1e-9
    ? { check: 'within', hours }
    : { check: 'outside', hours }
}

/** With whole days between the dates, the true age lies less than a day to either side. */
function checkDates(cast: string, tested: string, age: string, toleranceHours: number): AgeCheck {
  const hours = 24 * daysBetween(cast, tested)
  return Math.abs(hours - ageHours(age)) - 24 >= toleranceHours
    ? { check: 'outside', hours }
    : { check: 'cannot-be-verified' }
}
