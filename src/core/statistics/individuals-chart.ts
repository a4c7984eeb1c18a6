/** Centre and limits of a chart of single values with moving ranges. */
import { d2, upperRangeFactor } from './control-chart-constants.ts'
import { mean } from './descriptive.ts'

export interface IndividualsLimits {
  readonly centre: number
  readonly meanMovingRange: number
  /** Mean moving range over 2/√π. */
  readonly sigma: number
  /** Three sigma on each side. */
  readonly low: number
  readonly high: number
  readonly movingRangeHigh: number
}

/**
 * Limits of a chart of single values.
 * @param values in order, at least two, in one unit
 * @returns in that unit
 * @throws RangeError for fewer than two
 * Notes: 1. sigma is too small where neighbours are alike; 2. printed tables divide by 1.128, which is 0.03 %
 * off d₂ = 2/√π.
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2.
 */
export function individualsLimits(values: readonly number[]): IndividualsLimits {
  const ranges = movingRanges(values)
  if (ranges.length === 0)
    throw new RangeError(`individualsLimits needs at least two values, got ${values.length}`)
  const [centre, meanMovingRange] = [mean(values), mean(ranges)]
  const sigma = meanMovingRange / d2(2)
  return {
    centre,
    meanMovingRange,
    sigma,
    low: centre - 3 * sigma,
    high: centre + 3 * sigma,
    movingRangeHigh: upperRangeFactor(2) * meanMovingRange,
  }
}

/**
 * Distances of neighbours.
 * @param values in order, in one unit
 * @returns one fewer than values
 */
export function movingRanges(values: readonly number[]): number[] {
  return values.slice(1).map((value, place) => Math.abs(value - (values[place] ?? value)))
}
