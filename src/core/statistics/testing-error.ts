/** What testing adds to the scatter of a source, and what is left without it. */
import { d2 } from './control-chart-constants.ts'
import { mean } from './descriptive.ts'

/**
 * Standard deviation of testing from duplicates.
 * @param differences of duplicate tests, at least one; signs do not count
 * @returns in their unit: the mean range over d₂ = 2/√π
 * @throws RangeError for none
 * Source: ASTM C917 and C1451 (formula from memory).
 */
export function testingError(differences: readonly number[]): number {
  return mean(differences.map(Math.abs)) / d2(2)
}

/**
 * What is left of a scatter without the error of testing: variances of independent parts add up.
 * @param total,testing standard deviations in one unit
 * @returns in that unit; zero where the testing error exceeds the whole
 * Source: ASTM C917 and C1451 (formula from memory).
 */
export function withoutTesting(total: number, testing: number): number {
  return Math.sqrt(Math.max(0, total ** 2 - testing ** 2))
}
