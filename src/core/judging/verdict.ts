/** A lot under a criterion: every clause judged, the outcomes combined, the clauses that decided named. */
import { combineSet } from '../criteria/combining.ts'
import { type Criterion, isUnconfirmed } from '../criteria/criterion.ts'
import type { Outcome } from '../criteria/outcome.ts'
import type { ClauseOutcome, Verdict } from '../criteria/verdict.ts'
import type { Evidence } from '../evidence/evidence.ts'
import { defined } from '../measure/defined.ts'
import { judgeClause } from './group.ts'
import { releaseOf } from './release.ts'
import { judgingOf } from './scope.ts'
import { verdictReasons } from './verdict-reasons.ts'

/**
 * Judges one lot under one set.
 * @param criterion compiled set, one edition
 * @param evidence what was known of the lot on the date of the judgement
 * @param asClass judge under this class rather than the claimed one
 * Notes: 1. clauses for information keep their outcome and never enter the combination; 2. with no class
 * claimed, clauses that depend on it are `not-reported`; 3. a set that holds unconfirmed limits gives a trial
 * judgement.
 */
export function judge(criterion: Criterion, evidence: Evidence, asClass?: string): Verdict {
  const judging = judgingOf(criterion, evidence, asClass)
  const judged = criterion.clauses.map((clause) => judgeClause(clause, judging))
  const outcome = combineSet(judged.filter((clause) => !clause.information).map((clause) => clause.outcome))
  const clauses = judged.map((clause) => withDeciding(clause, outcome))
  const release = outcome === 'pending' ? releaseOf(judging, clauses) : undefined
  const acceptedAs = judged.find((clause) => clause.acceptedAs !== undefined)?.acceptedAs
  return {
    criterion: criterion.id,
    edition: criterion.edition,
    class: criterion.classes.length === 0 ? null : (judging.lotClass ?? evidence.class),
    ...defined({ acceptedAs }),
    outcome,
    decidedBy: clauses.flatMap(innermostDeciding),
    reasons: verdictReasons(outcome, clauses, criterion),
    clauses,
    trial: isUnconfirmed(criterion),
    ...defined({ release }),
  }
}

/** One class of a set with the lot's verdict under it. */
export interface ClassVerdict {
  readonly class: string
  readonly verdict: Verdict
}

/**
 * The lot under every class of a set, in the set's order; empty for a set without classes.
 * Note: where the set lists its classes best first, the first verdict that meets names the best class met,
 * and those before it
 * say what stands in the way.
 */
export function judgeEveryClass(criterion: Criterion, evidence: Evidence): ClassVerdict[] {
  return criterion.classes.map((name) => ({ class: name, verdict: judge(criterion, evidence, name) }))
}

/** The best class met, null where none is, and the next better one with what stands in its way. */
export interface BestClass {
  readonly best: string | null
  readonly next: ClassVerdict | null
}

/** The best class that a lot meets; null where the set has no order of merit. */
export function bestClass(criterion: Criterion, evidence: Evidence): BestClass | null {
  if (!criterion.bestFirst || criterion.classes.length === 0) return null
  const every = judgeEveryClass(criterion, evidence)
  const place = every.findIndex(({ verdict }) => isMet(verdict.outcome))
  return { best: every[place]?.class ?? null, next: (place < 0 ? every.at(-1) : every[place - 1]) ?? null }
}

/** A new source that meets everything else is not held back by a history it cannot have yet. */
function isMet(outcome: Verdict['outcome']): boolean {
  return outcome === 'meets' || outcome === 'meets-by-approval' || outcome === 'insufficient-history'
}

/** Marks a clause whose outcome is the verdict's, and inside a group the members that share it. */
function withDeciding(clause: ClauseOutcome, outcome: Outcome): ClauseOutcome {
  if (clause.information || clause.outcome !== outcome) return clause
  const members =
    clause.clauses === undefined
      ? {}
      : { clauses: clause.clauses.map((member) => withDeciding(member, outcome)) }
  return { ...clause, decides: true, ...members }
}

function innermostDeciding(clause: ClauseOutcome): string[] {
  if (!clause.decides) return []
  return clause.clauses === undefined ? [clause.id] : clause.clauses.flatMap(innermostDeciding)
}
