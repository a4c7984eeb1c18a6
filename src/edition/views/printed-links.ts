/** Where the texts of a printed certificate lead on today's site. */
import { link, paths } from '../shape/addresses.ts'
import type { Edition } from '../shape/edition.ts'
import type { PageOf } from '../shape/printed-certificate.ts'

type Linking = Pick<Edition, 'address' | 'sources' | 'laboratories' | 'criteria' | 'lots'>

/** The link to a page; null for one that the site no longer has. */
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
    const { known, path } = pages[page.kind]
    return known.has(page.id) ? link(edition, path(page.id)) : null
  }
}
