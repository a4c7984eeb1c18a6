/** Chance for simulations: seeded, so that every run draws the same. */

/** Numbers between 0 and 1. Mulberry32, T. Ettinger 2017 (from memory), good for thousands of draws. */
export function uniform(seed: number): () => number {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)) ^ mixed
    return (((mixed ^ (mixed >>> 14)) >>> 0) + 0.5) / 4294967296
  }
}

/** Standard normal numbers: Box and Muller 1958, Ann. Math. Stat. 29, 610-611. */
export function normal(seed: number): () => number {
  const next = uniform(seed)
  return () => Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next())
}

/** The share of trials in which something happened. */
export function shareOf(trials: number, happens: () => boolean): number {
  let count = 0
  for (let trial = 0; trial < trials; trial += 1) count += happens() ? 1 : 0
  return count / trials
}

/** So many standard errors a simulated share may lie from a stated one: 1 of 1,000 would lie farther by chance. */
const ERRORS = 3.3

/** How far a share of so many trials may lie from a stated one by chance alone. */
export function chanceError(stated: number, trials: number): number {
  return ERRORS * Math.sqrt((stated * (1 - stated)) / trials)
}
