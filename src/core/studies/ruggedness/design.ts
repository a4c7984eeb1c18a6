/** Two-level designs: whether their columns tell factors apart, and what they cannot see. */

/** A level of a factor in a run. */
export type Level = -1 | 1

/**
 * Levels from the signs of a run, such as "+-+".
 * @param signs + for high, anything else for low
 */
export function levelsOf(signs: string): Level[] {
  return [...signs].map((sign) => (sign === '+' ? 1 : -1))
}

export interface Run {
  /** One level for each factor, in the order of the factors. */
  readonly levels: readonly Level[]
}

/** Why effects cannot be told apart; places count factors from 0. */
export type DesignFault =
  | { readonly code: 'no-runs' }
  | { readonly code: 'unequal-levels'; readonly run: number }
  /** A factor is high in more runs than it is low, or the other way round. */
  | { readonly code: 'unbalanced'; readonly factor: number; readonly high: number; readonly low: number }
  /** Two factors do not move independently: their product does not sum to nought. */
  | { readonly code: 'not-orthogonal'; readonly factors: readonly [number, number] }

/**
 * What stands in the way of reading effects off a design.
 * @param runs each with a level of every factor
 * @returns empty for a design whose columns are balanced and orthogonal
 * Source: Plackett and Burman 1946, Biometrika 33, 305-325 (from memory); ASTM E1169 rests on such designs.
 */
export function designFaults(runs: readonly Run[]): DesignFault[] {
  const factors = runs[0]?.levels.length ?? 0
  if (factors === 0) return [{ code: 'no-runs' }]
  const uneven = runs.findIndex(({ levels }) => levels.length !== factors)
  if (0 <= uneven) return [{ code: 'unequal-levels', run: uneven }]
  const places = Array.from({ length: factors }, (_, place) => place)
  const unbalanced = places.flatMap((factor): DesignFault[] => {
    const high = runs.filter(({ levels }) => levels[factor] === 1).length
    const low = runs.length - high
    return high === low ? [] : [{ code: 'unbalanced', factor, high, low }]
  })
  const linked = pairs(factors).flatMap(([a, b]): DesignFault[] =>
    product(runs, [a, b]) === 0 ? [] : [{ code: 'not-orthogonal', factors: [a, b] }],
  )
  return [...unbalanced, ...linked]
}

export interface Alias {
  /** Factor whose effect is mixed up with an interaction. */
  readonly factor: number
  readonly interaction: readonly [number, number]
  /** −1 to 1: the part of the interaction that enters the factor's effect. */
  readonly part: number
}

/**
 * Which interactions of two factors enter which effects.
 * @param runs of a design without a fault
 * @returns by factor; in eight runs with seven factors each effect holds three whole interactions, in twelve runs with
 * eleven factors a third of many
 */
export function aliases(runs: readonly Run[]): Alias[] {
  const factors = runs[0]?.levels.length ?? 0
  return Array.from({ length: factors }, (_, factor) =>
    pairs(factors)
      .filter((interaction) => !interaction.includes(factor))
      .map((interaction) => ({
        factor,
        interaction,
        part: product(runs, [factor, ...interaction]) / runs.length,
      }))
      .filter(({ part }) => part !== 0),
  ).flat()
}

function product(runs: readonly Run[], factors: readonly number[]): number {
  return runs.reduce(
    (total, { levels }) => total + factors.reduce((sign, place) => sign * (levels[place] ?? 0), 1),
    0,
  )
}

function pairs(n: number): [number, number][] {
  return Array.from({ length: n }, (_, a) =>
    Array.from({ length: n - a - 1 }, (_unused, b): [number, number] => [a, a + 1 + b]),
  ).flat()
}
