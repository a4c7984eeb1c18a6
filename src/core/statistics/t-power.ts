/** How often a two-sample t test sees a difference that is there. */
import { quantile } from './distributions.ts'
import { noncentralStudent, spreadOfDeviation } from './noncentral-student.ts'

/** Two sets of results, the level of the test, and the difference of their means in standard deviations. */
export interface Shift {
  readonly first: number
  readonly second: number
  readonly level: number
  readonly shift: number
}

const known = new Map<string, number>()

/**
 * Power of a two-sided t test of two means with a common standard deviation.
 * @param asked results on each side, level between 0 and 1, shift in standard deviations
 * @returns share of cases, from 0 to 1, in which the test shows the shift; remembered between calls
 * @throws RangeError for fewer than one result on a side or fewer than three in all
 * Source: noncentral t distribution with first + second − 2 degrees of freedom and noncentrality shift /
 * √(1/first + 1/second); Cohen 1988, chapter 2 (from memory).
 */
export function tPower({ first, second, level, shift }: Shift): number {
  if (!(1 <= first && 1 <= second && 3 <= first + second))
    throw new RangeError(`tPower needs results on both sides and three in all, got ${first} and ${second}`)
  const key = `${first}|${second}|${level}|${shift}`
  const remembered = known.get(key)
  if (remembered !== undefined) return remembered
  const df = first + second - 2
  const noncentrality = shift / Math.sqrt(1 / first + 1 / second)
  const critical = quantile(1 - level / 2, df)
  const spread = spreadOfDeviation(df)
  const power =
    1 -
    noncentralStudent(critical, noncentrality, spread) +
    noncentralStudent(-critical, noncentrality, spread)
  known.set(key, power)
  return power
}
