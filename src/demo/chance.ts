/** Seeded chance for the invented scenario: the same seed gives the same records. */
import { randomLcg, randomNormal } from 'd3'

export interface Chance {
  /** Normal deviate with mean 0 and standard deviation 1. */
  normal(): number
  /** Uniform in [0, 1). */
  uniform(): number
  /** Whole number from `low` to `high`, both included. */
  whole(low: number, high: number): number
}

export function chanceOf(seed: number): Chance {
  const uniform = randomLcg(seed)
  const normal = randomNormal.source(uniform)(0, 1)
  return { normal, uniform, whole: (low, high) => low + Math.floor(uniform() * (high - low + 1)) }
}

/**
 * An autoregressive series of the first order with standard deviation 1: a lot resembles the one before it.
 */
export function autoregressive(chance: Chance, phi: number): () => number {
  let state = chance.normal()
  return () => {
    state = phi * state + Math.sqrt(1 - phi * phi) * chance.normal()
    return state
  }
}
