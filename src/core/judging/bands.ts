/** Classification without a verdict: the first band or region whose demands hold names the value. */
import { type Band, isOwnPremise } from '../criteria/criterion.ts'
import type { PremiseAnswer } from '../criteria/premise.ts'
import type { Result } from '../result/result.ts'
import { type ClauseJudgement, judgement } from './judged-clause.ts'
import type { ComparisonCase } from './judging.ts'
import { allHold, answersOf } from './premises.ts'
import { reportedValue } from './reported-value.ts'

/**
 * The value with the first band of the clause that it falls into.
 * @param result of the clause's own property, condition and age; others of a region are looked up in the evidence
 * @param key of the result, null for a mean of several
 */
export function classified(comparison: ComparisonCase, result: Result, key: string | null): ClauseJudgement {
  const { clause } = comparison
  return { ...reportedValue(clause, result, key), ...inFirstBand(comparison, result) }
}

function inFirstBand(comparison: ComparisonCase, result: Result): ClauseJudgement {
  for (const band of comparison.clause.bands ?? []) {
    const answer = fallsInto(band, result, comparison)
    if (answer?.holds === 'open')
      return judgement('not-reported', {
        code: 'band-not-determined',
        params: { because: answer.because },
      })
    if (answer?.holds === 'yes')
      return {
        ...judgement('reported', { code: 'band-found', params: { band: band.title } }),
        band: band.title,
      }
  }
  return judgement('reported', { code: 'band-none', params: {} })
}

/** Undefined where the value itself lies outside: the next band is asked, and nothing is said of this one. */
function fallsInto(
  { where }: Band,
  result: Result,
  { clause, evidence, lotClass }: ComparisonCase,
): PremiseAnswer | undefined {
  const own = where.filter((premise) => isOwnPremise(premise, clause))
  const answers = own.flatMap((premise) => answersOf(premise.limits, result, lotClass))
  if (answers.includes('not-met')) return undefined
  if (answers.includes('cannot-decide'))
    return { holds: 'open', because: { code: 'band-on-both-sides', params: {} } }
  return allHold(
    where.filter((premise) => !isOwnPremise(premise, clause)),
    evidence,
    lotClass,
  )
}
