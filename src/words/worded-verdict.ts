/**
 * A verdict as it is printed and stored in an issued document: the same data, with every title and reason in
 * words. Made only when something prints: ten thousand lots are judged without anybody reading a sentence.
 */
import { type Clause, type Criterion, everyClause } from '../core/criteria/criterion.ts'
import { type ClauseOutcome, everyClauseOutcome, type Verdict } from '../core/criteria/verdict.ts'
import type { Release } from '../core/criteria/reason.ts'
import { defined } from '../core/measure/defined.ts'
import type { Uncertainty } from '../core/result/uncertainty.ts'
import type { BestClass } from '../core/judging/verdict.ts'
import { clauseNoteWords, clauseReasonWords, type TitleOf } from './clause-reasons.ts'
import { clauseTitle } from './clause-titles.ts'
import { demandWords } from './clause-demands.ts'
import { listWords } from './sentences.ts'
import { dueWords } from './standing.ts'
import { basisWords, doubtWords } from './uncertainty.ts'
import type { UnitSystem } from './unit-systems.ts'
import { verdictReasonWords } from './verdict-reasons.ts'

/** A clause outcome with its words. */
export interface WordedClause
  extends Omit<ClauseOutcome, 'age' | 'due' | 'reasons' | 'uncertainty' | 'doubt' | 'relaxed' | 'clauses'> {
  readonly age?: string
  readonly due?: string
  /** Heading for a reader: the clause's own title or the property's, with condition and age. */
  readonly title: string
  /** One sentence without a full stop. */
  readonly reason: string
  /** What must be said beside the outcome whatever it is; without a full stop. */
  readonly note?: string
  readonly uncertainty?: Omit<Uncertainty, 'basis'> & { readonly basis: string }
  /** How far the value stands from the limit, measured by its uncertainty; one line without a full stop. */
  readonly doubt?: string
  /** Present where the uncertainty leaves a doubt worth a line on paper. */
  readonly inDoubt?: true
  /** A supplement made the demand easier: which one, and what stood before. */
  readonly relaxed?: { readonly by: string; readonly was: string }
  readonly clauses?: readonly WordedClause[]
}

/** A verdict with its words. */
export interface WordedVerdict extends Omit<Verdict, 'reasons' | 'clauses' | 'release'> {
  /** Sentences without a full stop: how far the set is met, what decided, what else is open. */
  readonly reasons: readonly string[]
  readonly clauses: readonly WordedClause[]
  /** "conditional on ...", where the set's release list is met while the verdict is still pending. */
  readonly release?: string
}

/** A reader's name of a condition, by its id. */
export type ConditionTitle = (id: string) => string

/**
 * @param criterion the set that the verdict is under
 * @throws RangeError for a verdict with a clause that the set does not have
 */
export function wordedVerdict(
  verdict: Verdict,
  criterion: Criterion,
  conditionTitle: ConditionTitle,
  units: UnitSystem = 'SI',
): WordedVerdict {
  const titleOf = titlesOf(criterion, conditionTitle, units)
  const { release, ...judged } = verdict
  return {
    ...judged,
    reasons: verdictSentences(verdict, criterion, conditionTitle, units),
    clauses: verdict.clauses.map((clause) => wordedClause(clause, titleOf, units)),
    ...(release === undefined ? {} : { release: releaseWords(release, titleOf) }),
  }
}

function wordedClause(clause: ClauseOutcome, titleOf: TitleOf, units: UnitSystem): WordedClause {
  const { id, reasons, uncertainty, doubt, relaxed, clauses, ...plain } = clause
  return {
    id,
    title: titleOf(id),
    ...timesInTexts(plain),
    reason: clauseReasonWords(reasons, titleOf, units),
    ...defined({
      note: clauseNoteWords(reasons, titleOf, units),
      uncertainty: uncertainty && { ...uncertainty, basis: basisWords(uncertainty.basis) },
      doubt: doubt && doubtWords(doubt, clause),
      inDoubt: doubt !== undefined && !doubt.clear && 0 < doubt.u ? (true as const) : undefined,
      relaxed: relaxed && { by: relaxed.by, was: demandWords(relaxed.former) },
      clauses: clauses?.map((member) => wordedClause(member, titleOf, units)),
    }),
  }
}

/** Age and date in their places, so that the order of members stays. */
function timesInTexts<Outcome extends Pick<ClauseOutcome, 'age' | 'due'>>(
  outcome: Outcome,
): Omit<Outcome, 'age' | 'due'> & Pick<WordedClause, 'age' | 'due'> {
  return { ...outcome, ...defined({ age: outcome.age?.text, due: outcome.due?.text }) }
}

/** The sentences of a verdict alone. */
export function verdictSentences(
  { reasons, clauses }: Pick<Verdict, 'reasons' | 'clauses'>,
  criterion: Criterion,
  conditionTitle: ConditionTitle,
  units: UnitSystem = 'SI',
): string[] {
  const titleOf = titlesOf(criterion, conditionTitle, units)
  const reasonOf = (id: string): string => {
    for (const clause of everyClauseOutcome(clauses))
      if (clause.id === id) return clauseReasonWords(clause.reasons, titleOf, units)
    throw new RangeError(`verdictSentences needs a clause of the verdict, got ${id}`)
  }
  return reasons.map((reason) => verdictReasonWords(reason, { titleOf, reasonOf }))
}

/** What decided a verdict, in one line: the clauses by title. */
export function decidedByWords(
  { decidedBy }: Pick<Verdict, 'decidedBy'>,
  criterion: Criterion,
  conditionTitle: ConditionTitle,
): string {
  return decidedBy.map(titlesOf(criterion, conditionTitle)).join('; ')
}

/**
 * The best class met, and what stands in the way of the next better one; undefined where the set has no order
 * of merit.
 */
export function bestClassWords(
  found: BestClass | null,
  criterion: Criterion,
  conditionTitle: ConditionTitle,
): string | undefined {
  if (found === null) return undefined
  const { best, next } = found
  const met = best === null ? 'no class is met' : `best class met: ${best}`
  if (next === null) return met
  const reasons = verdictSentences(next.verdict, criterion, conditionTitle)
  const way = 1 < reasons.length ? reasons.slice(1) : reasons
  return `${met}; in the way of class ${next.class}: ${way.join('; ')}`
}

function releaseWords({ awaits }: Release, titleOf: TitleOf): string {
  const pending = awaits.map(({ clause, due }) =>
    due === undefined ? titleOf(clause) : `${titleOf(clause)}, ${dueWords(due)}`,
  )
  return `conditional on ${listWords(pending, 'and')}`
}

/** Headings of a set's clauses, each made when it is asked for. @throws RangeError for a clause it lacks */
export function titlesOf(
  criterion: Criterion,
  conditionTitle: ConditionTitle,
  units: UnitSystem = 'SI',
): TitleOf {
  const clauses = new Map<string, Clause>()
  for (const clause of everyClause(criterion.clauses)) clauses.set(clause.id, clause)
  return (id) => {
    const clause = clauses.get(id)
    if (clause === undefined) throw new RangeError(`titlesOf needs a clause of ${criterion.id}, got ${id}`)
    return clauseTitle(clause, conditionTitle, units)
  }
}
