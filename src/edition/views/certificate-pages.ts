/** Addresses of certificates: of lots, of their earlier revisions, and earlier ids that lead on. */
import { nameInSource, sourceOf } from '../../core/measure/lot-id.ts'
import type { Edition } from '../shape/edition.ts'

/** One page under lots/. */
export interface CertificateAddress {
  readonly source: string
  readonly lot: string
  /** The lot that the page shows or leads to. */
  readonly id: string
}

/** A page for each lot, and one for each earlier id that leads to it. */
export function certificateAddresses({ lots }: Pick<Edition, 'lots'>): CertificateAddress[] {
  return [...lots.values()].flatMap(({ id, formerly }) => [id, ...formerly].map((own) => address(own, id)))
}

/** A page for each lot under its own id. */
export function lotAddresses({ lots }: Pick<Edition, 'lots'>): CertificateAddress[] {
  return [...lots.keys()].map((id) => address(id, id))
}

/**
 * The newest revision is the certificate page itself; at an earlier id of a lot every revision leads to the
 * lot.
 */
export function revisionAddresses({
  lots,
}: Pick<Edition, 'lots'>): (CertificateAddress & { readonly number: number })[] {
  return [...lots.values()].flatMap(({ id, formerly, earlier }) =>
    earlier.flatMap((number) => [id, ...formerly].map((own) => ({ ...address(own, id), number }))),
  )
}

function address(own: string, id: string): CertificateAddress {
  return { source: sourceOf(own), lot: nameInSource(own), id }
}
