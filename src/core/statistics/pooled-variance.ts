/** Scatter within groups that were each measured more than once. */
import { standardDeviation, sum } from './descriptive.ts'
import type { MeanSquare } from './variance-components.ts'

/**
 * Variance pooled by degrees of freedom.
 * @param groups values of each, all in one unit; a group of one value tells nothing of scatter and is left out
 * @returns in the square of that unit; null where no group has two values
 * Source: JCGM 100:2008, 4.2.4.
 */
export function pooledVariance(groups: readonly (readonly number[])[]): MeanSquare | null {
  const repeated = groups.filter((values) => 1 < values.length)
  const df = sum(repeated.map((values) => values.length - 1))
  if (df === 0) return null
  const squares = repeated.map((values) => (values.length - 1) * standardDeviation(values) ** 2)
  return { meanSquare: sum(squares) / df, df }
}
