/** The logarithm of the gamma function, which the incomplete beta and gamma functions rest on. */

/** From here on the series below has fifteen digits; smaller arguments are moved up to it. */
const FROM = 12
/** B₂ₖ / (2k (2k − 1)) for k = 1 to 6. DLMF 5.11.1. */
const COEFFICIENTS = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360_360]

/**
 * Natural logarithm of the gamma function.
 * @param x above zero
 * @returns about fourteen digits
 * @throws RangeError for zero or less
 * Source: Stirling's series, DLMF 5.11.1; recurrence Γ(x + 1) = x Γ(x), DLMF 5.5.1 (from memory).
 */
export function logGamma(x: number): number {
  if (!(0 < x)) throw new RangeError(`logGamma needs a number above zero, got ${x}`)
  let shift = 0
  let moved = x
  for (; moved < FROM; moved += 1) shift += Math.log(moved)
  // DLMF 5.11.1, first terms.
  const series = COEFFICIENTS.reduce((sum, factor, k) => sum + factor / moved ** (2 * k + 1), 0)
  return (moved - 0.5) * Math.log(moved) - moved + 0.5 * Math.log(2 * Math.PI) + series - shift
}
