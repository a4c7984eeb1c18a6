/** Results on samples that a clause does not judge: one that would not meet its limit is not hidden. */
import type { OtherSample } from '../criteria/verdict.ts'
import { dutyOf } from '../measure/duty.ts'
import type { Result } from '../result/result.ts'
import { judgeAgainstLimits } from './against-limits.ts'
import { type ClauseJudgement, withReason } from './judged-clause.ts'
import type { ComparisonCase } from './judging.ts'

/**
 * The judgement with the other samples that would not meet the limit.
 * @param judged on the samples that the clause judges
 * @param passedOver valid results on others
 * @returns the judgement itself where it does not meet the limit either, or holds more than one value against it
 * Note: compared as specified, since doubt is no reason to hide a result.
 */
export function withOtherSamples(
  comparison: ComparisonCase,
  judged: ClauseJudgement,
  passedOver: readonly Result[],
): ClauseJudgement {
  const { clause, limits } = comparison
  const isPlain =
    clause.bands === undefined && clause.statistic === undefined && clause.deviation === undefined
  if (!isPlain || limits.length === 0 || judged.outcome === 'does-not-meet') return judged
  const others = passedOver.flatMap((result) => failing(comparison, result))
  if (others.length === 0) return judged
  return withReason({ ...judged, others }, { code: 'other-samples', params: { others } })
}

function failing(comparison: ComparisonCase, result: Result): OtherSample[] {
  const { key, sample, sampleKind, value, unit, decimals } = result
  const { outcome } = judgeAgainstLimits(comparison, result, { key, asSpecified: true })
  return outcome === 'does-not-meet'
    ? [{ result: key, sample, sampleKind, duty: dutyOf(result), value, unit, decimals, outcome }]
    : []
}
