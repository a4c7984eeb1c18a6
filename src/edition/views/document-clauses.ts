/** The clauses of a document's verdicts, out of their groups. */
import { isNeutral } from '../../core/criteria/combining.ts'
import { setName } from '../../core/criteria/criterion.ts'
import type { Outcome } from '../../core/criteria/outcome.ts'
import { storedSentence } from '../../words/stored-text.ts'
import type { CertificateDocument, DocumentResult } from '../shape/document.ts'

export type DocumentVerdict = CertificateDocument['verdicts'][number]
export type DocumentClause = DocumentVerdict['clauses'][number]

/** A clause that holds no others, with the outermost group it belongs to. */
export interface GroupedClause {
  readonly clause: DocumentClause
  readonly group: DocumentClause | null
}

export function ungrouped(
  clauses: readonly DocumentClause[],
  group: DocumentClause | null = null,
): GroupedClause[] {
  return clauses.flatMap((clause) =>
    clause.clauses === undefined ? [{ clause, group }] : ungrouped(clause.clauses, group ?? clause),
  )
}

/** Whether a clause needs no result of this lot: its condition is false, or nobody asked for it. */
export function needsNoResult({ outcome }: Pick<DocumentClause, 'outcome'>): boolean {
  return outcome === 'not-applicable' || outcome === 'not-invoked'
}

/**
 * Clauses of the governing criterion on the record rather than on a value: facts, documents, classes,
 * sampling.
 */
export function recordClauses(document: Pick<CertificateDocument, 'verdicts'>): DocumentClause[] {
  return ungrouped(governingClauses(document))
    .map(({ clause }) => clause)
    .filter((clause) => clause.property === undefined && !isNeutral(clause.outcome))
}

export function governingClauses({
  verdicts,
}: Pick<CertificateDocument, 'verdicts'>): readonly DocumentClause[] {
  return verdicts[0]?.clauses ?? []
}

/** What a set makes of a result, as the end of its working. */
export interface Judgement {
  /** The set. */
  readonly label: string
  readonly text: string
  readonly outcome: Outcome
  /** The doubt of it and the uncertainty that this rests on. */
  readonly note: string | null
}

/** What every set makes of a result: rounding, limit and outcome. */
export function judgements(
  { verdicts, criteria }: Pick<CertificateDocument, 'verdicts' | 'criteria'>,
  result: Pick<DocumentResult, 'key'>,
): Judgement[] {
  return verdicts.flatMap((verdict, index) => {
    const criterion = criteria[index]
    return ungrouped(verdict.clauses)
      .filter(({ clause }) => clause.result === result.key && !isNeutral(clause.outcome))
      .map(({ clause }) => ({
        label: criterion === undefined ? verdict.criterion : setName(criterion),
        text: storedSentence(clause.reason),
        outcome: clause.outcome,
        note: doubtNote(clause),
      }))
  })
}

function doubtNote({ doubt, uncertainty }: DocumentClause): string | null {
  const parts = [
    doubt,
    uncertainty && `standard uncertainty ${uncertainty.u.toFixed(1)}: ${uncertainty.basis}`,
  ].filter((part) => part !== undefined)
  return parts.length === 0 ? null : storedSentence(parts.join('; '))
}
