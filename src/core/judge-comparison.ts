/** One comparison: the result that counts against the limit of the class. */
import { type Answer, type ComparedValue, compareWithLimit, type JudgedValue } from './compare.ts'
import type { Comparison, Criterion, Limit, Operator } from './criterion.ts'
import { type Reference, referenceOf } from './deviation-reference.ts'
import { deviationFrom, UNIFORMITY_RESOLUTION } from './deviation.ts'
import type { Evidence } from './evidence.ts'
import { clauseOutcome, type Finding, plainly } from './judged-clause.ts'
import { knownClass, outOfScope } from './judge-scope.ts'
import { counted, limitWords, numberWords, quantitiesFor, unroundedWords } from './limit-words.ts'
import { outcomeUnderRule } from './decision-rule.ts'
import { property } from './properties.ts'
import type { Result } from './result.ts'
import { severity } from './outcomes.ts'
import { selectResults } from './select-result.ts'
import { KINDS, type Quantity } from './units.ts'
import type { AppliedLimit, ClauseOutcome } from './verdict.ts'

/** A limit that holds for the lot's class. */
interface HeldLimit { readonly operator: Operator; readonly quantities: readonly Quantity[] }

/** What one result is judged with. */
interface Bench { readonly clause: Comparison; readonly criterion: Criterion; readonly evidence: Evidence; readonly limits: readonly HeldLimit[]; readonly lotClass: string | null }

/** Judges a comparison; the outcome carries the value, the limit and the reason. */
export function judgeComparison(clause: Comparison, criterion: Criterion, evidence: Evidence): ClauseOutcome {
  return clauseOutcome(clause, evidence, outOfScope(clause, criterion, evidence) ?? judgeInScope(clause, criterion, evidence))
}

function judgeInScope(clause: Comparison, criterion: Criterion, evidence: Evidence): Finding {
  const lotClass = knownClass(criterion, evidence)
  const limits = heldLimits(clause.limits, lotClass)
  const bench = { clause, criterion, evidence, limits, lotClass }
  const selection = selectResults(clause, evidence)
  const first = limits[0]
  const stated = first === undefined ? {} : { limit: appliedLimit(first, clause), ...unitOf(first, clause) }
  if (selection.found === 'none') {
    const { outcome, reason } = selection
    return { outcome, reason, ...stated, ...(selection.outcome === 'pending' ? { due: selection.due } : {}) }
  }
  return judgeSeveral(bench, selection.results)
}

function heldLimits(limits: readonly Limit[], lotClass: string | null): HeldLimit[] {
  return limits.flatMap((limit) => {
    const quantities = limit.operator === 'report' ? [] : quantitiesFor(limit, lotClass)
    return quantities === undefined ? [] : [{ operator: limit.operator, quantities }]
  })
}

function judgeSeveral(bench: Bench, results: readonly Result[]): Finding {
  const { several } = bench.clause
  if (several === 'mean' && 1 < results.length) return judgeMean(bench, results)
  const chosen = several === 'latest' ? [latest(results)] : results
  const findings = chosen.map((result) => judgeResult(bench, result, result.key))
  const decided = findings.reduce((worst, finding) => (isWorse(finding, worst) ? finding : worst))
  return results.length === 1 ? decided : { ...decided, reason: `${decided.reason}; ${several} of ${counted(results.length, 'result')}` }
}

/** The last tested, by the text of its moment; the later in the record where two are the same. */
function latest(results: readonly Result[]): Result {
  return results.reduce((last, result) => (last.tested <= result.tested ? result : last))
}

function judgeMean(bench: Bench, results: readonly Result[]): Finding {
  if (results.some((result) => result.censored !== undefined)) {
    return { ...plainly('not-reported', 'a result reported as below a limit of determination has no mean with others') }
  }
  const value = results.reduce((sum, result) => sum + result.value, 0) / results.length
  const [first] = results
  const finding = judgeResult(bench, { value, ...(first?.method === undefined ? {} : { method: first.method }) }, null)
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

type OneResult = JudgedValue & { readonly method?: string }

function judgeResult(bench: Bench, result: OneResult, key: string | null): Finding {
  const { clause, limits } = bench
  if (limits.every((limit) => limit.operator === 'report')) return reported(clause, result, key)
  if (clause.deviation === undefined) return held(bench, result, key)
  const reference = referenceOf(clause, result.method, bench.evidence)
  if (reference.found === 'none') return { ...plainly(reference.outcome, reference.reason), result: key }
  if (result.censored !== undefined) return { ...plainly('not-reported', 'a result reported as below a limit of determination has no deviation'), result: key }
  const value = deviationFrom(result.value, reference.value, clause.deviation.relative ? 'relative' : 'points')
  if (value === null) return { ...plainly('not-reported', 'a relative deviation from a reference of zero has no meaning'), result: key }
  const finding = held(bench, { value }, key)
  return { ...finding, reason: `${finding.reason}; ${referenceWords(reference, clause)}`, against: { mean: reference.value, n: reference.n, lots: reference.lots } }
}

function reported(clause: Comparison, result: OneResult, key: string | null): Finding {
  const { kind, decimals } = property(clause.property)
  const unit = KINDS[kind].stored
  return { outcome: 'reported', reason: 'reported; no limit', value: result.value, compared: result.value, unit, decimals, result: key }
}

function referenceWords(reference: Extract<Reference, { found: 'value' }>, clause: Comparison): string {
  const { kind, decimals } = property(clause.property)
  const value = numberWords(reference.value, decimals + 1, KINDS[kind].stored)
  return clause.deviation?.from === 'declared' ? `declared value ${value}` : `mean of ${reference.n} preceding ${reference.n === 1 ? 'result' : 'results'} ${value}`
}

interface Held { readonly limit: HeldLimit; readonly compared: ComparedValue }

/** The value against every limit of the clause; the first that is not met is the one shown. */
function held(bench: Bench, judged: JudgedValue, key: string | null): Finding {
  const { clause, limits } = bench
  const all = limits.flatMap((limit): Held[] => limit.operator === 'report' ? [] : [{ limit, compared: compareWithLimit(judged, limit.operator, limit.quantities, resolutionFor(clause, limit)) }])
  const order: readonly Answer[] = ['not-met', 'cannot-decide', 'met']
  const decisive = order.map((answer) => all.find((one) => one.compared.answer === answer)).find((one) => one !== undefined)
  if (decisive === undefined) throw new RangeError(`held needs a limit to compare with, got none in clause ${clause.id}`)
  const { limit, compared } = decisive
  const shared = {
    value: judged.value, compared: compared.compared, decimals: compared.decimals, result: key, limit: appliedLimit(limit, clause), ...unitOf(limit, clause),
  }
  const rule = clause.decisionRule ?? bench.criterion.decisionRule
  const answered = outcomeUnderRule(rule, { outcome: outcomeOf(compared.answer), reason: sentence(judged, limit, compared, clause) })
  return { ...shared, ...(answered.outcome === 'does-not-meet' ? withApproval(answered, bench, judged) : answered) }
}

/** Uniformity in per cent or points is compared in steps of 0.1 unless the clause says otherwise. */
function resolutionFor(clause: Comparison, limit: HeldLimit): number | undefined {
  if (clause.resolution !== undefined) return clause.resolution
  const kind = limit.quantities[0]?.kind
  return clause.deviation?.from === 'preceding' && (kind === 'fraction' || kind === 'points') ? UNIFORMITY_RESOLUTION : undefined
}

function outcomeOf(answer: Answer): 'meets' | 'does-not-meet' | 'not-reported' {
  return answer === 'met' ? 'meets' : answer === 'not-met' ? 'does-not-meet' : 'not-reported'
}

function sentence(judged: JudgedValue, limit: HeldLimit, compared: ComparedValue, clause: Comparison): string {
  const unit = limit.quantities[0]?.unit ?? ''
  const words = limitWords(limit.operator, limit.quantities)
  const shown = numberWords(compared.shown, compared.shownDecimals, unit)
  const what = clause.deviation === undefined ? '' : 'deviation '
  if (judged.censored !== undefined) return censoredSentence(shown, words, compared.answer)
  const before = compared.decimals === compared.shownDecimals && judged.value !== compared.compared ? ` (${unroundedWords(judged.value, compared.decimals, '')} before rounding)` : ''
  return `${what}${shown}${before} ${compared.answer === 'met' ? 'meets' : 'does not meet'} the limit, ${words}`
}

function censoredSentence(shown: string, words: string, answer: Answer): string {
  if (answer === 'cannot-decide') return `reported as below ${shown}, which does not decide the limit, ${words}`
  return `reported as below ${shown}, which ${answer === 'met' ? 'meets' : 'does not meet'} the limit, ${words}`
}

/** Over the plain limit but within the outer one: the record has no place for an approval yet, so the reason names what would be needed. */
function withApproval(plain: Finding, { clause, lotClass }: Bench, judged: JudgedValue): Finding {
  const { approval } = clause
  if (approval === undefined || (approval.classes !== undefined && (lotClass === null || !approval.classes.includes(lotClass)))) return plain
  const quantities = quantitiesFor(approval.limit, lotClass)
  if (quantities === undefined || approval.limit.operator === 'report') return plain
  const { answer } = compareWithLimit(judged, approval.limit.operator, quantities, clause.resolution)
  if (answer !== 'met') return plain
  return { ...plain, reason: `${plain.reason}; up to the outer limit, ${limitWords(approval.limit.operator, quantities)}, by approval on evidence (${approval.evidence}), and none is in the record` }
}

function unitOf(limit: HeldLimit, clause: Comparison): { unit: string } {
  return { unit: KINDS[limit.quantities[0]?.kind ?? property(clause.property).kind].stored }
}

function appliedLimit(limit: HeldLimit, clause: Comparison): AppliedLimit {
  return {
    operator: limit.operator, values: limit.quantities.map((quantity) => quantity.value), ...unitOf(limit, clause),
    written: limit.quantities.map((quantity) => quantity.written), layer: clause.layer,
  }
}
