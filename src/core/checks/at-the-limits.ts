/**
 * Audit check: values of a source at the limits that they are judged by. A density fitted away from a limit says how
 * many are to be expected on either side of it.
 */
import { type ClauseOutcome, everyClauseOutcome } from '../criteria/verdict.ts'
import { effectiveEnds } from '../judging/effective-ends.ts'
import { property } from '../measure/properties.ts'
import { stepOfDecimals } from '../measure/rounding.ts'
import { isFault, type Quantity, readQuantity } from '../measure/units.ts'
import { standardDeviation } from '../statistics/descriptive.ts'
import { cumulative } from '../statistics/distributions.ts'
import { incompleteBeta } from '../statistics/incomplete-beta.ts'
import { normalOutside } from '../statistics/normal-outside.ts'
import type { AuditedLot } from './audited.ts'
import { CHECKS } from './catalogue.ts'
import type { Checked } from './checked.ts'
import { found } from './finding.ts'
import type { LimitLooked } from './integrity-findings.ts'

/** Fewer give no density to speak of: own choice. */
const FEWEST = 20
/** The window reaches so many standard deviations to either side of the edge: own choice. */
const REACH = 0.5

/** One limit of a source's governing clauses, with the values that were held against it. */
export interface AtLimit extends LimitLooked {
  /** What is admitted lies above the edge, or below it. */
  readonly side: 'low' | 'high'
  /** Unrounded, in order of sampling. */
  readonly values: readonly number[]
  /** The density fitted outside the window; null where none could be. */
  readonly fitted: {
    readonly mean: number
    readonly standardDeviation: number
    readonly admitted: number
    readonly refused: number
    /** So many inside of those in the window, or more, by chance. */
    readonly probability: number
  } | null
  /** Too few near the limit: whatever their side, chance could have put them there. */
  readonly shown: 'bunched' | 'not-bunched' | 'too-few'
}

/**
 * Every limit of the governing clauses that enough lots were judged by.
 * @param lots of one source, in order of sampling
 * Notes: 1. values as computed, before rounding; a figure that the laboratory reported finished is left out, and so is
 * one that is known within bounds only; 2. of those in the window the share inside is held against the fitted one, by
 * the binomial distribution, so that the number in the window does not matter; 3. lots that failed and were never
 * certified are missing beyond a limit as well.
 */
export function atTheLimits(lots: readonly AuditedLot[]): AtLimit[] {
  const judged = lots.flatMap((lot) => judgedValues(lot))
  return [...Map.groupBy(judged, ({ key }) => key).values()]
    .filter((own) => FEWEST <= own.length)
    .flatMap((own) => atLimit(own))
}

interface JudgedValue {
  readonly key: string
  readonly criterion: string
  readonly clause: ClauseOutcome
  readonly value: number
}

function judgedValues({ verdicts: [governing], results }: AuditedLot): JudgedValue[] {
  if (governing === undefined) return []
  const finished = new Set(results.filter((result) => result.finished === true).map(({ key }) => key))
  return [...everyClauseOutcome(governing.clauses)].flatMap((clause) => {
    const { kind, value, bounds, limit, result, information, property: key } = clause
    if (kind !== 'value' || value === null || bounds !== undefined || limit === null || information) return []
    if (key === undefined || result === null || finished.has(result)) return []
    const { criterion } = governing
    const written = limit.written.join('|')
    return [{ key: `${criterion}|${clause.id}|${limit.operator}|${written}`, criterion, clause, value }]
  })
}

function atLimit(own: readonly JudgedValue[]): AtLimit[] {
  const last = own.at(-1)
  const values = own.map(({ value }) => value)
  const spread = standardDeviation(values)
  if (last === undefined || spread === 0) return []
  const { clause, criterion } = last
  const { limit, property: key } = clause
  if (limit === null || key === undefined) return []
  return edgesOf(clause).map(({ edge, side }) => {
    const head = {
      criterion,
      clause: clause.id,
      property: key,
      condition: clause.condition ?? null,
      age: clause.age?.text ?? null,
      unit: limit.unit,
      decimals: property(key).decimals,
      limit: { operator: limit.operator, written: limit.written },
      side,
      edge,
      width: REACH * spread,
      values,
    }
    return { ...head, ...countsAt(head) }
  })
}

/**
 * Lower and upper edge of what a clause admits, before rounding.
 * @param clause its limit as applied, property and decimals
 * @returns in the unit of the limit; none without a limit or a property
 */
export function edgesOf({ limit, property: key, decimals }: ClauseOutcome): Pick<AtLimit, 'edge' | 'side'>[] {
  if (limit === null || key === undefined || limit.operator === 'report') return []
  const kind = property(key).kind
  const quantities = limit.written.flatMap((text): Quantity[] => {
    const quantity = readQuantity(text, kind)
    return isFault(quantity) ? [] : [quantity]
  })
  const ends = effectiveEnds(
    { operator: limit.operator, quantities },
    decimals === null ? 'none' : stepOfDecimals(decimals),
  )
  return [
    ...(ends.low === undefined ? [] : [{ edge: ends.low.at, side: 'low' as const }]),
    ...(ends.high === undefined ? [] : [{ edge: ends.high.at, side: 'high' as const }]),
  ]
}

type Window = Pick<AtLimit, 'edge' | 'side' | 'width' | 'values'>

function countsAt(window: Window): Pick<AtLimit, 'admitted' | 'refused' | 'fitted' | 'shown'> {
  const { edge, side, width, values } = window
  const above = values.filter((value) => edge <= value && value < edge + width).length
  const below = values.filter((value) => edge - width <= value && value < edge).length
  const [admitted, refused] = side === 'low' ? [above, below] : [below, above]
  const outside = values.filter((value) => value < edge - width || edge + width <= value)
  const fit = outside.length < FEWEST / 2 ? null : normalOutside(outside, edge - width, edge + width)
  if (fit === null) return { admitted, refused, fitted: null, shown: 'too-few' }
  const expected = expectedAt(window, fit, outside.length)
  const share = expected.admitted / (expected.admitted + expected.refused)
  const n = admitted + refused
  // P(X ≥ k) of a binomial variable is the regularized incomplete beta function I_p(k, n − k + 1) (DLMF 8.17.5).
  const probability = admitted === 0 ? 1 : incompleteBeta(share, admitted, n - admitted + 1)
  const level = CHECKS['bunched-at-limit'].rate ?? 0
  // Were all of them inside, chance could still have done it.
  const isTooFew = level <= share ** n
  const shown = isTooFew ? 'too-few' : probability < level ? 'bunched' : 'not-bunched'
  return { admitted, refused, fitted: { ...fit, ...expected, probability }, shown }
}

function expectedAt(
  { edge, side, width }: Window,
  fit: { readonly mean: number; readonly standardDeviation: number; readonly inside: number },
  outside: number,
): { admitted: number; refused: number } {
  const total = outside / (1 - fit.inside)
  const upTo = (x: number) => cumulative((x - fit.mean) / fit.standardDeviation)
  const above = total * (upTo(edge + width) - upTo(edge))
  const below = total * (upTo(edge) - upTo(edge - width))
  return side === 'low' ? { admitted: above, refused: below } : { admitted: below, refused: above }
}

/**
 * A warning for each limit that a source's values bunch at.
 * @param source id
 * @param limits of `atTheLimits`
 * @param diverted lots of which material was diverted, as the record says
 */
export function bunchedAtLimits(source: string, limits: readonly AtLimit[], diverted: number): Checked {
  const findings = limits.flatMap((one) => {
    const { shown, fitted, values, side: _, ...head } = one
    if (shown !== 'bunched' || fitted === null) return []
    const { admitted: expectedAdmitted, refused: expectedRefused, probability } = fitted
    const params = {
      source,
      ...head,
      lots: values.length,
      expectedAdmitted,
      expectedRefused,
      probability,
      diverted,
    }
    return [found(source, { code: 'bunched-at-limit', params }, one.criterion, one.clause, one.side)]
  })
  const looked = limits.filter(({ shown }) => shown !== 'too-few').length
  return { check: 'bunched-at-limit', looked, findings }
}
