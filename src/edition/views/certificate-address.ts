/** Digest and permanent address of a certificate, which its own document cannot hold. */
import { fullAddress, paths } from '../shape/addresses.ts'
import type { Edition } from '../shape/edition.ts'

export interface CertificateAddress {
  /** Address in full, and without its scheme to be read. */
  readonly href: string
  readonly text: string
}

/** @returns null where the site has no address yet */
export function certificateAddress(
  edition: Pick<Edition, 'address'>,
  lot: string,
): CertificateAddress | null {
  const href = fullAddress(edition, paths.certificate(lot))
  return href === null ? null : { href, text: href.slice(href.indexOf('//') + 2) }
}
