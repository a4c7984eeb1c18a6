/** How much of a scatter lies within batches and how much between them. */
import { mean, sum } from './descriptive.ts'

/** Values of one batch; batches of a group were made alike, so that between groups nothing is asked. */
export interface NestedBatch {
  readonly group: string
  readonly values: readonly number[]
}

export interface MeanSquare {
  readonly meanSquare: number
  readonly df: number
}

export interface VarianceComponents {
  readonly within: MeanSquare
  /** Between batches of a group; holds the scatter within as far as it enters a mean. */
  readonly between: MeanSquare
  /** Values in a batch, the average that the between mean square asks for. */
  readonly perBatch: number
  /**
   * Variance of batches beyond that of their values; below zero where chance alone spreads the means less
   * than it should.
   */
  readonly betweenVariance: number
}

/**
 * How much of a scatter lies within batches and how much between them, pooled over groups.
 * @param batches of unequal size, in any order, all values in one unit; batches of a group were made alike
 * @returns mean squares and variance in the unit's square; null without a degree of freedom of both kinds
 * Notes: 1. batches without a value are left out; 2. a negative variance is given as it is: set it to zero
 * and say so where it is printed; 3. adding up over groups is an extension of the formulas for one group.
 * Source: ISO 5725-2, s_r², s_d² and s_L² (7.4.5 from memory, formulas read second-hand); ISO Guide 35 for
 * the average number of values.
 */
export function varianceComponents(batches: readonly NestedBatch[]): VarianceComponents | null {
  const filled = batches.filter(({ values }) => 0 < values.length)
  const groups = [...Map.groupBy(filled, ({ group }) => group).values()]
  const df = {
    within: sum(filled.map(({ values }) => values.length - 1)),
    between: filled.length - groups.length,
  }
  if (df.within < 1 || df.between < 1) return null
  // ISO 5725-2, s_r².
  const within = sum(filled.map(({ values }) => squaresAbout(values, mean(values)))) / df.within
  // ISO 5725-2, s_d².
  const between = sum(groups.map(squaresOfMeans)) / df.between
  const perBatch = sum(groups.map(evenedSize)) / df.between
  return {
    within: { meanSquare: within, df: df.within },
    between: { meanSquare: between, df: df.between },
    perBatch,
    // ISO 5725-2, s_L²; negative left as it is.
    betweenVariance: (between - within) / perBatch,
  }
}

function squaresAbout(values: readonly number[], centre: number): number {
  return sum(values.map((value) => (value - centre) ** 2))
}

/** Σ n (x̄ − x̿)² of a group's batches. */
function squaresOfMeans(group: readonly NestedBatch[]): number {
  const centre = mean(group.flatMap(({ values }) => values))
  return sum(group.map(({ values }) => values.length * (mean(values) - centre) ** 2))
}

/** N − Σ n² / N of a group's batches: over p − 1 the average number of ISO 5725-2 and ISO Guide 35. */
function evenedSize(group: readonly NestedBatch[]): number {
  const sizes = group.map(({ values }) => values.length)
  return sum(sizes) - sum(sizes.map((size) => size * size)) / sum(sizes)
}
