/** How the record on the bench differs from the one that the site publishes. */
import type { Plain } from '../../records/edit/write-yaml.ts'
import { differentFields } from '../../records/form/compare-records.ts'
import { placeWords } from '../../records/form/place-words.ts'
import { plural } from '../../words/numbers.ts'
import { element, tableOf } from '../elements.ts'

/** @param published fetches the record that the site publishes */
export async function comparedWith(
  lot: string,
  own: Plain | undefined,
  published: () => Promise<Plain>,
): Promise<Node[]> {
  if (own === undefined) return [element('p', ['The text cannot be read: it cannot be compared.'])]
  try {
    return comparedElements(lot, own, await published())
  } catch {
    return [element('p', [`The site publishes no record of ${lot}, or it could not be fetched.`])]
  }
}

function comparedElements(lot: string, own: Plain, published: Plain): Node[] {
  const fields = differentFields(own, published)
  if (fields.length === 0)
    return [element('p', [`The record of ${lot} is the same as the published one, field by field.`])]
  return [
    element('p', [
      `${plural(fields.length, 'field differs', 'fields differ')} from the published record of ${lot}. What the site does not publish, such as consignees, stands here alone.`,
    ]),
    folded(
      fields.length,
      tableOf(
        'Fields that differ',
        ['Field', 'Here', 'Published'],
        fields.map(({ path, own: here, published: there }) => [
          placeWords(path, here === null ? published : own),
          here ?? '—',
          there ?? '—',
        ]),
      ),
    ),
  ]
}

/** Rows that may stand above the sheet without pushing it out of sight. */
const SHOWN = 8

function folded(rows: number, table: Node): Node {
  if (rows <= SHOWN) return table
  return element('details', [element('summary', [`Show the ${rows} fields`]), table])
}
