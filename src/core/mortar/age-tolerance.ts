/** Whether a test was made at its age: a condition gives each age a tolerance. */
import { checkAge } from '../measure/age.ts'
import type { ResultReason } from '../result/reason.ts'
import type { MortarCondition, MortarReading } from './mortar.ts'

/**
 * @param cast moment at which the mortar was cast
 * @returns the one thing to say of the age, and whether the test counts all the same
 * Notes: 1. an age without a tolerance in the condition is not checked; 2. an age that cannot be verified counts,
 * with a note.
 */
export function ageReasons(
  cast: string,
  { age, tested }: Pick<MortarReading, 'age' | 'tested'>,
  { ages }: Pick<MortarCondition, 'ages'>,
): { valid: boolean; reasons: ResultReason[] } {
  const tolerance = ages.find((entry) => entry.age === age)?.within
  if (tolerance === undefined || tested === undefined) return { valid: true, reasons: [] }
  const found = checkAge(cast, tested, age, tolerance.value)
  switch (found.check) {
    case 'within':
      return { valid: true, reasons: [] }
    case 'cannot-be-verified':
      return { valid: true, reasons: [{ code: 'age-cannot-be-verified', params: {} }] }
    case 'outside': {
      const params = { testedHours: found.hours, age, writtenTolerance: tolerance.written }
      return { valid: false, reasons: [{ code: 'age-outside', params }] }
    }
  }
}
