/** Exact interval of the area, over the ranks alone. */
import { increasingRoot } from '../../statistics/increasing-root.ts'

/**
 * Interval of the chance that a reactive material reads above an inert one.
 * @param won pairs in which the reactive one ranks higher, ties as halves, from 0 to inert × reactive
 * @param inert,reactive numbers of materials, one or more
 * @param level between 0 and 1
 * @returns low and high, from 0 to 1; exact where one class's distribution is a power of the other's (or of what lies above
 * it), which are Lehmann's two alternatives: the wider of both
 * Source: rank probabilities under Lehmann 1953, Ann. Math. Stat. 24, 23-43, as Savage 1956 writes them (from memory);
 * simulated in the tests.
 */
export function areaInterval(
  won: number,
  { inert, reactive }: { inert: number; reactive: number },
  level: number,
): readonly [number, number] {
  const tail = (1 - level) / 2
  // Seen from below, an inert stands for a reactive: the other alternative.
  const ends = [
    [inert, reactive],
    [reactive, inert],
  ].map(([low, high]) => limits(won, low ?? 1, high ?? 1, tail))
  return [Math.min(...ends.map(([low]) => low)), Math.max(...ends.map(([, high]) => high))]
}

/**
 * What the area is shown to be above where classes stand wholly apart, with no alternative assumed.
 * @param inert,reactive numbers of materials
 * @param level two-sided
 * @returns 0 to 1
 * Note: as many pairs as the smaller class has members share none, and all of them were won.
 */
export function areaWithoutModel(inert: number, reactive: number, level: number): number {
  return ((1 - level) / 2) ** (1 / Math.min(inert, reactive))
}

function limits(won: number, low: number, high: number, tail: number): [number, number] {
  const pairs = low * high
  // Half pairs go to the side that widens the interval.
  const [atLeast, atMost] = [Math.floor(won), Math.ceil(won)]
  const areaAt = (log: number) => 1 / (1 + Math.exp(-log))
  const above = (log: number) => shareFrom(distribution(low, high, Math.exp(log)), atLeast, pairs)
  const below = (log: number) => shareFrom(distribution(low, high, Math.exp(log)), 0, atMost)
  return [
    atLeast === 0 ? 0 : areaAt(increasingRoot((log) => above(log) - tail, 0)),
    atMost === pairs ? 1 : areaAt(increasingRoot((log) => tail - below(log), 0)),
  ]
}

function shareFrom(chances: Float64Array, from: number, to: number): number {
  let total = 0
  for (let won = from; won <= to; won += 1) total += chances[won] ?? 0
  return total
}

/**
 * Chances of each number of pairs won, where the highest of i inert and r reactive left is reactive with chance
 * rθ / (rθ + i).
 */
function distribution(inert: number, reactive: number, theta: number): Float64Array {
  const width = inert * reactive + 1
  // A row for each number of inert materials left, a place in it for each number of pairs won.
  let rows = new Float64Array((inert + 1) * width)
  rows[inert * width] = 1
  for (let left = reactive; 0 < left; left -= 1) {
    const next = new Float64Array(rows.length)
    for (let lows = inert; 0 <= lows; lows -= 1) {
      const isReactive = (left * theta) / (left * theta + lows)
      const [from, below] = [lows * width, (lows - 1) * width]
      for (let won = 0; won < width; won += 1) {
        const chance = rows[from + won] ?? 0
        if (chance === 0) continue
        next[from + won + lows] = (next[from + won + lows] ?? 0) + isReactive * chance
        if (0 < lows) rows[below + won] = (rows[below + won] ?? 0) + (1 - isReactive) * chance
      }
    }
    rows = next
  }
  return rows.reduce((total, chance, place) => {
    total[place % width] = (total[place % width] ?? 0) + chance
    return total
  }, new Float64Array(width))
}
