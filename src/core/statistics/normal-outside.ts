/** A normal distribution fitted to values outside a window: what lies inside it is not asked for its shape. */
import { mean, standardDeviation } from './descriptive.ts'
import { cumulative } from './distributions.ts'

export interface NormalOutside {
  readonly mean: number
  readonly standardDeviation: number
  /** Share of the distribution inside the window. */
  readonly inside: number
}

const MOST_STEPS = 500
/** Of the standard deviation: far below what any sentence shows. */
const SETTLED = 1e-10

/**
 * The most likely normal distribution of values of which those inside a window are not looked at.
 * @param values outside the window, at least three and not all alike, in one unit
 * @param from,to ends of the window, in that unit; from below to
 * @returns null where the steps do not settle
 * @throws RangeError for fewer than three values
 * Note: each step puts in as many values as the last fit expects inside, with their expected moments, and takes the
 * moments of all; it settles where the likelihood of the truncated sample is largest.
 * Source: Dempster, Laird and Rubin 1977, section 4.2, truncated data (from memory); moments of a truncated normal
 * variable as in Johnson, Kotz and Balakrishnan, volume 1, 13.10.1 (from memory).
 */
export function normalOutside(values: readonly number[], from: number, to: number): NormalOutside | null {
  if (values.length < 3)
    throw new RangeError(`normalOutside needs at least three values, got ${values.length}`)
  const own = mean(values)
  const squares = values.reduce((total, value) => total + (value - own) ** 2, 0)
  let fit = { mean: own, standardDeviation: standardDeviation(values) }
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const within = insideOf(fit, from, to)
    const missing = (values.length * within.share) / (1 - within.share)
    const n = values.length + missing
    const centre = (values.length * own + missing * within.mean) / n
    const spread =
      squares +
      values.length * (own - centre) ** 2 +
      missing * (within.variance + (within.mean - centre) ** 2)
    const next = { mean: centre, standardDeviation: Math.sqrt(spread / n) }
    const moved = Math.abs(next.mean - fit.mean) + Math.abs(next.standardDeviation - fit.standardDeviation)
    fit = next
    if (moved < SETTLED * fit.standardDeviation) return { ...fit, inside: insideOf(fit, from, to).share }
  }
  return null
}

/** Share, mean and variance of a normal distribution between two ends. */
function insideOf(
  { mean: centre, standardDeviation: s }: Omit<NormalOutside, 'inside'>,
  from: number,
  to: number,
): { share: number; mean: number; variance: number } {
  const [a, b] = [(from - centre) / s, (to - centre) / s]
  const share = cumulative(b) - cumulative(a)
  // Where next to nothing lies inside, its moments do not matter either.
  if (share < 1e-12) return { share: 0, mean: (from + to) / 2, variance: 0 }
  const shift = (density(a) - density(b)) / share
  const variance = s * s * (1 + (a * density(a) - b * density(b)) / share - shift * shift)
  return { share, mean: centre + s * shift, variance: Math.max(0, variance) }
}

/** Density of the standard normal distribution. */
function density(x: number): number {
  return Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI)
}
