/** What a factor of the test does to the separation of the classes, and how that depends on another factor. */
import { mean } from '../../statistics/descriptive.ts'
import { twoSampleT } from '../../statistics/student-t-test.ts'
import { alwaysWith, type FactorCell, type FactorLayout, matchedPairs } from './factors.ts'
import type { MaterialClass } from './material-means.ts'

/** A change of the reactive materials' mean logarithm less that of the inert ones: the unit is the material. */
export interface SeparationChange {
  readonly change: number
  /** By Welch's t over the materials; null with fewer than two of a class, and where they do not scatter. */
  readonly interval: readonly [number, number] | null
  readonly inert: number
  readonly reactive: number
  /** Inert and reactive materials that are not measured at all the conditions, or are above a bound at one. */
  readonly leftOut: readonly string[]
}

export interface FactorEffect {
  readonly factor: number
  /** Places of the two levels. */
  readonly from: number
  readonly to: number
  /** Pairs of conditions that differ in this factor alone; with none, `with` names the factors that always differ as well. */
  readonly pairs: number
  readonly with: readonly number[]
  /** Mean over the pairs; null without a pair, or without a material of a class in all of them. */
  readonly apart: SeparationChange | null
  /** Of the logarithm of the lowest reactive over the highest inert index, mean over the pairs where a bound leaves it open at neither. */
  readonly gap: { readonly change: number; readonly pairs: number } | null
}

export interface Interaction {
  readonly first: number
  readonly second: number
  /** Levels between which it is taken: the outermost that four conditions hold. */
  readonly firstLevels: readonly [number, number]
  readonly secondLevels: readonly [number, number]
  /** Settings of the other factors that it is the mean over. */
  readonly settings: number
  /** Change that the first brings at the second's upper level, less that at its lower. */
  readonly apart: SeparationChange
  /** The same materials' separation, as a mean logarithm, at each combination that all the settings hold. */
  readonly points: readonly { readonly first: number; readonly second: number; readonly apart: number }[]
}

/**
 * Effects of each factor, between neighbouring levels and from the first to the last.
 * @param layout of one route
 * @param level of the intervals, between 0 and 1
 * Notes: 1. only conditions that differ in nothing else are compared; 2. intervals speak of further materials at these conditions.
 */
export function factorEffects({ factors, cells }: FactorLayout, level: number): FactorEffect[] {
  return factors.flatMap(({ levels }, factor) => {
    const last = levels.length - 1
    const steps = levels.slice(1).map((_, place): [number, number] => [place, place + 1])
    return [...steps, ...(1 < last ? [[0, last] as const] : [])].flatMap(([from, to]): FactorEffect[] => {
      const pairs = matchedPairs(cells, factor, [from, to])
      // The long way adds nothing where the steps already say that it is not alone.
      if (pairs.length === 0 && 1 < to - from) return []
      return [
        {
          ...{ factor, from, to, pairs: pairs.length },
          with: pairs.length === 0 ? alwaysWith(cells, factor, [from, to]) : [],
          apart: changeOver(
            pairs.flatMap(([low, high]) => [
              { cell: high, weight: 1 / pairs.length },
              { cell: low, weight: -1 / pairs.length },
            ]),
            level,
          ),
          gap: gapChange(pairs),
        },
      ]
    })
  })
}

/**
 * Interactions of each two factors that four conditions or more hold.
 * @param layout of one route
 * @param level of the intervals, between 0 and 1
 * @returns the largest first; the factor with more levels is the first of its pair
 */
export function interactions({ factors, cells }: FactorLayout, level: number): Interaction[] {
  return factors
    .flatMap(({ levels }, a) =>
      factors.slice(a + 1).flatMap((other, step): Interaction[] => {
        const b = a + 1 + step
        const [first, second] = levels.length < other.levels.length ? [b, a] : [a, b]
        const found = interaction({ factors, cells }, [first, second], level)
        return found === null ? [] : [found]
      }),
    )
    .toSorted((x, y) => Math.abs(y.apart.change) - Math.abs(x.apart.change))
}

type Grid = ReadonlyMap<string, FactorCell>

function interaction(
  { factors, cells }: Pick<FactorLayout, 'factors' | 'cells'>,
  [first, second]: readonly [number, number],
  level: number,
): Interaction | null {
  const grids: Grid[] = [
    ...Map.groupBy(cells, ({ at }) =>
      at.filter((_, place) => place !== first && place !== second).join(),
    ).values(),
  ].map((own) => new Map(own.map((cell) => [`${cell.at[first]} ${cell.at[second]}`, cell])))
  const corners = widest(factors[first]?.levels.length ?? 0, factors[second]?.levels.length ?? 0, grids)
  if (corners === null) return null
  const { firstLevels, secondLevels, settings } = corners
  const [one] = settings
  const shared = [...(one?.keys() ?? [])]
    .filter((key) => settings.every((grid) => grid.has(key)))
    .map((key) => ({ key, places: key.split(' ').map(Number) }))
    .toSorted(({ places: [a = 0, b = 0] }, { places: [c = 0, d = 0] }) => a - c || b - d)
  const weighted = settings.flatMap((grid) =>
    firstLevels.flatMap((f, upper) =>
      secondLevels.flatMap((s, right) => {
        const cell = grid.get(`${f} ${s}`)
        return cell === undefined ? [] : [{ cell, weight: (upper === right ? 1 : -1) / settings.length }]
      }),
    ),
  )
  const all = settings.flatMap((grid) => shared.flatMap(({ key }) => grid.get(key) ?? []))
  const apart = changeOver(weighted, level, all)
  if (apart === null) return null
  return {
    ...{ first, second, firstLevels, secondLevels, settings: settings.length, apart },
    points: shared.flatMap(({ key, places: [f = 0, s = 0] }) => {
      const own = settings.flatMap((grid) => grid.get(key) ?? [])
      const at = changeOver(
        own.map((cell) => ({ cell, weight: 1 / own.length })),
        level,
        all,
      )
      return at === null ? [] : [{ first: f, second: s, apart: at.change }]
    }),
  }
}

/** The outermost levels of both that four conditions hold, in as many settings of the others as do. */
function widest(firsts: number, seconds: number, grids: readonly Grid[]) {
  const spans = (n: number) =>
    Array.from({ length: n }, (_, low) =>
      Array.from({ length: n - low - 1 }, (_unused, step): [number, number] => [low, low + 1 + step]),
    ).flat()
  const found = spans(firsts).flatMap((firstLevels) =>
    spans(seconds).map((secondLevels) => ({
      firstLevels,
      secondLevels,
      settings: grids.filter((grid) =>
        firstLevels.every((f) => secondLevels.every((s) => grid.has(`${f} ${s}`))),
      ),
    })),
  )
  const width = ({ firstLevels: [a, b], secondLevels: [c, d] }: (typeof found)[number]) => b - a + d - c
  const held = found.filter(({ settings }) => 0 < settings.length)
  return held.toSorted((a, b) => width(b) - width(a) || b.settings.length - a.settings.length)[0] ?? null
}

interface Weighted {
  readonly cell: FactorCell
  readonly weight: number
}

/** A weighted sum of logarithms for each material that all of `among` measured, reactive less inert. */
function changeOver(
  weighted: readonly Weighted[],
  level: number,
  among: readonly FactorCell[] = weighted.map(({ cell }) => cell),
): SeparationChange | null {
  if (weighted.length === 0) return null
  const known = new Map(
    among.flatMap(({ means }) => means.means).map(({ material, class: own }) => [material, own]),
  )
  const measured = (material: string) =>
    among.every(({ means }) => means.means.some((one) => one.material === material && !one.above))
  const judged = [...known].filter(([, own]) => own !== 'weak')
  const changes = (own: MaterialClass) =>
    judged
      .filter(([material, is]) => is === own && measured(material))
      .map(([material]) => sumFor(material, weighted))
  const [inert, reactive] = [changes('inert'), changes('reactive')]
  if (inert.length === 0 || reactive.length === 0) return null
  return {
    change: mean(reactive) - mean(inert),
    interval: twoSampleT(reactive, inert, { form: 'welch', confidence: level })?.interval ?? null,
    inert: inert.length,
    reactive: reactive.length,
    leftOut: judged.flatMap(([material]) => (measured(material) ? [] : [material])),
  }
}

function sumFor(material: string, weighted: readonly Weighted[]): number {
  return weighted.reduce((total, { cell, weight }) => {
    const value = cell.means.means.find((one) => one.material === material)?.value ?? Number.NaN
    return total + weight * Math.log(value)
  }, 0)
}

function gapChange(pairs: readonly (readonly [FactorCell, FactorCell])[]): FactorEffect['gap'] {
  const changes = pairs.flatMap(([low, high]) => {
    const [from, to] = [gapOf(low), gapOf(high)]
    return from === null || to === null ? [] : [to - from]
  })
  return changes.length === 0 ? null : { change: mean(changes), pairs: changes.length }
}

/** ln of the lowest reactive over the highest inert index of all materials; null where a bound leaves it open. */
function gapOf({ means }: FactorCell): number | null {
  const of = (own: MaterialClass) => means.means.filter((one) => one.class === own)
  const [inert, reactive] = [of('inert'), of('reactive')]
  if (inert.length === 0 || reactive.length === 0 || inert.some(({ above }) => above)) return null
  const lowest = Math.min(...reactive.map(({ value }) => value))
  if (reactive.every(({ above, value }) => above || lowest < value)) return null
  return Math.log(lowest / Math.max(...inert.map(({ value }) => value)))
}
