/** How firm the order of conditions is: which comes first when the materials are drawn anew. */
import type { ScreenedCondition } from './choice.ts'
import type { MaterialMean } from './material-means.ts'

/** One condition's materials from the lowest rank up, those above a bound last, of these the lowest bound first. */
interface Ranked {
  readonly id: string
  readonly all: readonly {
    /** Place among the materials that are drawn. */
    readonly place: number
    readonly reactive: boolean
    readonly rank: number
    readonly value: number
    readonly above: boolean
  }[]
}

/**
 * How often each condition comes first when the materials are drawn anew, class by class, with replacement.
 * @param conditions of one route
 * @param resamples how many draws
 * @param chance numbers from 0 to below 1
 * @returns share by id, of those that came first at all, most often first
 * Note: it orders as `separation` does, which the tests hold it to; without lists it is fast enough for thousands of draws.
 * Source: Efron's bootstrap (Efron and Tibshirani 1993, An Introduction to the Bootstrap; from memory), the unit being the material.
 */
export function firstPlaces(
  conditions: readonly ScreenedCondition[],
  resamples: number,
  chance: () => number,
): { readonly id: string; readonly share: number }[] {
  const classes = (['inert', 'reactive'] as const).map((own) => codesOf(conditions, own))
  const places = new Map(classes.flat().map((material, place) => [material, place]))
  const ranked = conditions.map(({ id, means }) => ({ id, all: rankedMaterials(means.means, places) }))
  const counts = new Map<string, number>()
  for (let draw = 0; draw < resamples; draw += 1) {
    const best = firstOf(ranked, drawn(classes, chance))
    if (best !== null) counts.set(best, (counts.get(best) ?? 0) + 1)
  }
  return [...counts]
    .map(([id, count]) => ({ id, share: count / resamples }))
    .toSorted((a, b) => b.share - a.share || (a.id < b.id ? -1 : 1))
}

/** Materials of a class at any of the conditions: one can be missing at some. */
function codesOf(conditions: readonly ScreenedCondition[], own: MaterialMean['class']): string[] {
  const all = conditions.flatMap(({ means }) => means.means.filter((one) => one.class === own))
  return [...new Set(all.map(({ material }) => material))]
}

function rankedMaterials(means: readonly MaterialMean[], places: ReadonlyMap<string, number>): Ranked['all'] {
  return means
    .flatMap(({ material, class: own, value, above }) => {
      const place = places.get(material)
      if (place === undefined) return []
      return [
        { place, reactive: own === 'reactive', rank: above ? Number.POSITIVE_INFINITY : value, value, above },
      ]
    })
    .toSorted((a, b) => (a.rank === b.rank ? a.value - b.value : a.rank - b.rank))
}

/** How often each material was drawn. */
function drawn(classes: readonly (readonly string[])[], chance: () => number): Int32Array {
  const times = new Int32Array(classes.reduce((total, all) => total + all.length, 0))
  let first = 0
  for (const { length } of classes) {
    for (let one = 0; one < length; one += 1) {
      const place = first + Math.floor(chance() * length)
      times[place] = (times[place] ?? 0) + 1
    }
    first += length
  }
  return times
}

function firstOf(conditions: readonly Ranked[], times: Int32Array): string | null {
  let best: { id: string; wrong: number; ratio: number } | null = null
  for (const { id, all } of conditions) {
    const own = all.filter(({ place }) => 0 < (times[place] ?? 0))
    if (own.every(({ reactive }) => reactive) || own.every(({ reactive }) => !reactive)) continue
    const { wrong, cut } = fewestWrong(own, times)
    const ratio = ratioOf(own, wrong === 1 ? cut : null)
    if (best === null || wrong < best.wrong || (wrong === best.wrong && best.ratio < ratio))
      best = { id, wrong, ratio }
  }
  return best?.id ?? null
}

/** The cut with the fewest on its wrong side, then the widest gap about it; beyond the last value it is infinite. */
function fewestWrong(own: Ranked['all'], times: Int32Array): { wrong: number; cut: number | null } {
  let passing = own.reduce((total, { place, reactive }) => total + (reactive ? 0 : (times[place] ?? 0)), 0)
  let failing = 0
  let below: number | undefined
  let best: { wrong: number; gap: number; cut: number | null } | null = null
  for (const { place, reactive, rank } of own) {
    if (rank !== below) {
      const [wrong, gap] = [passing + failing, below === undefined ? 0 : rank / below]
      if (best === null || wrong < best.wrong || (wrong === best.wrong && best.gap < gap))
        best = { wrong, gap, cut: rank }
    }
    below = rank
    if (reactive) failing += times[place] ?? 0
    else passing -= times[place] ?? 0
  }
  return best === null || failing < best.wrong ? { wrong: failing, cut: null } : best
}

/** Lowest reactive over highest inert, the one on the wrong side of a cut set aside; 0 where a bound leaves it open. */
function ratioOf(own: Ranked['all'], cut: number | null): number {
  const isRight = ({ rank, reactive }: Ranked['all'][number]) => cut === null || cut <= rank === reactive
  const [lows, highs] = [false, true].map((class_) => {
    const all = own.filter(({ reactive }) => reactive === class_)
    const right = all.filter(isRight)
    return 0 < right.length ? right : all
  })
  const top = lows?.at(-1)?.rank
  const highest = lows?.find(({ rank }) => rank === top)
  const lowest = highs?.[0]
  if (highest === undefined || lowest === undefined || highest.above) return 0
  return lowest.above && lowest.value <= highest.value ? 0 : lowest.value / highest.value
}
