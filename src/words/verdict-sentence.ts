/** Plain sentences on a verdict: what decided it, what is met so far, and what it is worth. */
import { type Criterion, setName } from '../core/criteria/criterion.ts'
import { counted, listWords } from './limit-words.ts'
import { isNeutral } from '../core/criteria/combining.ts'
import type { ClauseOutcome, Outcome, Verdict } from '../core/criteria/outcome.ts'

/** Stands over every verdict under limits that nobody has confirmed against the standard. */
export const TRIAL_HEADING = 'Trial judgement, not a statement of conformity'

const HEADLINES: Readonly<Record<Outcome, string>> = {
  meets: 'Meets',
  'meets-by-approval': 'Meets by approval',
  'does-not-meet': 'Does not meet',
  inconclusive: 'Inconclusive under',
  pending: 'Pending under',
  'not-reported': 'Required results not reported under',
  'insufficient-history': 'Meets all clauses that can be evaluated of',
  'not-valid': 'A test is not valid under',
  'not-applicable': 'No clause applies of',
  'not-invoked': 'Nothing asked for of',
  reported: 'Reported under',
}

/** One line for the head of a certificate; a class never stands without its edition. */
export function verdictHeadline(
  verdict: Pick<Verdict, 'outcome' | 'class' | 'edition'>,
  criterion: Pick<Criterion, 'title' | 'designation'>,
): string {
  const set = setName({ ...criterion, edition: verdict.edition })
  return `${HEADLINES[verdict.outcome]} ${verdict.class === null ? set : `${set}, class ${verdict.class}`}`
}

/**
 * Sentences without a full stop: how far the set is met, then each clause that decided with its reason, then
 * what else is open.
 */
export function verdictReasons(
  outcome: Outcome,
  clauses: readonly ClauseOutcome[],
  criterion: Pick<Criterion, 'edition' | 'supersededBy' | 'laterName'>,
): string[] {
  const combined = clauses.filter((clause) => !clause.information)
  const deciding = combined.filter((clause) => clause.decides)
  const superseded =
    criterion.supersededBy === undefined
      ? []
      : [
          `judged under edition ${criterion.edition}, which is superseded by ${criterion.laterName ?? criterion.supersededBy}`,
        ]
  return [...openingSentences(outcome, combined), ...eitherRule(outcome, deciding), ...superseded]
}

function openingSentences(outcome: Outcome, clauses: readonly ClauseOutcome[]): string[] {
  const judged = clauses.filter((clause) => !isNeutral(clause.outcome))
  const met = judged.filter((clause) => clause.outcome === 'meets' || clause.outcome === 'meets-by-approval')
  if (judged.length === 0) return ['no clause of the set gives a limit for this lot']
  if (met.length === judged.length)
    return outcome === 'meets'
      ? [`meets ${allOf(judged.length)}`]
      : [`meets ${allOf(judged.length)}, some by approval`, ...named(outcome, clauses)]
  if (outcome === 'insufficient-history') return [unevaluable(judged), ...named(outcome, clauses)]
  const rest = judged.filter((clause) => clause.outcome !== outcome)
  const summary =
    rest.length === met.length
      ? allOthers(outcome, rest.length)
      : `${met.length} of ${counted(judged.length, 'clause')} met so far`
  return [summary, ...named(outcome, clauses), ...alsoOpen(outcome, rest)]
}

function allOf(count: number): string {
  return count === 1 ? 'the one clause that applies' : `all ${count} clauses that apply`
}

function allOthers(outcome: Outcome, others: number): string {
  const word = outcome === 'pending' ? 'pending' : outcome.replaceAll('-', ' ')
  return others === 0 ? word : `${word}; all other clauses met`
}

function unevaluable(judged: readonly ClauseOutcome[]): string {
  const uniformity = judged
    .filter((clause) => clause.outcome === 'insufficient-history')
    .every((clause) => clause.kind === 'deviation')
  return `meets all clauses that can be evaluated; ${uniformity ? 'uniformity' : 'the rest'} not yet evaluable`
}

/** Each clause with the outcome and its own reason. */
function named(outcome: Outcome, clauses: readonly ClauseOutcome[]): string[] {
  return clauses
    .filter((clause) => clause.outcome === outcome)
    .flatMap((clause) => sentencesOf(clause, outcome))
}

function sentencesOf(clause: ClauseOutcome, outcome: Outcome): string[] {
  const own =
    clause.clauses === undefined ? undefined : clause.clauses.filter((member) => member.outcome === outcome)
  if (own === undefined || own.length === 0) return [`${clause.title}: ${clause.reason}`]
  return own.flatMap((member) => sentencesOf(member, outcome))
}

/** What else keeps the verdict from being met, by title. */
function alsoOpen(outcome: Outcome, rest: readonly ClauseOutcome[]): string[] {
  const open = rest.filter((clause) => clause.outcome !== 'meets' && clause.outcome !== 'meets-by-approval')
  const order = [...new Set(open.map((clause) => clause.outcome))]
  return order.map(
    (other) =>
      `${outcome === other ? '' : 'also '}${other.replaceAll('-', ' ')}: ${listWords(
        open.filter((clause) => clause.outcome === other).map((clause) => clause.title),
        'and',
      )}`,
  )
}

/** Where one of several routes was enough, which one was used. */
function eitherRule(outcome: Outcome, deciding: readonly ClauseOutcome[]): string[] {
  if (outcome !== 'meets') return []
  return deciding
    .filter((clause) => clause.combine === 'any-of')
    .map((clause) => `${clause.title}: ${clause.reason}`)
}
