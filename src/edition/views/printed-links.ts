/** Where the texts of a printed certificate lead on today's site. */
import { presentId } from '../../core/measure/lot-id.ts'
import { link, paths } from '../shape/addresses.ts'
import { mailAddress, telephoneAddress } from '../shape/contact-address.ts'
import type { Certificate, Edition } from '../shape/edition.ts'
import type { PageOf } from '../shape/printed-certificate.ts'

type Linking = Pick<Edition, 'address' | 'sources' | 'laboratories' | 'criteria' | 'lots'>

/**
 * The link to a page, of a lot under the id that it has today; null for one that the site no longer has. Of a
 * telephone number or a mail address what a program of the reader's takes.
 */
export type LinkTo = (page: PageOf | undefined) => string | null

export function linkTo(edition: Linking): LinkTo {
  const pages = {
    source: { known: edition.sources, path: paths.source },
    laboratory: { known: edition.laboratories, path: paths.laboratory },
    criterion: { known: edition.criteria, path: paths.criterion },
    certificate: { known: edition.lots, path: paths.certificate },
  } as const
  return (page) => {
    if (page === undefined) return null
    if (page.kind === 'telephone') return telephoneAddress(page.id)
    if (page.kind === 'mail') return mailAddress(page.id)
    const { known, path } = pages[page.kind]
    const id = page.kind === 'certificate' ? (presentId(edition.lots, page.id) ?? page.id) : page.id
    return known.has(id) ? link(edition, path(id)) : null
  }
}

/** Where each text of a certificate leads, by what it leads to: as plain data, which a page is drawn from. */
export type CertificateLinks = Readonly<Record<string, string | null>>

export function certificateLinks(edition: Linking, certificate: Certificate): CertificateLinks {
  const to = linkTo(edition)
  return Object.fromEntries([...pagesIn(certificate)].map((page) => [keyOf(page), to(page)]))
}

/** Throws a RangeError for a page that the certificate of these links does not lead to. */
export function linkAmong(links: CertificateLinks): LinkTo {
  return (page) => {
    if (page === undefined) return null
    const href = links[keyOf(page)]
    if (href === undefined) throw new RangeError(`linkAmong needs a page of its links, got ${keyOf(page)}`)
    return href
  }
}

function keyOf({ kind, id }: PageOf): string {
  return `${kind} ${id}`
}

/** Every member `to` of what a certificate prints, wherever it stands. */
function* pagesIn(value: unknown): Generator<PageOf> {
  if (typeof value !== 'object' || value === null) return
  for (const [name, member] of Object.entries(value)) {
    if (name === 'to' && isPage(member)) yield member
    else yield* pagesIn(member)
  }
}

function isPage(value: unknown): value is PageOf {
  return typeof value === 'object' && value !== null && 'kind' in value && 'id' in value
}
