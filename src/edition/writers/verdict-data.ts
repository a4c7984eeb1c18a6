/** A verdict as the check report and data files give it: in words, and its reasons as codes beside them. */
import { everyClauseOutcome, type ClauseOutcome, type Verdict } from '../../core/criteria/verdict.ts'
import type { WordedClause } from '../../words/worded-verdict.ts'
import { type NamedInVerdicts, wordsOfVerdict } from '../shape/verdict-words.ts'

export function verdictData(edition: NamedInVerdicts, verdict: Verdict): Record<string, unknown> {
  const worded = wordsOfVerdict(edition, verdict)
  const judged = new Map([...everyClauseOutcome(verdict.clauses)].map((clause) => [clause.id, clause]))
  return {
    ...worded,
    reasonCodes: verdict.reasons,
    clauses: worded.clauses.map((clause) => clauseData(clause, judged)),
  }
}

function clauseData(
  clause: WordedClause,
  judged: ReadonlyMap<string, ClauseOutcome>,
): Record<string, unknown> {
  return {
    ...clause,
    reasonCodes: judged.get(clause.id)?.reasons ?? [],
    ...(clause.clauses === undefined
      ? {}
      : { clauses: clause.clauses.map((member) => clauseData(member, judged)) }),
  }
}
