/** One comparison: the result that counts, or what stands in its place, against the limit of the class. */
import type { Uncertainty } from '../result/uncertainty.ts'
import type { JudgedValue } from './compare-with-limit.ts'
import type { Comparison } from '../criteria/criterion.ts'
import { declaredQuantity, type Reference, referenceOf } from './deviation-reference.ts'
import { rulesByDoubt } from '../criteria/decision-rule.ts'
import { deviationFrom } from './deviation.ts'
import { classified } from './bands.ts'
import { appliedLimit, type Bench, held, heldLimits, unitOf } from './limits.ts'
import { outOfScope } from './scope.ts'
import { judgeStatistic } from './statistic.ts'
import { clauseOutcome, type Finding, plainly } from './judged-clause.ts'
import type { Judging } from './judging.ts'
import { counted, limitsForClass, numberWords } from '../../words/limit-words.ts'
import { severity } from '../criteria/combining.ts'
import { allHold, premisesWords } from './premises.ts'
import { property } from '../measure/properties.ts'
import type { Result } from '../result/result.ts'
import { selectResults } from './select-result.ts'
import { KINDS } from '../measure/units.ts'
import type { ClauseOutcome } from '../criteria/outcome.ts'

/** Judges a comparison; the outcome carries the value, the limit and the reason. */
export function judgeComparison(clause: Comparison, judging: Judging): ClauseOutcome {
  return clauseOutcome(clause, judging.evidence, outOfScope(clause, judging) ?? judgeInScope(clause, judging))
}

function judgeInScope(clause: Comparison, judging: Judging): Finding {
  const limits = heldLimits(clause.limits, judging.lotClass)
  const bench = { ...judging, clause, limits }
  const first = limits[0]
  const stated = first === undefined ? {} : { limit: appliedLimit(first, clause), ...unitOf(first, clause) }
  if (clause.statistic?.of === 'declared') return { ...stated, ...judgeDeclared(bench) }
  const selection = selectResults(clause, judging.evidence)
  if (selection.found === 'results') return judgeSeveral(bench, selection.results)
  const { outcome, reason } = selection
  return {
    ...stated,
    ...(deemed(bench) ?? {
      outcome,
      reason,
      ...(selection.outcome === 'pending' ? { due: selection.due } : {}),
    }),
  }
}

/**
 * Where no valid result stands, the facts that make a test needless; a result on record is judged whatever
 * they say.
 */
function deemed({ clause, evidence, lotClass }: Bench): Finding | undefined {
  if (clause.deemedBy === undefined || allHold(clause.deemedBy, evidence, lotClass).holds !== 'yes')
    return undefined
  return plainly(
    'meets',
    `deemed to satisfy without a test, since ${premisesWords(clause.deemedBy, (limits) => limitsForClass(limits, lotClass))}`,
  )
}

function judgeDeclared(bench: Bench): Finding {
  const declared = declaredQuantity(bench.clause.property, bench.evidence)
  return declared === undefined
    ? plainly('not-reported', 'the source declares no value')
    : held(bench, declared, null, { asSpecified: true })
}

function judgeSeveral(bench: Bench, results: readonly Result[]): Finding {
  const { several } = bench.clause
  if (several === 'mean' && 1 < results.length) return judgeMean(bench, results)
  const chosen = several === 'latest' ? [latest(results)] : results
  const findings = chosen.map((result) => judgeResult(bench, result, result.key))
  const decided = findings.reduce((worst, finding) => (isWorse(finding, worst) ? finding : worst))
  return results.length === 1
    ? decided
    : { ...decided, reason: `${decided.reason}; ${several} of ${counted(results.length, 'result')}` }
}

/** The last tested, by the text of its moment; the later in the record where two are the same. */
function latest(results: readonly Result[]): Result {
  return results.reduce((last, result) => (last.tested <= result.tested ? result : last))
}

function judgeMean(bench: Bench, results: readonly Result[]): Finding {
  if (results.some((result) => result.censored !== undefined)) {
    return {
      ...plainly(
        'not-reported',
        'a result reported as below a limit of determination has no mean with others',
      ),
    }
  }
  const value = results.reduce((sum, result) => sum + result.value, 0) / results.length
  const [first] = results as [Result, ...Result[]]
  // Results of one batch each: the mean of n is known the better by the root of n.
  const single = uncertaintyFor(bench, first)
  const uncertainty =
    single === undefined ? undefined : { ...single, u: single.u / Math.sqrt(results.length) }
  const finding = judgeResult(bench, { ...first, value }, null, uncertainty)
  return { ...finding, reason: `${finding.reason}; mean of ${counted(results.length, 'result')}` }
}

/** A worse outcome, or the same outcome nearer to failing: less for a lower limit, more for any other. */
function isWorse(candidate: Finding, than: Finding): boolean {
  const difference = severity(candidate.outcome) - severity(than.outcome)
  if (difference !== 0) return difference < 0
  const operator = candidate.limit?.operator
  const [value, other] = [candidate.value ?? 0, than.value ?? 0]
  if (operator === 'at-least' || operator === 'above') return value < other
  return operator === 'magnitude-at-most' ? Math.abs(other) < Math.abs(value) : other < value
}

function judgeResult(
  bench: Bench,
  result: Result,
  key: string | null,
  known = uncertaintyFor(bench, result),
): Finding {
  const { clause } = bench
  if (clause.bands !== undefined) return classified(bench, result, key)
  if (clause.statistic !== undefined) return judgeStatistic(bench, result, key)
  if (bench.limits.length === 0) return reported(clause, result, key)
  if (clause.deviation !== undefined) return judgeDeviation(bench, result, key, known)
  return held(bench, result, key, known === undefined ? {} : { uncertainty: known })
}

/**
 * Asked for where the rule of the clause takes doubt into account, and for every index, which is printed with
 * its doubt.
 */
function uncertaintyFor({ clause, criterion, evidence }: Bench, result: Result): Uncertainty | undefined {
  const asked =
    rulesByDoubt(clause.decisionRule ?? criterion.decisionRule) ||
    property(clause.property).nature === 'index'
  return asked ? evidence.uncertaintyOf?.(result) : undefined
}

function judgeDeviation(
  bench: Bench,
  result: Result,
  key: string | null,
  known: Uncertainty | undefined,
): Finding {
  const { clause } = bench
  const reference = referenceOf(clause, result, bench.evidence)
  if (reference.found === 'none') return { ...plainly(reference.outcome, reference.reason), result: key }
  if (result.censored !== undefined)
    return {
      ...plainly('not-reported', 'a result reported as below a limit of determination has no deviation'),
      result: key,
    }
  const relative = clause.deviation?.relative === true
  const value = deviationFrom(result.value, reference.value, relative ? 'relative' : 'points')
  if (value === null)
    return {
      ...plainly('not-reported', 'a relative deviation from a reference of zero has no meaning'),
      result: key,
    }
  const uncertainty = known === undefined ? undefined : uncertaintyOfDeviation(known, reference, relative)
  const finding = held(
    bench,
    { value } satisfies JudgedValue,
    key,
    uncertainty === undefined ? {} : { uncertainty },
  )
  return {
    ...finding,
    reason: `${finding.reason}; ${referenceWords(reference, clause)}`,
    against: { mean: reference.value, n: reference.n, lots: reference.lots },
  }
}

/**
 * A declared value has no doubt; a control's is as doubtful as the result's, and a mean of n the less so:
 * variances add.
 * The reference's own part in a relative deviation is left out, since results lie near their reference.
 */
function uncertaintyOfDeviation(
  known: Uncertainty,
  reference: Extract<Reference, { found: 'value' }>,
  relative: boolean,
): Uncertainty {
  const u = known.u * (reference.exact ? 1 : Math.sqrt(1 + 1 / reference.n))
  return { ...known, u: relative ? (100 * u) / Math.abs(reference.value) : u }
}

function reported(clause: Comparison, result: Result, key: string | null): Finding {
  const { kind, decimals } = property(clause.property)
  return {
    outcome: 'reported',
    reason: 'reported; no limit',
    value: result.value,
    compared: result.value,
    unit: KINDS[kind].stored,
    decimals,
    result: key,
  }
}

function referenceWords(reference: Extract<Reference, { found: 'value' }>, clause: Comparison): string {
  const { kind, decimals } = property(clause.property)
  const value = numberWords(reference.value, decimals + 1, KINDS[kind].stored)
  switch (clause.deviation?.from) {
    case 'declared':
      return `declared value ${value}`
    case 'control':
      return `control ${value}`
    default:
      return `mean of ${reference.n} preceding ${reference.n === 1 ? 'result' : 'results'} ${value}`
  }
}
