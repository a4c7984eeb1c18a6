/**
 * Clauses on several results of a source together: the lot's own result last, those before it by the order of
 * sampling.
 */
import { compareWithLimit } from './compare-with-limit.ts'
import type { Comparison, Statistic } from '../criteria/criterion.ts'
import { admitted, type Interval } from '../criteria/decision-rule.ts'
import { cumulative } from '../statistics/distributions.ts'
import { deviationFrom } from './deviation.ts'
import { referenceOf } from './deviation-reference.ts'
import { type Bench, held, type HeldLimit } from './limits.ts'
import { type Finding, plainly } from './judged-clause.ts'
import { counted, limitWords, numberWords } from '../../words/limit-words.ts'
import { property } from '../measure/properties.ts'
import type { PrecedingResult, Result } from '../result/result.ts'
import { mean, standardDeviation } from '../statistics/descriptive.ts'
import { toleranceFactor } from '../statistics/tolerance-factor.ts'
import { KINDS } from '../measure/units.ts'

type Of<K extends Statistic['of']> = Extract<Statistic, { of: K }>

/** @throws RangeError for a clause without a statistic over results */
export function judgeStatistic(bench: Bench, result: Result, key: string | null): Finding {
  const { statistic } = bench.clause
  if (result.censored !== undefined)
    return {
      ...plainly('not-reported', 'a result reported as below a limit of determination enters no statistic'),
      result: key,
    }
  switch (statistic?.of) {
    case 'rolling-mean':
      return rollingMean(bench, statistic, result, key)
    case 'variables':
      return byVariables(bench, statistic, result, key)
    case 'attributes':
      return byAttributes(bench, statistic, result, key)
    case 'tolerance':
      return byTolerance(bench, statistic, result, key)
    case 'variability':
      return variability(bench, statistic, result, key)
    default:
      throw new RangeError(
        `judgeStatistic needs a statistic over results, got ${statistic?.of} in clause ${bench.clause.id}`,
      )
  }
}

function before({ clause, evidence }: Bench, result: Result, count: number): readonly PrecedingResult[] {
  return count === 0
    ? []
    : evidence.preceding(clause.property, clause.condition, clause.age, result.method, count)
}

/**
 * The control period of a clause by variables or attributes: results sampled within so many days of the lot,
 * its own included.
 */
function inPeriod({ clause, evidence }: Bench, result: Result, days: number): readonly PrecedingResult[] {
  return evidence.period?.(clause.property, clause.condition, clause.age, result.method, days) ?? []
}

function tooFew(n: number, atLeast: number): Finding {
  return plainly('insufficient-history', `${counted(n, 'result')} of the ${atLeast} that the clause needs`)
}

function rollingMean(
  bench: Bench,
  { count }: Of<'rolling-mean'>,
  result: Result,
  key: string | null,
): Finding {
  const preceding = before(bench, result, count - 1)
  if (preceding.length < count - 1) return { ...tooFew(preceding.length + 1, count), result: key }
  const value = mean([...preceding.map((entry) => entry.value), result.value])
  const finding = held(bench, { value }, key, { asSpecified: true })
  return {
    ...finding,
    reason: `${finding.reason}; the last ${count} results`,
    against: { mean: value, n: count, lots: preceding.map((entry) => entry.lot) },
  }
}

/**
 * Source: EN 197-1 and EN 450-1, conformity by variables, mean ± kA s (structure read in EN 15167-1; factor
 * computed).
 */
function byVariables(
  bench: Bench,
  { days, atLeast, share, confidence }: Of<'variables'>,
  result: Result,
  key: string | null,
): Finding {
  const preceding = inPeriod(bench, result, days)
  const values = [...preceding.map((entry) => entry.value), result.value]
  if (values.length < Math.max(2, atLeast)) return { ...tooFew(values.length, atLeast), result: key }
  const factor = toleranceFactor(values.length, share, confidence)
  const [centre, deviation] = [mean(values), standardDeviation(values)]
  const estimates = bench.limits.flatMap((limit) =>
    sidesOf(limit).map((side) => ({
      limit: side,
      value: side.operator === 'at-least' ? centre - factor * deviation : centre + factor * deviation,
    })),
  )
  const findings = estimates.map(({ limit, value }) =>
    held({ ...bench, limits: [limit] }, { value }, key, { asSpecified: true }),
  )
  const finding = findings.find((candidate) => candidate.outcome !== 'meets') ?? findings[0]
  if (finding === undefined)
    throw new RangeError(`byVariables needs a one-sided limit, got none in clause ${bench.clause.id}`)
  const { decimals } = property(bench.clause.property)
  const unit = KINDS[property(bench.clause.property).kind].stored
  return {
    ...finding,
    against: { mean: centre, n: values.length, lots: preceding.map((entry) => entry.lot) },
    reason: `${finding.reason}; mean ${numberWords(centre, decimals + 1, unit)}, standard deviation ${numberWords(deviation, decimals + 1, unit)}, factor ${factor.toFixed(3)} for ${counted(values.length, 'result')}`,
  }
}

/** A two-sided limit as two one-sided ones, strictness left as it is written. */
function sidesOf({ operator, quantities }: HeldLimit): HeldLimit[] {
  const [first, second] = quantities
  if (operator === 'between' && first !== undefined && second !== undefined)
    return [
      { operator: 'at-least', quantities: [first] },
      { operator: 'at-most', quantities: [second] },
    ]
  if (operator === 'magnitude-at-most' && first !== undefined) {
    return [
      { operator: 'at-least', quantities: [{ ...first, value: -first.value, written: `−${first.written}` }] },
      { operator: 'at-most', quantities: [first] },
    ]
  }
  return operator === 'at-least' || operator === 'above'
    ? [{ operator: 'at-least', quantities }]
    : [{ operator: 'at-most', quantities }]
}

function byAttributes(
  bench: Bench,
  statistic: Of<'attributes'>,
  result: Result,
  key: string | null,
): Finding {
  const preceding = inPeriod(bench, result, statistic.days)
  const values = [...preceding.map((entry) => entry.value), result.value]
  const allowed = acceptanceNumber(values.length, statistic)
  if (allowed === null) return { ...tooFew(values.length, statistic.acceptance[0]?.from ?? 1), result: key }
  const beyond = values.filter((value) =>
    bench.limits.some(
      (limit) =>
        compareWithLimit({ value }, limit.operator, limit.quantities, bench.clause.resolution).answer !==
        'met',
    ),
  ).length
  const words = bench.limits.map((limit) => limitWords(limit.operator, limit.quantities)).join(' and ')
  return {
    outcome: beyond <= allowed ? 'meets' : 'does-not-meet',
    value: beyond,
    compared: beyond,
    unit: '',
    decimals: 0,
    result: key,
    limit: {
      operator: 'at-most',
      values: [allowed],
      unit: '',
      written: [String(allowed)],
      layer: bench.clause.layer,
    },
    reason: `${beyond} of ${counted(values.length, 'result')} beyond the limit, ${words}; at most ${allowed} allowed`,
    against: { mean: mean(values), n: values.length, lots: preceding.map((entry) => entry.lot) },
  }
}

/** How many results may lie beyond the limit; null for fewer results than the plan begins with. */
export function acceptanceNumber(
  n: number,
  { acceptance, beyond }: Pick<Of<'attributes'>, 'acceptance' | 'beyond'>,
): number | null {
  const entry = acceptance.findLast(({ from }) => from <= n)
  if (entry === undefined) return null
  return beyond !== undefined && entry === acceptance.at(-1)
    ? Math.max(entry.allow, Math.floor(beyond.factor * (n - beyond.less)))
    : entry.allow
}

/**
 * The share of results within the limits that a normal distribution with the results' mean and standard
 * deviation gives.
 */
function byTolerance(
  bench: Bench,
  { count, atLeast, share }: Of<'tolerance'>,
  result: Result,
  key: string | null,
): Finding {
  const { clause } = bench
  const preceding = before(bench, result, count - 1)
  const n = preceding.length + 1
  if (n < Math.max(2, atLeast)) return { ...tooFew(n, atLeast), result: key }
  const judged = judgedValues(bench, result, [...preceding.map((entry) => entry.value), result.value])
  if ('outcome' in judged) return { ...judged, result: key }
  const [centre, deviation] = [mean(judged.values), standardDeviation(judged.values)]
  const within = bench.limits.map((limit) =>
    shareWithin(
      admitted(
        limit.operator,
        limit.quantities.map((quantity) => quantity.value),
      ),
      centre,
      deviation,
    ),
  )
  const value = 100 * Math.min(...within)
  const words = bench.limits.map((limit) => limitWords(limit.operator, limit.quantities)).join(' and ')
  const unit =
    clause.deviation === undefined
      ? KINDS[property(clause.property).kind].stored
      : (bench.limits[0]?.quantities[0]?.unit ?? '')
  return {
    outcome: 100 * share <= value ? 'meets' : 'does-not-meet',
    value,
    compared: value,
    unit: '%',
    decimals: 2,
    result: key,
    limit: {
      operator: 'at-least',
      values: [100 * share],
      unit: '%',
      written: [`${100 * share} %`],
      layer: clause.layer,
    },
    reason: `${numberWords(value, 2, '%')} of results are estimated to lie ${words}; mean ${numberWords(centre, 2, unit)}, standard deviation ${numberWords(deviation, 2, unit)} of ${counted(n, 'result')}; at least ${100 * share} % asked for`,
  }
}

/** Deviations from the declared value where the clause is on them, the values themselves otherwise. */
function judgedValues(
  { clause, evidence }: Bench,
  result: Result,
  values: readonly number[],
): { values: readonly number[] } | Finding {
  if (clause.deviation === undefined) return { values }
  const reference = referenceOf(clause, result, evidence)
  if (reference.found === 'none') return plainly(reference.outcome, reference.reason)
  return {
    values: values.map(
      (value) =>
        deviationFrom(value, reference.value, clause.deviation?.relative === true ? 'relative' : 'points') ??
        Number.NaN,
    ),
  }
}

function shareWithin({ low, high }: Interval, centre: number, deviation: number): number {
  if (deviation === 0) return low <= centre && centre <= high ? 1 : 0
  const below = (x: number) => (Number.isFinite(x) ? cumulative((x - centre) / deviation) : x < 0 ? 0 : 1)
  return below(high) - below(low)
}

/** For pairs the mean absolute difference times this estimates the standard deviation: 1/d2, d2 = 2/√π. */
const FROM_PAIRS = Math.sqrt(Math.PI) / 2

/**
 * Moving average of five, total standard deviation, and what is left of it without testing error.
 * Source: ASTM C917 and C1451 (from memory; the factor 0.8865 = 1/1.128 is exact for pairs).
 */
function variability(
  { clause, evidence }: Bench,
  { count }: Of<'variability'>,
  result: Result,
  key: string | null,
): Finding {
  const preceding = evidence.preceding(
    clause.property,
    clause.condition,
    clause.age,
    result.method,
    count - 1,
  )
  const values = [...preceding.map((entry) => entry.value), result.value]
  if (values.length < 2) return { ...tooFew(values.length, 2), result: key }
  const { words } = variabilityOf(
    clause,
    values,
    preceding.flatMap((entry) => (entry.difference === undefined ? [] : [entry.difference])),
  )
  const { kind, decimals } = property(clause.property)
  return {
    outcome: 'reported',
    reason: words,
    value: result.value,
    compared: result.value,
    unit: KINDS[kind].stored,
    decimals,
    result: key,
  }
}

/** Statistics of one source's variability with their words. @param differences of duplicate tests */
export function variabilityOf(
  clause: Pick<Comparison, 'property'>,
  values: readonly number[],
  differences: readonly number[],
): {
  movingAverage: number | null
  total: number
  testing: number | null
  corrected: number | null
  words: string
} {
  const { kind, decimals } = property(clause.property)
  const words = (value: number) => numberWords(value, decimals + 1, KINDS[kind].stored)
  const movingAverage = values.length < 5 ? null : mean(values.slice(-5))
  const total = standardDeviation(values)
  const testing = differences.length === 0 ? null : mean(differences.map(Math.abs)) * FROM_PAIRS
  const corrected = testing === null ? null : Math.sqrt(Math.max(0, total ** 2 - testing ** 2))
  return {
    movingAverage,
    total,
    testing,
    corrected,
    words: [
      movingAverage === null
        ? 'fewer than five results for a moving average'
        : `moving average of five ${words(movingAverage)}`,
      `standard deviation ${words(total)} of ${counted(values.length, 'result')}`,
      testing === null
        ? 'no duplicate tests to take the testing error out'
        : `testing ${words(testing)} from ${counted(differences.length, 'pair')}, corrected ${words(corrected ?? 0)}`,
    ].join('; '),
  }
}
