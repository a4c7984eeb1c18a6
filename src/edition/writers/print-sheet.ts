/** What stands in the margins of a source's printed pages; names come from records, so each source has a sheet. */
import { date } from '../../words/dates.ts'
import { MARGIN_CAUTION } from '../../words/source-report.ts'
import type { Edition } from '../shape/edition.ts'

const SMALL = 'font-size: 7.5pt; color: #444'

/**
 * Site and source above, date, caution and page number below.
 * @throws RangeError for a source that is not in the edition
 * Source: CSS Paged Media Module Level 3, section 4.2, for the boxes of the margins.
 */
export function printSheet({ site, asOf, sources }: Edition, id: string): string {
  const source = sources.get(id)
  if (source === undefined) throw new RangeError(`printSheet needs a source of the edition, got ${id}`)
  return `@page {
  margin: 14mm 13mm 15mm;
  @top-left { content: ${quoted(site.title)}; ${SMALL} }
  @top-right { content: ${quoted(source.name)}; ${SMALL} }
  @bottom-left { content: ${quoted(`Records as of ${date(asOf)}`)}; ${SMALL} }
  @bottom-center { content: ${quoted(MARGIN_CAUTION)}; ${SMALL} }
  @bottom-right { content: "page " counter(page) " of " counter(pages); ${SMALL} }
}
`
}

/** Every sign but plain letters, digits and spaces is written by its number, so that no name ends the string. */
function quoted(text: string): string {
  const escaped = (sign: string) => `\\${(sign.codePointAt(0) ?? 0).toString(16)} `
  return `"${text.replace(/[^A-Za-z0-9 ]/gu, escaped)}"`
}
