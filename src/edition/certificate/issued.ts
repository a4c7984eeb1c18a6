/** Reads issued documents back: bytes against digest, then JSON. */
import type { Finding } from '../../core/checks/finding.ts'
import { readIssued } from '../../records/files.ts'
import type { Records } from '../../records/load.ts'
import type { CertificateDocument } from '../shape/document.ts'
import { digestOf } from './digest.ts'

export type IssuedReading =
  | { readonly document: CertificateDocument; readonly finding?: Finding }
  | { readonly document: null; readonly finding: Finding }

/**
 * The issued document of a revision, with a blocking finding where it is missing, damaged or not the one
 * whose digest is on record.
 */
export function readIssuedDocument(
  records: Records,
  lot: string,
  revision: { number: number; digest: string },
): IssuedReading {
  const bytes = readIssued(records.contentDir, lot, revision.number)
  if (bytes === null) return { document: null, finding: missing(lot, revision.number, 'unreadable') }
  const digest = digestOf(bytes)
  const document = parse(bytes.toString('utf8'))
  if (document === null) return { document: null, finding: missing(lot, revision.number, 'no-document') }
  if (digest === revision.digest) return { document }
  return {
    document,
    finding: {
      id: `digest-differs/${lot}/${revision.number}`,
      severity: 'blocks',
      about: lot,
      reason: {
        code: 'digest-differs',
        params: { lot, revision: revision.number, recorded: revision.digest, document: digest },
      },
    },
  }
}

function parse(text: string): CertificateDocument | null {
  try {
    const value: unknown = JSON.parse(text)
    return typeof value === 'object' &&
      value !== null &&
      (value as { format?: unknown }).format === 1 &&
      'certificate' in value
      ? (value as CertificateDocument)
      : null
  } catch {
    return null
  }
}

function missing(lot: string, revision: number, found: 'unreadable' | 'no-document'): Finding {
  return {
    id: `issued-document-missing/${lot}/${revision}`,
    severity: 'blocks',
    about: lot,
    reason: { code: 'issued-document-missing', params: { lot, revision, found } },
  }
}
