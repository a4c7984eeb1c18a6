/** Ages that an issued document holds as texts. */
import { readAge } from '../../core/measure/age.ts'

/** Hours of an age, to compare and to sort by: "72 h" and "3 d" are one. @returns 0 without an age */
export function hoursOf(age: string | undefined): number {
  return age === undefined ? 0 : readAge(age).hours
}
