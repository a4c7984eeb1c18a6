/** Conditions as combinations of factors: which factors vary, and which cannot be told apart. */
import type { ConditionMeans } from './material-means.ts'

/** A thing that conditions may differ in, such as the curing temperature. */
export interface StatedFactor {
  readonly name: string
  /** Its levels in their order, as text. */
  readonly levels: readonly string[]
}

/** A condition at an age, with its level of each stated factor. */
export interface FactoredCondition {
  readonly levels: readonly string[]
  readonly means: ConditionMeans
}

/** One factor that varies, or several that change together in all conditions, so that nothing tells their effects apart. */
export interface Factor {
  readonly names: readonly string[]
  /** In order; each with the level of every name. */
  readonly levels: readonly (readonly string[])[]
}

export interface FactorCell {
  /** Place among the levels, for each factor. */
  readonly at: readonly number[]
  readonly means: ConditionMeans
}

export interface FactorLayout {
  readonly factors: readonly Factor[]
  /** Combinations that two conditions share are left out: what parts them is not stated. */
  readonly cells: readonly FactorCell[]
  readonly leftOut: number
}

/**
 * The factors that vary over the conditions.
 * @param stated in the order to be printed
 * @param conditions of one route, each with a level of every stated factor
 */
export function factorLayout(
  stated: readonly StatedFactor[],
  conditions: readonly FactoredCondition[],
): FactorLayout {
  const columns = stated.map(({ name, levels }, place) => {
    const own = conditions.map((one) => one.levels[place] ?? '')
    return { name, levels: levels.filter((level) => own.includes(level)), own }
  })
  const varying = columns.filter(({ levels }) => 1 < levels.length)
  // Alike are factors whose levels go with each other one to one.
  const groups = [
    ...Map.groupBy(varying, ({ own }) => own.map((level) => own.indexOf(level)).join()).values(),
  ]
  const factors = groups.map((group): Factor => {
    const [first] = group
    const order = first?.levels ?? []
    return {
      names: group.map(({ name }) => name),
      levels: order.map((level) => {
        const at = first?.own.indexOf(level) ?? 0
        return group.map(({ own }) => own[at] ?? '')
      }),
    }
  })
  const cells = conditions.map(
    ({ means }, place): FactorCell => ({
      means,
      at: groups.map(([first]) => first?.levels.indexOf(first.own[place] ?? '') ?? 0),
    }),
  )
  const single = [...Map.groupBy(cells, ({ at }) => at.join()).values()]
    .filter(({ length }) => length === 1)
    .flat()
  return { factors, cells: single, leftOut: cells.length - single.length }
}

/** Two conditions that differ in one factor alone, from its first level to its second. */
export type MatchedPair = readonly [FactorCell, FactorCell]

/**
 * Conditions that differ in one factor alone.
 * @param cells of a layout
 * @param factor its place
 * @param step places of two of its levels
 */
export function matchedPairs(
  cells: readonly FactorCell[],
  factor: number,
  step: readonly [number, number],
): MatchedPair[] {
  const [from, to] = step
  return cells
    .filter(({ at }) => at[factor] === from)
    .flatMap((low) => {
      const high = cells.find(({ at }) =>
        at.every((level, place) => level === (place === factor ? to : low.at[place])),
      )
      return high === undefined ? [] : [[low, high] as const]
    })
}

/**
 * Factors that differ whenever this one goes from one level to the other.
 * @param cells of a layout
 * @param factor its place
 * @param step places of two of its levels
 * @returns places of factors; empty where conditions differ in it alone, or each time in something else
 */
export function alwaysWith(
  cells: readonly FactorCell[],
  factor: number,
  step: readonly [number, number],
): number[] {
  const [low, high] = step.map((level) => cells.filter(({ at }) => at[factor] === level))
  const pairs = (low ?? []).flatMap((a) => (high ?? []).map((b) => [a, b] as const))
  const places = cells[0]?.at.map((_, place) => place) ?? []
  return pairs.length === 0
    ? []
    : places.filter((place) => place !== factor && pairs.every(([a, b]) => a.at[place] !== b.at[place]))
}
