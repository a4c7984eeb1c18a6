/** Root of an increasing function. */

/**
 * Where an increasing function is zero, first bracketed around a guess, then by false position with the stale end's
 * weight halved.
 * @param f increasing, below zero far to the left and above zero far to the right
 * @param guess where to begin
 * @returns to about ten digits
 * Source: the Illinois variant: Dowell and Jarratt 1971, BIT 11, 168-174.
 */
export function increasingRoot(f: (x: number) => number, guess: number): number {
  let width = 1
  while (0 < f(guess - width) || f(guess + width) < 0) width *= 2
  let [low, high] = [guess - width, guess + width]
  let [atLow, atHigh] = [f(low), f(high)]
  let last = 0
  while (1e-10 * Math.max(1, Math.abs(high)) < high - low) {
    const middle = atHigh === atLow ? (low + high) / 2 : (low * atHigh - high * atLow) / (atHigh - atLow)
    const value = f(middle)
    if (value === 0 || middle <= low || high <= middle) return middle
    if (value < 0) {
      ;[low, atLow] = [middle, value]
      if (last < 0) atHigh /= 2
      last = -1
    } else {
      ;[high, atHigh] = [middle, value]
      if (0 < last) atLow /= 2
      last = 1
    }
  }
  return (low + high) / 2
}
