/** Student's t when the means are apart: what tolerance factors and the power of a t test ask for. */
import { cumulative } from './distributions.ts'

/** Points of s/σ with their weights, which sum to one. */
export type Spread = readonly { readonly ratio: number; readonly weight: number }[]

/**
 * Panels for many degrees of freedom; with few the integrand falls off within a hundredth of the range, and
 * more are taken. Own choice, like the reach: factors agree with printed ones to all their digits.
 */
const PANELS = 2000
const PANELS_FOR_ONE = 40_000
/** So many standard deviations of s/σ on each side hold all but 1e-15 of it; below zero there is nothing. */
const REACH = 9

/**
 * Distribution of s/σ: how far a standard deviation computed from a sample may lie from the true one.
 * @param df degrees of freedom, 1 or more
 * @returns points with weights
 * Source: Simpson's rule (HELM workbook 31.2, key point 9) on a density proportional to x^(df − 1)
 * exp(−df x²/2), a chi distribution scaled by √df (from memory). It is scaled by its largest value, so that
 * neither power nor exponential leaves the range of numbers.
 */
export function spreadOfDeviation(df: number): Spread {
  const half = REACH / Math.sqrt(2 * df)
  const [low, high] = [Math.max(0, 1 - half), 1 + half]
  const panels = Math.max(PANELS, 2 * Math.round(PANELS_FOR_ONE / df / 2))
  const step = (high - low) / panels
  const points = Array.from({ length: panels + 1 }, (_, index) => {
    const ratio = low + index * step
    const simpson = index === 0 || index === panels ? 1 : index % 2 === 1 ? 4 : 2
    return { ratio, weight: simpson * densityAt(ratio, df) }
  })
  const total = points.reduce((sum, { weight }) => sum + weight, 0)
  return points
    .filter(({ weight }) => weight > 0)
    .map(({ ratio, weight }) => ({ ratio, weight: weight / total }))
}

function densityAt(ratio: number, df: number): number {
  if (ratio === 0) return df === 1 ? Math.exp(df / 2) : 0
  return Math.exp((df - 1) * Math.log(ratio) - (df * (ratio * ratio - 1)) / 2)
}

/**
 * P(T ≤ t) of T = (Z + noncentrality) / (s/σ), the noncentral t distribution.
 * @param t dimensionless
 * @param noncentrality distance of the means in standard errors
 * @param spread of s/σ, for the degrees of freedom asked about
 * @returns probability from 0 to 1, to about ten digits
 * Note: the normal distribution averaged over s/σ, because no library at hand keeps its digits beyond n = 150.
 * Source: definition as in R's TDist.
 */
export function noncentralStudent(t: number, noncentrality: number, spread: Spread): number {
  return spread.reduce((sum, { ratio, weight }) => sum + weight * cumulative(t * ratio - noncentrality), 0)
}
