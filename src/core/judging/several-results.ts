/**
 * A comparison on every result that counts: the worst, the latest or the mean decides, as the clause says.
 */
import { severity } from '../criteria/combining.ts'
import { defined } from '../measure/defined.ts'
import type { Result } from '../result/result.ts'
import { type ClauseJudgement, judgement, withReason } from './judged-clause.ts'
import type { ComparisonCase } from './judging.ts'
import { judgeResult, uncertaintyFor } from './one-result.ts'

/**
 * Judges every result that counts, or the latest, or their mean, as the clause says.
 * @param results at least one, all of the clause's property, condition and age
 */
export function judgeSeveral(comparison: ComparisonCase, results: readonly Result[]): ClauseJudgement {
  const { several } = comparison.clause
  if (several === 'mean' && 1 < results.length) return judgeMean(comparison, results)
  const chosen = several === 'latest' ? [latest(results)] : results
  const judged = chosen.map((result) => {
    const uncertainty = uncertaintyFor(comparison, result)
    return judgeResult(comparison, result, defined({ key: result.key, uncertainty }))
  })
  const decisive = judged.reduce((worst, candidate) => (isWorse(candidate, worst) ? candidate : worst))
  return results.length === 1
    ? decisive
    : withReason(decisive, { code: 'one-of-several', params: { which: several, n: results.length } })
}

/** The last tested; results come in order of test. */
function latest(results: readonly Result[]): Result {
  return results.reduce((_, result) => result)
}

/** Results of one batch each: the mean of n is known the better by the root of n. */
function judgeMean(comparison: ComparisonCase, results: readonly Result[]): ClauseJudgement {
  if (results.some((result) => result.censored !== undefined))
    return judgement('not-reported', { code: 'no-mean-of-censored', params: {} })
  const [first] = results as [Result, ...Result[]]
  const n = results.length
  const value = results.reduce((sum, result) => sum + result.value, 0) / n
  const single = uncertaintyFor(comparison, first)
  // JCGM 100:2008, 4.2.3, equation (5).
  const uncertainty = single === undefined ? undefined : { ...single, u: single.u / Math.sqrt(n) }
  const judged = judgeResult(comparison, { ...first, value }, defined({ key: null, uncertainty }))
  return withReason(judged, { code: 'mean-of-several', params: { n } })
}

/** A worse outcome, or the same outcome nearer to failing: less for a lower limit, more for any other. */
function isWorse(candidate: ClauseJudgement, than: ClauseJudgement): boolean {
  const difference = severity(candidate.outcome) - severity(than.outcome)
  if (difference !== 0) return difference < 0
  const operator = candidate.limit?.operator
  const [value, other] = [candidate.value ?? 0, than.value ?? 0]
  if (operator === 'at-least' || operator === 'above') return value < other
  return operator === 'magnitude-at-most' ? Math.abs(other) < Math.abs(value) : other < value
}
