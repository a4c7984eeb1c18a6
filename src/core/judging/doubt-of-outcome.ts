/** How far a value stands from where its outcome changes, measured by its own uncertainty: for information. */
import { type DoubtRule, factorOf } from '../criteria/decision-rule.ts'
import type { DoubtOfOutcome } from '../criteria/verdict.ts'
import { withoutDust } from '../measure/rounding.ts'
import type { End, Ends } from './effective-ends.ts'

/**
 * What "would decide" means where no rule says so: a one-sided confidence of 95 %, the risk of a guard band of
 * 1.645 standard uncertainties. Own choice (JCGM 100:2008, table G.1, 90 % two-sided).
 */
const DECISIVE: DoubtRule = { rule: 'probability', p: 0.95 }

/** The uncertainty of a value, and what of it further batches make smaller. All in one unit. */
export interface Scatter {
  /** Standard uncertainty of the value. */
  readonly u: number
  /** Degrees of freedom, above zero; undefined where not known. */
  readonly df?: number | undefined
  /** The part of one batch: of a mean of four independent ones twice `u`. `u` without it. */
  readonly ofBatch?: number | undefined
  /** The part of a reference, which no further batch makes smaller; zero without it. */
  readonly ofReference?: number | undefined
}

/**
 * How far a value stands from where its outcome changes, measured by its own uncertainty.
 * @param value in the unit of the ends, unrounded
 * @param ends of what is admitted, at least one: before rounding where the value is rounded first
 * @param scatter of the value
 * @param rule that the value is judged by; 95 % on one side without one
 * @returns the distance and what would decide; the printed decimals and the unit are the caller's to add
 * @throws RangeError for no end
 * Note: Student's quantile where degrees of freedom are known: a rule that needs 3.31 standard uncertainties is
 * not called clear at 2.
 */
export function doubtOfOutcome(
  value: number,
  ends: Ends,
  scatter: Scatter,
  rule: DoubtRule = DECISIVE,
): Omit<DoubtOfOutcome, 'unit' | 'decimals'> {
  const { margin, end, side } = nearestEnd(value, ends)
  const factor = factorOf(rule, scatter.df)
  return {
    margin,
    end: end.at,
    step: end.step,
    side,
    u: scatter.u,
    clear: factor * scatter.u < Math.abs(margin),
    batches: batchesToDecide(margin, scatter, factor),
  }
}

/**
 * The end of what is admitted that a value is nearest to, or farthest beyond.
 * @param value in the unit of the ends
 * @param ends at least one
 * @returns the distance in the unit of the value, at 12 significant digits: above zero inside, below zero outside
 * @throws RangeError for no end
 */
export function nearestEnd(
  value: number,
  { low, high }: Ends,
): { readonly margin: number; readonly end: End; readonly side: 'low' | 'high' } {
  const toLow = low && { margin: withoutDust(value - low.at), end: low, side: 'low' as const }
  const toHigh = high && { margin: withoutDust(high.at - value), end: high, side: 'high' as const }
  const nearest =
    toLow !== undefined && toHigh !== undefined
      ? toHigh.margin < toLow.margin
        ? toHigh
        : toLow
      : (toLow ?? toHigh)
  if (nearest === undefined) throw new RangeError('nearestEnd needs an end of what is admitted, got none')
  return nearest
}

/**
 * Batches in all whose mean would tell the value from the end, if that mean stayed where it is.
 * @param margin distance to the end, of either sign, in the unit of the scatter
 * @param factor standard uncertainties that decide
 * @returns whole, at least 1; null where no number of batches decides: on the very end, and where the doubt of
 * the reference alone is too large
 * Notes: 1. every batch is independent of the others: an index has a control of its own; 2. the factor stays,
 * since the uncertainty is known from elsewhere.
 */
export function batchesToDecide(
  margin: number,
  { u, ofBatch = u, ofReference = 0 }: Scatter,
  factor: number,
): number | null {
  // Own choice: margin² = z² (s²/n + r²) solved for n, as ASTM E122 sizes a sample (r = 0 there).
  const left = withoutDust(margin * margin - (factor * ofReference) ** 2)
  if (left <= 0) return null
  return Math.max(1, Math.ceil(withoutDust((factor * ofBatch) ** 2 / left)))
}
