/** A lot under a criterion: every clause judged, the outcomes combined, the clauses that decided named. */
import { type Criterion, isUnconfirmed } from './criterion.ts'
import type { Evidence } from './evidence.ts'
import { judgeClause } from './judge-group.ts'
import { releaseCondition } from './judge-release.ts'
import { combineSet } from './outcomes.ts'
import type { ClauseOutcome, Outcome, Verdict } from './verdict.ts'
import { verdictReasons } from './verdict-sentence.ts'

export type { Evidence }

/**
 * Judges one lot under one set.
 * @param criterion compiled set, one edition
 * @param evidence what was known of the lot on the date of the judgement
 * Notes: 1. clauses for information keep their outcome and never enter the combination; 2. with no class claimed, clauses that
 * depend on it are `not-reported`; 3. a set that holds unconfirmed limits gives a trial judgement.
 */
export function judge(criterion: Criterion, evidence: Evidence): Verdict {
  const judged = criterion.clauses.map((clause) => judgeClause(clause, criterion, evidence))
  const outcome = combineSet(judged.filter((clause) => !clause.information).map((clause) => clause.outcome))
  const clauses = judged.map((clause) => withDeciding(clause, outcome))
  const release = outcome === 'pending' ? releaseCondition(criterion, evidence, clauses) : undefined
  return {
    criterion: criterion.id, edition: criterion.edition, class: criterion.classes.length === 0 ? null : evidence.class, outcome,
    decidedBy: clauses.flatMap(innermostDeciding), reasons: verdictReasons(outcome, clauses, criterion), clauses, trial: isUnconfirmed(criterion),
    ...(release === undefined ? {} : { release }),
  }
}

/** Marks a clause whose outcome is the verdict's, and inside a group the members that share it. */
function withDeciding(clause: ClauseOutcome, outcome: Outcome): ClauseOutcome {
  if (clause.information || clause.outcome !== outcome) return clause
  const members = clause.clauses === undefined ? {} : { clauses: clause.clauses.map((member) => withDeciding(member, outcome)) }
  return { ...clause, decides: true, ...members }
}

function innermostDeciding(clause: ClauseOutcome): string[] {
  if (!clause.decides) return []
  return clause.clauses === undefined ? [clause.id] : clause.clauses.flatMap(innermostDeciding)
}
