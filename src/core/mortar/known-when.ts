/** When what stands in a record became known. */
import { isBy, laterOf, type Moment } from '../measure/moment.ts'

/** Something that was tested, and reported then or later. */
export interface Reported {
  readonly tested: Moment
  readonly reported?: Moment
}

/**
 * When a reading or an analysis became known.
 * @returns `reported` where it is later than the test, else the test's own moment
 */
export function knownFrom({ tested, reported }: Reported): Moment {
  return reported === undefined ? tested : laterOf(tested, reported)
}

/** What may have been excluded, and since when. */
export interface Excludable {
  readonly excluded?: string
  readonly 'excluded-on'?: Moment
}

/**
 * Why something does not count on a date.
 * @param asOf calendar date
 * @returns undefined where it counts then: an exclusion without a day holds from the reading on
 */
export function exclusionOn(what: Excludable, asOf: Moment): string | undefined {
  const since = what['excluded-on']
  return since === undefined || isBy(since, asOf) ? what.excluded : undefined
}
