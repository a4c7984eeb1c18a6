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
  const above = (log: number) => 1 - chanceOfAtMost(atLeast - 1, low, high, Math.exp(log))
  const below = (log: number) => chanceOfAtMost(atMost, low, high, Math.exp(log))
  const guess = logOdds(won / pairs)
  return [
    atLeast === 0 ? 0 : areaAt(increasingRoot((log) => logOdds(above(log)) - logOdds(tail), guess)),
    atMost === pairs ? 1 : areaAt(increasingRoot((log) => logOdds(tail) - logOdds(below(log)), guess)),
  ]
}

/** On this scale tails run nearly straight, so that their root is found in few steps; kept finite at either end. */
function logOdds(share: number): number {
  const inside = Math.min(1 - 1e-16, Math.max(1e-16, share))
  return Math.log(inside / (1 - inside))
}

/**
 * Chance of so many pairs won or fewer, where the highest of i inert and r reactive left is reactive with chance
 * rθ / (rθ + i).
 */
function chanceOfAtMost(won: number, inert: number, reactive: number, theta: number): number {
  const lost = inert * reactive - won - 1
  return won <= lost
    ? countedTo(won, { inert, reactive, theta, perReactive: 1, perInert: 0 })
    : 1 - countedTo(lost, { inert, reactive, theta, perReactive: 0, perInert: 1 })
}

interface Counted {
  readonly inert: number
  readonly reactive: number
  readonly theta: number
  /** 1 to count the inert ones below each reactive one: pairs won. */
  readonly perReactive: 0 | 1
  /** 1 to count the reactive ones below each inert one: pairs lost. */
  readonly perInert: 0 | 1
}

/** Chance of a count of so many or fewer, from the whole down by its highest member: one row for each number of inert. */
function countedTo(most: number, { inert, reactive, theta, perReactive, perInert }: Counted): number {
  if (most < 0) return 0
  const width = most + 1
  const rows = new Float64Array((inert + 1) * width).fill(1)
  for (let r = 1; r <= reactive; r += 1)
    for (let i = 1; i <= inert; i += 1) {
      const isReactive = (r * theta) / (r * theta + i)
      const [own, fewer] = [i * width, (i - 1) * width]
      const [won, lost] = [perReactive * i, perInert * r]
      // Downwards, since a row is read at lower counts from before it changed.
      for (let count = Math.min(most, i * r - 1); 0 <= count; count -= 1) {
        const ofReactive = count < won ? 0 : (rows[own + count - won] ?? 0)
        const ofInert = count < lost ? 0 : (rows[fewer + count - lost] ?? 0)
        rows[own + count] = isReactive * ofReactive + (1 - isReactive) * ofInert
      }
    }
  return rows[inert * width + most] ?? 0
}
