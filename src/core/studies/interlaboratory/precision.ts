/** Repeatability and reproducibility of one material, with their intervals. */
import { chiSquareQuantile } from '../../statistics/chi-square.ts'
import { mean, standardDeviation } from '../../statistics/descriptive.ts'
import {
  type MeanSquare,
  type VarianceComponents,
  varianceComponents,
} from '../../statistics/variance-components.ts'
import { type Cell, cellFigures } from './cells.ts'

/** A standard deviation with its interval, in the unit of the results. */
export interface Deviation {
  readonly value: number
  readonly low: number
  readonly high: number
}

export interface Precision {
  readonly laboratories: number
  readonly results: number
  /** Mean of the cell means: each laboratory counts once. */
  readonly mean: number
  /** Standard deviation of the cell means. */
  readonly deviationOfMeans: number
  readonly repeatability: Deviation
  readonly reproducibility: Deviation
  /** Variance between laboratories; below zero where their means lie closer than their own scatter would spread them. */
  readonly betweenVariance: number
  /** r and R: what two results differ by in one case of twenty at most, within a laboratory and between two. */
  readonly repeatabilityLimit: number
  readonly reproducibilityLimit: number
  readonly df: { readonly within: number; readonly between: number }
  /** Level of both intervals. */
  readonly level: number
}

/** Why there is no statement of precision for a material. */
export type NoPrecision = 'one-laboratory' | 'no-replicates' | 'all-equal'

/** ASTM E177 and E691: 1.960 times the root of 2, rounded as both print it (from memory). */
export const PRECISION_LIMIT_FACTOR = 2.8

/**
 * Repeatability and reproducibility from the cells of one material.
 * @param cells of unequal size where results are missing
 * @param level of the intervals, between 0 and 1
 * @returns figures, or why there are none
 * Notes: 1. a laboratory with a single result counts for reproducibility alone; 2. where the variance between
 * laboratories comes out below zero, s_R is s_r, as ASTM E691 has it; 3. the interval of s_R rests on p − 1
 * degrees of freedom for what lies between laboratories: six give 0.62 to 2.45 times s_R where that is all.
 * Source: ASTM E691-99 (s_r, s_R; read with its example); ISO 5725-2, 7.4 for cells of unequal size (from memory);
 * intervals: chi-square for s_r; Graybill and Wang 1980, JASA 75, 869-873 for s_R (from memory, simulated in the tests).
 */
export function precision(cells: readonly Cell[], level: number): Precision | NoPrecision {
  const figures = cellFigures(cells)
  if (figures.length < 2) return 'one-laboratory'
  const components = varianceComponents(figures.map(({ values }) => ({ group: 'one material', values })))
  if (components === null) return 'no-replicates'
  const { within, between, betweenVariance } = components
  if (within.meanSquare === 0 && between.meanSquare === 0) return 'all-equal'
  const means = figures.map((cell) => cell.mean)
  const repeatability = withinInterval(within, level)
  const reproducibility = reproducibilityInterval(components, level)
  return {
    laboratories: figures.length,
    results: figures.reduce((n, { values }) => n + values.length, 0),
    mean: mean(means),
    deviationOfMeans: standardDeviation(means),
    repeatability,
    reproducibility,
    betweenVariance,
    repeatabilityLimit: PRECISION_LIMIT_FACTOR * repeatability.value,
    reproducibilityLimit: PRECISION_LIMIT_FACTOR * reproducibility.value,
    df: { within: within.df, between: between.df },
    level,
  }
}

function withinInterval({ meanSquare, df }: MeanSquare, level: number): Deviation {
  const tail = (1 - level) / 2
  return {
    value: Math.sqrt(meanSquare),
    low: Math.sqrt((df * meanSquare) / chiSquareQuantile(1 - tail, df)),
    high: Math.sqrt((df * meanSquare) / chiSquareQuantile(tail, df)),
  }
}

function reproducibilityInterval(
  { within, between, perBatch, betweenVariance }: VarianceComponents,
  level: number,
): Deviation {
  const value = Math.sqrt(within.meanSquare + Math.max(0, betweenVariance))
  // s_R² = s_d²/n + (1 − 1/n) s_r², two mean squares that do not depend on each other.
  const parts = [
    { part: between.meanSquare / perBatch, df: between.df },
    { part: (1 - 1 / perBatch) * within.meanSquare, df: within.df },
  ]
  const estimate = parts.reduce((total, { part }) => total + part, 0)
  const tail = (1 - level) / 2
  // Graybill and Wang 1980: G = 1 − df/χ²(1 − α/2), H = df/χ²(α/2) − 1.
  const below = Math.hypot(...parts.map(({ part, df }) => part * (1 - df / chiSquareQuantile(1 - tail, df))))
  const above = Math.hypot(...parts.map(({ part, df }) => part * (df / chiSquareQuantile(tail, df) - 1)))
  return {
    value,
    low: Math.min(value, Math.sqrt(Math.max(0, estimate - below))),
    high: Math.max(value, Math.sqrt(estimate + above)),
  }
}
