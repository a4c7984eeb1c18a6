/** Signature, digest and permanent address of a certificate. */
import { date } from '../../words/dates.ts'
import { fullAddress, paths } from '../shape/addresses.ts'
import type { CertificateDocument } from '../shape/document.ts'
import type { Edition, LotEntry } from '../shape/edition.ts'

export interface CertificateFoot {
  /** null for a draft. */
  readonly signature: { readonly name: string; readonly particulars: string } | null
  readonly issued: boolean
  readonly digest: string | null
  /** Address in full, and without its scheme to be read; null where the site has none yet. */
  readonly address: { readonly href: string; readonly text: string } | null
}

export function certificateFoot(
  edition: Pick<Edition, 'address'>,
  { revisions }: Pick<LotEntry, 'revisions'>,
  document: Pick<CertificateDocument, 'certificate' | 'revision' | 'issued' | 'by'>,
): CertificateFoot {
  const { certificate, revision, issued, by } = document
  const address = fullAddress(edition, paths.certificate(certificate))
  return {
    signature:
      by === null || issued === null
        ? null
        : { name: by.name, particulars: `${by.function}, ${independenceWords(by)}; ${date(issued)}` },
    issued: issued !== null,
    digest: revisions.find(({ number }) => number === revision)?.digest ?? null,
    address: address === null ? null : { href: address, text: withoutScheme(address) },
  }
}

function independenceWords({ independent }: NonNullable<CertificateDocument['by']>): string {
  if (independent === null) return 'independence from production not recorded'
  return independent ? 'independent of production' : 'not independent of production'
}

function withoutScheme(address: string): string {
  return address.slice(address.indexOf('//') + 2)
}
