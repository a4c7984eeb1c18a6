/**
 * Chance for resamples, the same in every build.
 * @param seed whole number
 * @returns numbers from 0 to below 1, evenly spread
 * Source: Mulberry32, T. Ettinger 2017 (from memory): a period of 2³², enough for thousands of draws of some dozens each.
 */
export function seededUniform(seed: number): () => number {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
}
