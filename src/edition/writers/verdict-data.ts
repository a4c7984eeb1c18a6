/** A verdict as the check report and data files give it: in words, and its reasons as codes beside them. */
import { everyClauseOutcome, type ClauseOutcome, type Verdict } from '../../core/criteria/verdict.ts'
import type { WordedClause } from '../../words/worded-verdict.ts'
import type { LotEntry } from '../shape/edition.ts'
import { listedLot } from '../shape/listing.ts'
import { standingOf } from '../shape/standing.ts'
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

/** A lot's verdict with the standing that it gives the lot, so that its outcome is not read without the state. */
export function lotVerdictData(
  edition: NamedInVerdicts,
  lot: LotEntry,
  verdict: Verdict,
): Record<string, unknown> {
  const standing = standingOf(edition, listedLot(lot), verdict.criterion).text
  return { ...verdictData(edition, verdict), standing }
}

function clauseData(
  clause: WordedClause,
  judged: ReadonlyMap<string, ClauseOutcome>,
): Record<string, unknown> {
  const outcome = judged.get(clause.id)
  return {
    ...clause,
    u: outcome?.uncertainty?.u ?? null,
    degreesOfFreedom: outcome?.uncertainty?.df ?? null,
    reasonCodes: outcome?.reasons ?? [],
    ...(clause.clauses === undefined
      ? {}
      : { clauses: clause.clauses.map((member) => clauseData(member, judged)) }),
  }
}
