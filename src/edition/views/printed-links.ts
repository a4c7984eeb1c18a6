/** Where the texts of a printed certificate lead on today's site. */
import { presentId } from '../../core/measure/lot-id.ts'
import { link, paths } from '../shape/addresses.ts'
import { mailAddress, telephoneAddress } from '../shape/contact-address.ts'
import type { Edition } from '../shape/edition.ts'
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
