/**
 * A comparison on every result that counts: the worst, the latest or the mean decides, as the clause says.
 */
import type { Comparison } from '../criteria/criterion.ts'
import { severity } from '../criteria/combining.ts'
import { admitted } from '../criteria/decision-rule.ts'
import { defined } from '../measure/defined.ts'
import { property } from '../measure/properties.ts'
import { byTest } from '../result/by-test.ts'
import { isBounded } from '../result/bounds.ts'
import type { Result } from '../result/result.ts'
import { mean } from '../statistics/descriptive.ts'
import { type ClauseJudgement, judgement, withReason } from './judged-clause.ts'
import type { ComparisonCase } from './judging.ts'
import { byControl, meanUncertainty } from './mean-uncertainty.ts'
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
  if (results.length === 1) return decisive
  // Nothing is better or worse without a limit: the largest is shown.
  const which = several === 'worst' && comparison.clause.limits.every(isReport) ? 'highest' : several
  return withReason(decisive, { code: 'one-of-several', params: { which, n: results.length } })
}

function isReport({ operator }: Comparison['limits'][number]): boolean {
  return operator === 'report'
}

/** The last tested; results come in order of test. */
function latest(results: readonly Result[]): Result {
  return results.reduce((_, result) => result)
}

/** The mean of all, which names no single result. */
function judgeMean(comparison: ComparisonCase, results: readonly Result[]): ClauseJudgement {
  if (results.some(isBounded)) return judgement('not-reported', { code: 'no-mean-of-censored', params: {} })
  // In an order of their own, so that neither the last digit nor what is taken from the first depends on the record.
  const [first, ...others] = results.toSorted(byTest) as [Result, ...Result[]]
  const value = mean([first, ...others].map((result) => result.value).sort((a, b) => a - b))
  const found = meanUncertainty(results.map((result) => ({ result, u: uncertaintyFor(comparison, result) })))
  const judged = judgeResult(comparison, { ...first, value }, { key: null, ...found })
  const isIndex = property(first.property).nature === 'index'
  const isControlled = isIndex && results.every(({ control }) => control !== undefined)
  const controls = isControlled ? byControl(results).size : undefined
  return withReason(judged, { code: 'mean-of-several', params: defined({ n: results.length, controls }) })
}

/** A worse outcome, or the same outcome nearer to failing: nearer to a limit inside it, farther from it beyond. */
function isWorse(candidate: ClauseJudgement, than: ClauseJudgement): boolean {
  const difference = severity(candidate.outcome) - severity(than.outcome)
  return difference === 0 ? room(candidate) < room(than) : difference < 0
}

/** How far a value may still move before a limit is reached; less than nothing beyond. A larger report comes first. */
function room({ value, limit }: ClauseJudgement): number {
  if (value === null || value === undefined) return Number.POSITIVE_INFINITY
  if (limit === null || limit === undefined) return -value
  const { low, high } = admitted(limit.operator, limit.values)
  return Math.min(value - low, high - value)
}
