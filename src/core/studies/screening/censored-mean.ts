/** Mean of log-normal values some of which are known only as above a bound. */
import { cumulative } from '../../statistics/distributions.ts'
import { increasingRoot } from '../../statistics/increasing-root.ts'

/** A reading, or the bound that it lies above. */
export interface Reading {
  readonly value: number
  readonly above: boolean
}

export interface LogNormal {
  /** Of the natural logarithms. */
  readonly mean: number
  readonly deviation: number
}

const ROUNDS = 500
const SMALLEST_STEP = 1e-12

/**
 * Mean and deviation of the logarithms, by maximum likelihood.
 * @param readings above zero, two or more; at least one a value, not all values the same
 * @returns null where the likelihood has no largest value: fewer than two readings, all censored, or values that do not scatter
 * Notes: 1. nothing is put in place of a censored reading; 2. without censoring the deviation has divisor n, as maximum
 * likelihood has it.
 * Source: the tobit likelihood; steps of expectation and maximization, Dempster, Laird and Rubin 1977, J. R. Stat. Soc. B 39,
 * 1-38, example 4.4 (from memory); held against scipy's direct maximum in the tests.
 */
export function censoredLogNormal(readings: readonly Reading[]): LogNormal | null {
  const logs = readings.map(({ value, above }) => ({ log: Math.log(value), above }))
  const seen = logs.filter(({ above }) => !above)
  if (readings.length < 2 || seen.length === 0) return null
  const n = logs.length
  let mean = logs.reduce((total, { log }) => total + log, 0) / n
  let deviation = Math.sqrt(logs.reduce((total, { log }) => total + (log - mean) ** 2, 0) / n)
  if (deviation === 0) return null
  for (let round = 0; round < ROUNDS; round += 1) {
    const [before, scale] = [mean, deviation]
    // Expected value and square of what lies above its bound, by the normal tail's hazard.
    const moments = logs.map(({ log, above }) => {
      if (!above) return { first: log, second: log * log }
      const z = (log - before) / scale
      const hazard = hazardOf(z)
      const first = before + scale * hazard
      return {
        first,
        second: before * before + scale * scale * (1 + z * hazard) + 2 * before * scale * hazard,
      }
    })
    mean = moments.reduce((total, { first }) => total + first, 0) / n
    deviation = Math.sqrt(
      Math.max(0, moments.reduce((total, { second }) => total + second, 0) / n - mean * mean),
    )
    if (deviation === 0 || !Number.isFinite(mean)) return null
    if (Math.abs(mean - before) + Math.abs(deviation - scale) <= SMALLEST_STEP * scale) break
  }
  return { mean, deviation }
}

/**
 * Mean of the logarithms by maximum likelihood where their deviation is known from elsewhere.
 * @param readings above zero; at least one a value
 * @param deviation of the natural logarithms, above zero
 * @returns natural logarithm
 * @throws RangeError where all are above a bound: the likelihood then has no largest value
 * Note: with few readings their own deviation is hardly known, and the mean leans on it; one pooled over many materials is firmer.
 * Source: the derivative of the tobit likelihood in the mean alone, which falls as the mean rises; scipy is the check.
 */
export function censoredLogMean(readings: readonly Reading[], deviation: number): number {
  const seen = readings.filter(({ above }) => !above)
  if (seen.length === 0) throw new RangeError('censoredLogMean needs a value, got bounds alone')
  const logs = readings.map(({ value, above }) => ({ log: Math.log(value), above }))
  const start = seen.reduce((total, { value }) => total + Math.log(value), 0) / seen.length
  // In deviations from the mean of what was seen, so that the root's digits are relative to the scatter.
  const slope = (steps: number) =>
    logs.reduce((total, { log, above }) => {
      const z = (log - start) / deviation - steps
      return total - (above ? hazardOf(z) : z)
    }, 0)
  return start + deviation * increasingRoot(slope, 0)
}

/**
 * How many whole readings the mean of greatest likelihood rests on: one above a bound tells less than a value.
 * @param readings above zero
 * @param logMean natural logarithm, as `censoredLogMean` gives it
 * @param deviation of the natural logarithms, above zero
 * @returns above zero, at most the number of readings
 * Source: observed information of the tobit likelihood in the mean, times the variance: 1 of a value, h (h − z) of a bound at z
 * with the normal tail's hazard h (from memory); a difference quotient of scipy's likelihood is the check.
 */
export function wholeReadings(readings: readonly Reading[], logMean: number, deviation: number): number {
  return readings.reduce((total, { value, above }) => {
    if (!above) return total + 1
    const z = (Math.log(value) - logMean) / deviation
    const hazard = hazardOf(z)
    return total + hazard * (hazard - z)
  }, 0)
}

/** φ(z) / (1 − Φ(z)); far out, by its continued fraction, where both are too small to divide. */
function hazardOf(z: number): number {
  const tail = cumulative(-z)
  return 1e-300 < tail && z < 35
    ? Math.exp(-(z * z) / 2) / Math.sqrt(2 * Math.PI) / tail
    : z + 1 / (z + 2 / (z + 3 / z))
}
