/** Audit check: more results just inside a limit than results farther inside lead to expect. */
import type { ClauseOutcome } from '../criteria/verdict.ts'
import { cumulative, quantile } from '../statistics/distributions.ts'
import { mean, standardDeviation } from '../statistics/descriptive.ts'
import type { AuditedLot } from './audited.ts'
import type { Checked } from './checked.ts'
import { found } from './finding.ts'
import type { AtLimit, LimitHistogram } from './integrity-findings.ts'

/** Fewer results do not show a shape, nor do fewer beyond the window: own choices. */
const FEWEST = 30
const FEWEST_BEYOND = 20
/** The window on either side of the edge, in standard deviations: own choice. */
const WINDOW = 0.25
/** Chance of a flag at most, simulated for independent and for correlated normal results. */
const LEVEL = 0.01

/** Results under one limit, unrounded, in one unit. */
export interface LimitedResults {
  readonly values: readonly number[]
  /** Where the outcome changes: half a rounding step beyond the limit. */
  readonly edge: number
  /** Whether results above the edge meet it, or those below. */
  readonly meets: 'above' | 'below'
}

/**
 * How results lie about the edge of a limit, against a normal distribution fitted to those beyond a window about it.
 * @param results finite values, in any order
 * @returns null for fewer than 30 results, fewer than 20 beyond the window on the side that meets, or equal ones
 * Notes: 1. the fit is a straight line through the results beyond the window over their normal scores, whose places count
 * all results: one that was moved from just outside to just inside changes no place; 2. given how many lie inside the window
 * or fail, the number just inside is binomial; 3. results taken off the record altogether shift the fit, so that this says
 * nothing of lots that were never listed.
 * Source: own choice of window and fit; the probability plot of a sample censored on one side is common practice, no source.
 */
export function atLimit({ values, edge, meets }: LimitedResults): AtLimit | null {
  const sign = meets === 'above' ? 1 : -1
  const inside = values.map((value) => sign * (value - edge)).sort((a, b) => b - a)
  if (inside.length < FEWEST) return null
  const window = WINDOW * standardDeviation(inside)
  const beyond = inside.filter((distance) => window <= distance)
  if (window === 0 || beyond.length < FEWEST_BEYOND) return null
  const fit = lineOverScores(beyond, inside.length)
  const below = (distance: number) => cumulative((distance - fit.mean) / fit.deviation)
  const rest = inside.length - beyond.length
  const just = inside.filter((distance) => 0 <= distance && distance < window).length
  const share = (below(window) - below(0)) / below(window)
  return {
    n: inside.length,
    edge,
    window,
    justInside: just,
    expectedInside: rest * share,
    justOutside: inside.filter((distance) => -window <= distance && distance < 0).length,
    p: atLeast(just, rest, share),
    histogram: histogram(inside, { edge, sign, window }, below),
  }
}

/** @param beyond the largest first, of `n` in all */
function lineOverScores(beyond: readonly number[], n: number): { mean: number; deviation: number } {
  const scores = beyond.map((_, place) => quantile(1 - (place + 0.5) / n))
  const [centre, middle] = [mean(scores), mean(beyond)]
  let [cross, square] = [0, 0]
  beyond.forEach((distance, place) => {
    const score = (scores[place] ?? 0) - centre
    cross += score * (distance - middle)
    square += score * score
  })
  const deviation = cross / square
  return { mean: middle - deviation * centre, deviation }
}

/** Probability of at least so many successes. */
function atLeast(successes: number, trials: number, share: number): number {
  if (successes === 0) return 1
  let [term, total] = [(1 - share) ** trials, 0]
  if (share === 1) return 1
  for (let count = 0; count <= trials; count += 1) {
    if (successes <= count) total += term
    term *= ((trials - count) / (count + 1)) * (share / (1 - share))
  }
  return Math.min(1, total)
}

function histogram(
  inside: readonly number[],
  { edge, sign, window }: { readonly edge: number; readonly sign: number; readonly window: number },
  below: (distance: number) => number,
): LimitHistogram {
  const [most = 0, least = 0] = [inside[0], inside.at(-1)]
  const [from, to] = [Math.floor(least / window), Math.floor(most / window) + 1]
  const bins = Array.from({ length: to - from }, (_, place) => {
    const [low, high] = [(from + place) * window, (from + place + 1) * window]
    const count = inside.filter((distance) => low <= distance && distance < high).length
    const ends = [edge + sign * low, edge + sign * high].sort((a, b) => a - b)
    return {
      from: ends[0] ?? 0,
      to: ends[1] ?? 0,
      count,
      expected: inside.length * (below(high) - below(low)),
    }
  })
  return sign === 1 ? bins : bins.reverse()
}

/**
 * A warning for each limit of the governing set that results are bunched at.
 * @param source id
 * @param diverted how many diversions of the source are on record
 */
export function bunched(source: string, lots: readonly AuditedLot[], diverted: number): Checked {
  const byLimit = Map.groupBy(
    lots.flatMap(({ verdicts: [governing] }) =>
      governing === undefined
        ? []
        : limited(governing.clauses).map((clause) => ({ criterion: governing.criterion, clause })),
    ),
    ({ criterion, clause }) => `${criterion}|${clause.id}|${clause.limit?.written.join(' ')}`,
  )
  const looks = [...byLimit.values()].flatMap((own) => {
    const [first] = own
    const edge = first && edgeOf(first.clause)
    if (first === undefined || edge === undefined) return []
    const shape = atLimit({ ...edge, values: own.flatMap(({ clause: { value } }) => value ?? []) })
    return shape === null ? [] : [{ ...first, shape }]
  })
  const findings = looks
    .filter(({ shape }) => shape.p < LEVEL)
    .map(({ criterion, clause: { id, property, unit, decimals }, shape }) =>
      found(
        source,
        {
          code: 'bunched-at-limit',
          params: {
            source,
            criterion,
            clause: id,
            property: property ?? null,
            unit: unit ?? '',
            decimals: decimals ?? 0,
            diverted,
            ...shape,
          },
        },
        criterion,
        id,
      ),
    )
  return { check: 'bunched-at-limit', looked: looks.length, findings }
}

/** Clauses that hold one known value against one limit, within groups too. */
function limited(clauses: readonly ClauseOutcome[]): ClauseOutcome[] {
  return clauses.flatMap((clause) => [
    ...(clause.kind === 'value' && clause.value !== null && clause.bounds === undefined ? [clause] : []),
    ...limited(clause.clauses ?? []),
  ])
}

/** Half a step beyond the limit, where values round to it. */
function edgeOf({ limit, decimals }: ClauseOutcome): Pick<LimitedResults, 'edge' | 'meets'> | undefined {
  const [at] = limit?.values ?? []
  if (at === undefined) return undefined
  const half = decimals === null ? 0 : 10 ** -decimals / 2
  if (limit?.operator === 'at-least') return { edge: at - half, meets: 'above' }
  return limit?.operator === 'at-most' ? { edge: at + half, meets: 'below' } : undefined
}
