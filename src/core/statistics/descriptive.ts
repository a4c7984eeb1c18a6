/**
 * Basic statistics of a few readings, computed in two passes so that large common parts cancel without loss.
 */

/**
 * Compensated sum: nothing of the small values is lost beside the large ones.
 * @param values finite, any number of them, all in one unit
 * @returns the sum in that unit; 0 for none
 * Source: Neumaier 1974, ZAMM 54, 39-51.
 */
export function sum(values: readonly number[]): number {
  let total = 0
  let lost = 0
  // By place: it is the most called of all functions, and an iterator makes an object for each value.
  for (let place = 0; place < values.length; place += 1) {
    const value = values[place] ?? Number.NaN
    const next = total + value
    // Neumaier 1974: the larger of the two addends decides which loss is kept.
    lost += Math.abs(total) < Math.abs(value) ? value - next + total : total - next + value
    total = next
  }
  return total + lost
}

/**
 * Arithmetic mean, by the compensated sum.
 * @param values at least one, all in one unit
 * @returns in that unit, unrounded; NaN where one of the values is
 * @throws RangeError for none
 * Source: JCGM 100:2008, 4.2.1, equation (3).
 */
export function mean(values: readonly number[]): number {
  if (values.length === 0) throw new RangeError('mean needs at least one value, got none')
  // JCGM 100:2008, 4.2.1, equation (3).
  return sum(values) / values.length
}

/**
 * Sample standard deviation, divisor n − 1.
 * @param values finite, at least two, all in one unit
 * @returns in that unit, unrounded; zero for equal values
 * @throws RangeError for fewer than two
 * Source: JCGM 100:2008, 4.2.2, equation (4); corrected two-pass form of Chan, Golub and LeVeque 1983, Am.
 * Stat. 37, 242-247.
 */
export function standardDeviation(values: readonly number[]): number {
  if (values.length < 2)
    throw new RangeError(`standardDeviation needs at least two values, got ${values.length}`)
  const centre = mean(values)
  const deviations = values.map((value) => value - centre)
  // The second term is zero in exact arithmetic and takes out the rounding of the mean (Chan, Golub and
  // LeVeque 1983, Am. Stat. 37, 242-247; the formula read, its number 1.7 from memory).
  const squares =
    sum(deviations.map((deviation) => deviation * deviation)) - sum(deviations) ** 2 / values.length
  // JCGM 100:2008, 4.2.2, equation (4).
  return Math.sqrt(squares / (values.length - 1))
}

/**
 * Largest less smallest.
 * @param values finite, at least one, all in one unit
 * @returns in that unit, zero or more
 * @throws RangeError for none
 */
export function range(values: readonly number[]): number {
  if (values.length === 0) throw new RangeError('range needs at least one value, got none')
  return Math.max(...values) - Math.min(...values)
}
