/** Whether a condition tells reactive materials from inert ones. */

/** A material's place on the scale; one that is above a bound ranks above every value. */
export interface Placed {
  readonly material: string
  /** Index, %, or the bound that it lies above. */
  readonly value: number
  readonly above: boolean
}

export interface Separation {
  readonly inert: number
  readonly reactive: number
  /** Materials that must be set aside so that the rest stand apart, by the fewest; empty under full separation. */
  readonly wrongSide: readonly string[]
  /** Of the rest where one or none is on the wrong side, else of all. */
  readonly highestInert: Placed
  readonly lowestReactive: Placed
  /** Lowest reactive over highest inert, of the same; null where the lowest reactive is known only as above a lower bound. */
  readonly ratio: number | null
  /** Chance that a reactive material reads above an inert one; ties count half. */
  readonly area: number
}

/**
 * Separation of two classes at one condition; weak materials stand aside.
 * @param inert one or more
 * @param reactive one or more
 * @throws RangeError for an empty class
 */
export function separation(inert: readonly Placed[], reactive: readonly Placed[]): Separation {
  if (inert.length === 0 || reactive.length === 0)
    throw new RangeError(
      `separation needs both classes, got ${inert.length} inert and ${reactive.length} reactive`,
    )
  const wrongSide = fewestWrong(inert, reactive)
  const kept = (all: readonly Placed[]) =>
    wrongSide.length === 1 ? all.filter(({ material }) => !wrongSide.includes(material)) : all
  const [lows, highs] = [kept(inert), kept(reactive)]
  const highestInert = extreme(0 < lows.length ? lows : inert, 1)
  const lowestReactive = extreme(0 < highs.length ? highs : reactive, -1)
  const open = highestInert.above || (lowestReactive.above && lowestReactive.value <= highestInert.value)
  return {
    inert: inert.length,
    reactive: reactive.length,
    wrongSide,
    highestInert,
    lowestReactive,
    ratio: open ? null : lowestReactive.value / highestInert.value,
    area: area(inert, reactive),
  }
}

/**
 * Area under the curve of both error rates: Mann and Whitney's statistic over all pairs.
 * @param inert one or more
 * @param reactive one or more
 * @returns 0 to 1; ties, and two above their bounds, count half
 * Source: Mann and Whitney 1947, Ann. Math. Stat. 18, 50-60 (from memory); R's pROC on published data is the check.
 */
export function area(inert: readonly Placed[], reactive: readonly Placed[]): number {
  return pairsWon(inert, reactive) / (inert.length * reactive.length)
}

/** Pairs in which the reactive one ranks higher, ties as halves; by sorting, not pair by pair. */
function pairsWon(inert: readonly Placed[], reactive: readonly Placed[]): number {
  const all = [...inert.map((one) => ({ ...one, high: 0 })), ...reactive.map((one) => ({ ...one, high: 1 }))]
  const groups = [...Map.groupBy(all, rankOf).entries()].toSorted(([a], [b]) => a - b)
  let [won, below] = [0, 0]
  for (const [, group] of groups) {
    const high = group.filter((one) => one.high === 1).length
    const low = group.length - high
    won += high * (below + low / 2)
    below += low
  }
  return won
}

/** Readings above a bound rank on top of every value, alike among each other. */
function rankOf({ value, above }: Placed): number {
  return above ? Number.POSITIVE_INFINITY : value
}

/** The lowest (−1) or highest (1); of several above their bounds, the one with the lowest bound. */
function extreme(all: readonly Placed[], side: 1 | -1): Placed {
  return all.reduce((best, one) => {
    const [a, b] = [rankOf(one), rankOf(best)]
    if (a === b) return one.value < best.value ? one : best
    return 0 < side * (a - b) ? one : best
  })
}

/** The cut with the fewest materials on its wrong side; of several such cuts, the one with the widest gap about it. */
function fewestWrong(inert: readonly Placed[], reactive: readonly Placed[]): string[] {
  const cuts = [...new Set([...inert, ...reactive].map(rankOf))].toSorted((a, b) => a - b)
  // At or above a cut a material passes; beyond the last value none does.
  const candidates = [...cuts, Number.POSITIVE_INFINITY].map((cut, place) => {
    const last = place === cuts.length
    const passes = (one: Placed) => !last && cut <= rankOf(one)
    const wrong = [...inert.filter(passes), ...reactive.filter((one) => !passes(one))]
    const below = cuts[place - 1]
    const gap = below === undefined || last ? 0 : cut / below
    return { wrong: wrong.map(({ material }) => material), gap }
  })
  return candidates.reduce((best, one) =>
    one.wrong.length < best.wrong.length || (one.wrong.length === best.wrong.length && best.gap < one.gap)
      ? one
      : best,
  ).wrong
}
