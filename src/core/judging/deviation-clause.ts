/** A clause on how far a result stands from its reference rather than on the result itself. */
import type { Comparison } from '../criteria/criterion.ts'
import type { Outcome } from '../criteria/outcome.ts'
import type { AddedReason, ClauseReason } from '../criteria/reason.ts'
import { defined } from '../measure/defined.ts'
import { property, storedUnit } from '../measure/properties.ts'
import type { Result } from '../result/result.ts'
import type { Uncertainty } from '../result/uncertainty.ts'
import { judgeAgainstLimits, type JudgedWith } from './against-limits.ts'
import { firstLimit } from './applied-limit.ts'
import { boundsOfDeviation, deviationFrom } from './deviation.ts'
import { type Reference, referenceOf } from './deviation-reference.ts'
import { type ClauseJudgement, judgement, withReason } from './judged-clause.ts'
import type { ComparisonCase } from './judging.ts'
import { shownBounds } from './reported-value.ts'

type FoundReference = Extract<Reference, { found: 'value' }>

/**
 * Judges how far a result stands from its reference.
 * @throws RangeError for a clause without a deviation, or without a limit for the class
 */
export function judgeDeviation(
  comparison: ComparisonCase,
  result: Result,
  { key, uncertainty: known, parts }: JudgedWith,
): ClauseJudgement {
  const { clause, evidence } = comparison
  const reference = referenceOf(clause, result, evidence)
  const uncompared = (outcome: Outcome, reason: ClauseReason) => ({
    ...firstLimit(comparison),
    ...judgement(outcome, reason),
    result: key,
  })
  if (reference.found === 'none') return uncompared(reference.outcome, reference.reason)
  const measure = clause.deviation?.relative === true ? 'relative' : 'points'
  const value = deviationFrom(result.value, reference.value, measure)
  if (value === null) return uncompared('not-reported', { code: 'no-deviation-from-zero', params: {} })
  const found =
    known === undefined ? {} : uncertaintyOfDeviation(known, parts?.ofBatch ?? known.u, reference, measure)
  const deviation = defined({ value, bounds: boundsOfDeviation(result, reference, measure) })
  const judged = judgeAgainstLimits(comparison, deviation, { key, ...found })
  return {
    ...withReason(judged, referenceReason(reference, clause)),
    against: {
      from: reference.from,
      mean: reference.value,
      ...shownBounds(reference),
      n: reference.n,
      lots: reference.lots,
      values: reference.values,
    },
  }
}

/**
 * A declared value has no doubt; a control's is as doubtful as the result's, and a mean of n the less so:
 * variances add. The reference's own part in a relative deviation is left out, since results lie near their
 * reference.
 */
function uncertaintyOfDeviation(
  known: Uncertainty,
  ofBatch: number,
  reference: FoundReference,
  measure: 'relative' | 'points',
): Required<Pick<JudgedWith, 'uncertainty' | 'parts'>> {
  const scale = measure === 'relative' ? 100 / Math.abs(reference.value) : 1
  // JCGM 100:2008, 4.2.3, equation (5), for the mean; a single control is as doubtful as one batch.
  const ofReference = reference.from === 'declared' ? 0 : ofBatch / Math.sqrt(reference.n)
  // Every further batch has a control of its own: what one adds, the control adds as well.
  const perBatch = reference.from === 'control' ? Math.hypot(ofBatch, ofReference) : ofBatch
  return {
    // JCGM 100:2008, 5.1.2, equation (10).
    uncertainty: { ...known, u: scale * Math.hypot(known.u, ofReference) },
    parts: { ofBatch: scale * perBatch, ofReference: reference.from === 'control' ? 0 : scale * ofReference },
  }
}

/** One decimal more than the property is printed with: the reference is compared unrounded. */
function referenceReason(reference: FoundReference, clause: Comparison): AddedReason {
  return {
    code: 'deviation-reference',
    params: {
      from: reference.from,
      n: reference.n,
      reference: {
        value: reference.value,
        decimals: property(clause.property).decimals + 1,
        unit: storedUnit(clause.property),
      },
      ...shownBounds(reference),
    },
  }
}
