/** Tables of reference readings beside a study: columns by heading, rows by material. */
import { nearNames } from '../../diagnostics/near-names.ts'
import type { FileReport } from '../../diagnostics/report.ts'
import { shortened } from '../../schema/schema-words.ts'
import { headingRow, type TableRow, tableRows } from '../table-cells.ts'
import type { WrittenRow } from './reading-rows.ts'

/** Faults after which a table is read no further. */
const MOST_FAULTS = 20
/** More than any calorimeter writes that anybody wants to publish. */
const MOST_ROWS = 5000

export interface TableText {
  readonly text: string
  readonly report: FileReport
}

export interface MaterialRow extends WrittenRow {
  /** null where the table has no such column: its rows serve whoever names it. */
  readonly material: string | null
}

const NAMES = {
  duration: { x: 'time', example: 'time (h)' },
  temperature: { x: 'temperature', example: 'temperature (degC)' },
} as const

const VALUES = ['power', 'heat', 'mass']

/**
 * Rows of a table as written.
 * @param x what its first quantity is
 * @param materials codes that a row may name
 * @returns null for a table with a fault, which is told by its own lines
 */
export function materialRows(
  { text, report }: TableText,
  x: keyof typeof NAMES,
  materials: readonly string[],
): MaterialRow[] | null {
  const rows = tableRows(text, report)
  const heading = headingRow(rows, 'reading', report)
  if (heading === undefined) return null
  const columns = columnsOf(heading, x, report)
  if (columns === null) return null
  const found: MaterialRow[] = []
  for (const row of rows) {
    const { line, cells } = row
    if (cells.length !== heading.cells.length)
      report.atPosition(
        line,
        1,
        'schema',
        `this row has ${cells.length} cells, and the heading has ${heading.cells.length}`,
        'write a cell for each column',
      )
    else found.push(knownRow(materialRow(row, columns, report), row, { columns, materials, report }))
    if (MOST_FAULTS <= report.count()) break
    if (MOST_ROWS < found.length) {
      report.atPosition(
        line,
        1,
        'schema',
        `the table has more than ${MOST_ROWS} rows`,
        'keep every nth reading, so that the curve stays the same',
      )
      break
    }
  }
  return report.count() === 0 ? found : null
}

/** Tells of a row that names no material of the study: it would be read by nobody. */
function knownRow(
  row: MaterialRow,
  { line, cells }: TableRow,
  {
    columns,
    materials,
    report,
  }: { readonly columns: Columns; readonly materials: readonly string[]; readonly report: FileReport },
): MaterialRow {
  if (row.material !== null && !materials.includes(row.material))
    report.atPosition(
      line,
      cells[columns.material ?? 0]?.column ?? 1,
      'reference-unknown',
      `the study lists no material "${shortened(row.material)}"`,
      nearNames(row.material, materials) || 'list it in the study',
    )
  return row
}

interface Columns {
  readonly material: number | null
  readonly x: { readonly place: number; readonly unit: string }
  readonly y: { readonly place: number; readonly unit: string }
}

/** "power (mW)" as its name and unit. */
const HEADING = /^(.*?)\s*\(([^()]*)\)$/

function columnsOf({ line, cells }: TableRow, kind: keyof typeof NAMES, report: FileReport): Columns | null {
  const heads = cells.map(({ text }, place) => {
    const [, name = text, unit = ''] = HEADING.exec(text) ?? []
    return { name, unit, place }
  })
  const { x: xName, example } = NAMES[kind]
  const [x, y] = [heads.find(({ name }) => name === xName), heads.find(({ name }) => VALUES.includes(name))]
  const known = [xName, ...VALUES, 'material', 'note']
  const strange = heads.find(({ name }) => !known.includes(name))
  if (strange !== undefined) {
    report.atPosition(
      line,
      cells[strange.place]?.column ?? 1,
      'key-unknown',
      `the column "${strange.name}" is not known`,
      `use ${known.join(', ')}, and commas between the columns`,
    )
    return null
  }
  if (x === undefined || y === undefined) {
    report.atPosition(
      line,
      1,
      'key-missing',
      `the table has no column of ${x === undefined ? xName : VALUES.join(', ')}`,
      `head it ${x === undefined ? example : kind === 'duration' ? 'power (mW) or heat (J)' : 'mass (mg)'}`,
    )
    return null
  }
  const material = heads.find(({ name }) => name === 'material')
  return { material: material?.place ?? null, x, y }
}

function materialRow(
  { line, cells }: TableRow,
  { material, x, y }: Columns,
  report: FileReport,
): MaterialRow {
  const text = ({ place, unit }: Columns['x']) => `${cells[place]?.text ?? ''} ${unit}`.trim()
  return {
    material: material === null ? null : (cells[material]?.text ?? ''),
    ...{ x: text(x), y: text(y) },
    tell: (code, message, mend) => report.atPosition(line, cells[y.place]?.column ?? 1, code, message, mend),
  }
}
