/**
 * Basic statistics of a few readings, computed in two passes so that large common parts cancel without loss.
 */

/** Compensated sum (Neumaier 1974, ZAMM 54, 39-51). */
export function sum(values: readonly number[]): number {
  let total = 0
  let lost = 0
  for (const value of values) {
    const next = total + value
    lost += Math.abs(total) < Math.abs(value) ? value - next + total : total - next + value
    total = next
  }
  return total + lost
}

/** Arithmetic mean of at least one value. @throws RangeError for none */
export function mean(values: readonly number[]): number {
  if (values.length === 0) throw new RangeError('mean needs at least one value, got none')
  return sum(values) / values.length
}

/** Sample standard deviation, divisor n − 1. @throws RangeError for fewer than two values */
export function standardDeviation(values: readonly number[]): number {
  if (values.length < 2)
    throw new RangeError(`standardDeviation needs at least two values, got ${values.length}`)
  const centre = mean(values)
  const deviations = values.map((value) => value - centre)
  // The second term is zero in exact arithmetic and takes out the rounding of the mean (Chan, Golub and
  // LeVeque 1983, Am. Stat. 37, 242-247, eq. 1.7).
  const squares =
    sum(deviations.map((deviation) => deviation * deviation)) - sum(deviations) ** 2 / values.length
  return Math.sqrt(squares / (values.length - 1))
}

/** Largest less smallest. @throws RangeError for none */
export function range(values: readonly number[]): number {
  if (values.length === 0) throw new RangeError('range needs at least one value, got none')
  return Math.max(...values) - Math.min(...values)
}
