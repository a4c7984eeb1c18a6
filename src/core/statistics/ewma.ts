/** Exponentially weighted moving average, which finds small lasting shifts sooner than single values do. */

/** What the averages are held against. */
export interface EwmaDesign {
  /** Where the average starts, and the centre of its limits. */
  readonly centre: number
  /** Standard deviation of single values, in their unit. */
  readonly sigma: number
  /** Weight of the newest value, above 0 and at most 1. */
  readonly lambda: number
  /** Half width in standard deviations of the average. */
  readonly width: number
}

/**
 * Weight and width of the charts: with known limits and independent values an average goes beyond them once in 500
 * points without any cause. A width of 2.7, often quoted with 370, does so once in 238.
 * Source: run lengths by Crowder's integral equation (Technometrics 1987, 29, 401-407), computed.
 */
export const EWMA_LAMBDA = 0.2
export const EWMA_WIDTH = 2.962

export interface EwmaPoint {
  readonly value: number
  readonly low: number
  readonly high: number
}

/**
 * The averages with the limits of each.
 * @param values in order, in the unit of the design
 * @returns one for each value, with limits that widen towards `steadyLimits`
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4; limits that vary in time: Montgomery, 9.2
 * (from memory).
 */
export function ewma(values: readonly number[], { centre, sigma, lambda, width }: EwmaDesign): EwmaPoint[] {
  let average = centre
  // (1 − λ)^2i, which takes the limits of the first points closer.
  let left = 1
  return values.map((value) => {
    average = lambda * value + (1 - lambda) * average
    left *= (1 - lambda) ** 2
    const half = width * sigma * Math.sqrt((lambda / (2 - lambda)) * (1 - left))
    return { value: average, low: centre - half, high: centre + half }
  })
}

/** What the limits tend to. Source: as of `ewma`. */
export function steadyLimits({ centre, sigma, lambda, width }: EwmaDesign): { low: number; high: number } {
  const half = width * sigma * Math.sqrt(lambda / (2 - lambda))
  return { low: centre - half, high: centre + half }
}
