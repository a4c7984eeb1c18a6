/** The head of a certificate: what it is, which one, in which state. */
import { date } from '../../words/dates.ts'
import { kindWords } from '../../words/material-kinds.ts'
import { sentence } from '../../words/sentences.ts'
import type { CertificateDocument } from '../shape/document.ts'

export interface CertificateHead {
  readonly lot: string
  readonly material: string
  readonly certificate: string
  readonly revision: string
  readonly state: CertificateDocument['state'] | 'superseded'
  readonly issued: string
  readonly replaces: string | null
  readonly reason: string | null
}

/** @param superseded a later revision is in force, which no document can say of itself */
export function certificateHead(
  document: Pick<
    CertificateDocument,
    'certificate' | 'revision' | 'state' | 'issued' | 'replaces' | 'reason' | 'lot' | 'source'
  >,
  { superseded }: { readonly superseded: boolean },
): CertificateHead {
  const { revision, issued, replaces, reason, source } = document
  return {
    lot: document.lot.number,
    material: `${sentence(kindWords(source.kind))}, ${source.name}`,
    certificate: document.certificate,
    revision: revision === null ? 'none, never issued' : String(revision),
    state: superseded ? 'superseded' : document.state,
    issued: issued === null ? 'not issued' : date(issued),
    replaces: replaces === null ? null : `revision ${replaces.revision} of ${date(replaces.date)}`,
    reason: reason === null ? null : sentence(reason),
  }
}
