/** The clauses of a certificate's verdicts, out of their groups. */
import { isNeutral } from '../../core/criteria/combining.ts'
import type { WordedClause } from '../../words/worded-verdict.ts'
import type { CertificateFacts } from '../shape/certificate-facts.ts'

/** A clause that holds no others, with the outermost group it belongs to. */
export interface GroupedClause {
  readonly clause: WordedClause
  readonly group: WordedClause | null
}

export function ungrouped(
  clauses: readonly WordedClause[],
  group: WordedClause | null = null,
): GroupedClause[] {
  return clauses.flatMap((clause) =>
    clause.clauses === undefined ? [{ clause, group }] : ungrouped(clause.clauses, group ?? clause),
  )
}

/** Whether a clause needs no result of this lot: its condition is false, or nobody asked for it. */
export function needsNoResult({ outcome }: Pick<WordedClause, 'outcome'>): boolean {
  return outcome === 'not-applicable' || outcome === 'not-invoked'
}

/**
 * Clauses of the governing criterion on the record rather than on a value: facts, documents, classes,
 * sampling.
 */
export function recordClauses(document: Pick<CertificateFacts, 'verdicts'>): WordedClause[] {
  return ungrouped(governingClauses(document))
    .map(({ clause }) => clause)
    .filter((clause) => clause.property === undefined && !isNeutral(clause.outcome))
}

export function governingClauses({ verdicts }: Pick<CertificateFacts, 'verdicts'>): readonly WordedClause[] {
  return verdicts[0]?.clauses ?? []
}
