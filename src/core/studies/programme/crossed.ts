/** Factors crossed into conditions. */
import type { FactorsOf } from './fraction.ts'

export interface CrossedFactor {
  readonly name: string
  /** Short codes of its levels, the low one first. */
  readonly levels: readonly string[]
}

export interface CrossedCondition {
  /** Codes of its levels, joined by hyphens. */
  readonly code: string
  /** Code of the level by factor. */
  readonly levels: ReadonlyMap<string, string>
}

/**
 * How many conditions a crossing has before a fraction of it is chosen.
 * @returns whole number, 1 without factors
 */
export function crossedCount(factors: readonly CrossedFactor[]): number {
  return factors.reduce((count, { levels }) => count * levels.length, 1)
}

/**
 * The conditions of a crossing, the last factor changing fastest.
 * @param factors each with one level at least
 * @param words factors of two levels whose product is high in every condition that is chosen (`fraction.ts`)
 * Note: nothing limits their number; ask `crossedCount` first.
 */
export function crossedConditions(
  factors: readonly CrossedFactor[],
  words: readonly FactorsOf[],
): CrossedCondition[] {
  const all = factors.reduce<(readonly string[])[]>(
    (chosen, { levels }) => chosen.flatMap((own) => levels.map((level) => [...own, level])),
    [[]],
  )
  return all
    .map((codes) => ({
      code: codes.join('-'),
      levels: new Map(factors.map(({ name }, place) => [name, codes[place] ?? ''])),
    }))
    .filter(({ levels }) => words.every((word) => signOf(word, factors, levels) === 1))
}

function signOf(
  word: FactorsOf,
  factors: readonly CrossedFactor[],
  levels: ReadonlyMap<string, string>,
): number {
  return word.reduce((sign, name) => {
    const low = factors.find((factor) => factor.name === name)?.levels[0]
    return levels.get(name) === low ? -sign : sign
  }, 1)
}
