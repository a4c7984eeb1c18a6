/** Which column of a sheet a map means. */
import { nearNames } from '../diagnostics/near-names.ts'
import { shortened } from '../schema/schema-words.ts'
import { headingText, type SheetView } from './sheet-view.ts'

/** What is told of a place in the file. */
export interface Said {
  readonly message: string
  readonly mend: string
}

/** The column with a heading, or why it cannot be told. */
export function columnAt(heading: string, view: SheetView): number | Said {
  if (heading.startsWith('@')) {
    const at = view.columnNamed(heading.slice(1))
    return (
      at ?? {
        message: `"${heading}" names no column`,
        mend: 'write @ and the letter of the column, such as @D',
      }
    )
  }
  const wanted = headingText(heading)
  const found = [...view.headings].filter(([, text]) => text === wanted).map(([column]) => column)
  const [first] = found
  if (first === undefined)
    return {
      message: `there is no heading "${shortened(wanted)}" here`,
      mend:
        nearNames(wanted, view.headings.values()) ||
        'write the heading as it stands in the sheet, and under headings the row that it stands in',
    }
  if (found.length === 1) return first
  const names = found.map((column) => `@${view.columnName(column)}`)
  return {
    message: `${found.length} columns have the heading "${shortened(wanted)}"`,
    mend: `name them in the map by ${names.join(' and ')}`,
  }
}
