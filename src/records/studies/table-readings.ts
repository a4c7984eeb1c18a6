/**
 * The readings of the table beside a study, row by row. Longer than most files: each fault that a table can have is worded
 * where it is found.
 */
import { isFault, KINDS, readQuantity } from '../../core/measure/units.ts'
import { type Measure, MEASURES, type StudyReading } from '../../core/studies/study-reading.ts'
import { nearNames } from '../diagnostics/near-names.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { Study } from '../schema/loaded-records.ts'
import { commaMend } from '../schema/quantity-faults.ts'
import { shortened } from '../schema/schema-words.ts'
import { below } from '../yaml/pointer.ts'
import {
  MEASURE_NAMES,
  PLACES,
  type PlaceName,
  readingOf,
  type Tell,
  type WrittenReading,
} from './study-readings.ts'
import { type Cell, headingRow, type TableRow, tableRows } from './table-cells.ts'

/** Faults after which a table is read no further: a wrong column spoils every row alike. */
const MOST_FAULTS = 60

/**
 * Readings of the table beside a study.
 * @param study with `table`
 * @param text of the CSV file
 * @param report takes the faults of the table, by its own lines
 * @param ofStudy takes those of what the study says of the table
 */
export function tableReadings(
  study: Study,
  text: string,
  report: FileReport,
  ofStudy: FileReport,
): StudyReading[] {
  const rows = tableRows(text, report)
  const heading = headingRow(rows, 'specimen', report)
  if (heading === undefined) return []
  const columns = columnsOf(study, heading, report, ofStudy)
  if (columns === null) return []
  const readings: StudyReading[] = []
  const seen = new Map<string, number>()
  for (const row of rows) {
    readings.push(...rowReadings(study, { row, columns, seen }, report))
    if (MOST_FAULTS <= report.count()) {
      report.atPosition(
        row.line,
        1,
        'schema',
        'the rest of the table was not read, since it has so many faults',
        'mend those above first',
      )
      break
    }
  }
  return readings
}

/** The columns by their headings; null where nothing can be read by them. */
function columnsOf(
  { table }: Study,
  { line, cells }: TableRow,
  report: FileReport,
  ofStudy: FileReport,
): Column[] | null {
  const renamed = new Map(Object.entries(table?.columns ?? {}))
  const headings = cells.map(({ text }) => text)
  for (const name of renamed.keys())
    if (!headings.includes(name))
      ofStudy.atKey(
        below('/table/columns', name),
        'reference-unknown',
        `the table has no column "${name}"`,
        nearNames(name, headings) || 'write the heading as it stands in the table',
      )
  const [only = ''] = headings
  const sign = headings.length === 1 ? [';', '\t'].find((one) => only.includes(one)) : undefined
  if (sign !== undefined) {
    report.atPosition(
      line,
      1,
      'schema',
      `the columns are separated by ${sign === ';' ? 'semicolons' : 'tabs'}; commas were expected`,
      'save the table with commas between the columns and points in the decimals',
    )
    return null
  }
  const tellAt = (column: number): Tell => {
    return (code, message, mend) => report.atPosition(line, column, code, message, mend)
  }
  const before = report.count()
  const columns = cells.map(({ text, column }) => columnOf(renamed.get(text) ?? text, tellAt(column)))
  columns.forEach((column, place) => {
    const first = columns.findIndex(
      (one) => 'place' in one && 'place' in column && one.place === column.place,
    )
    if ('place' in column && first < place)
      tellAt(cells[place]?.column ?? 1)(
        'duplicate-id',
        `a second column gives the ${column.place}`,
        'keep one of the two, or head the other note',
      )
  })
  if (!columns.some((column) => 'measure' in column) && report.count() === before)
    tellAt(1)(
      'key-missing',
      'no column of the table holds readings',
      'head one of them with a measure and its unit, such as load (kN) or resistivity (ohm m)',
    )
  return report.count() === before ? columns : null
}

interface RowToRead {
  readonly row: TableRow
  readonly columns: readonly Column[]
  /** Lines of the specimens that were read, by all that names one. */
  readonly seen: Map<string, number>
}

function rowReadings(study: Study, { row, columns, seen }: RowToRead, report: FileReport): StudyReading[] {
  const { line, cells } = row
  if (cells.length !== columns.length) {
    report.atPosition(
      line,
      1,
      'schema',
      `this row has ${cells.length} cells, and the heading has ${columns.length}`,
      'write a cell for each column, empty where there is no reading',
    )
    return []
  }
  const texts = rowTexts(cells, columns, study)
  const before = report.count()
  return columns.flatMap((column, place): StudyReading[] => {
    const cell = cells[place]?.text ?? ''
    // What is wrong about the row's other cells is told once, not again for each of its readings.
    if (!('measure' in column) || cell === '' || before < report.count()) return []
    const tellAt = (at: number): Tell => {
      return (code, message, mend) => report.atPosition(line, cells[at]?.column ?? 1, code, message, mend)
    }
    if (!isCellOfNumber(cell, column, tellAt(place))) return []
    const readings = readingOf(study, {
      texts,
      measure: column.measure,
      text: `${cell} ${column.unit}`,
      tell: (name) => {
        const own = columns.findIndex((other) => 'place' in other && other.place === name)
        return tellAt(own < 0 ? place : own)
      },
    })
    const [reading] = readings
    const specimen = cells[columns.findIndex((other) => 'specimen' in other)]?.text ?? ''
    if (reading === undefined || specimen === '') return readings
    const { material, condition, laboratory, batch, age } = reading
    const key = JSON.stringify([material, condition, laboratory, batch, age.hours, specimen, place])
    const first = seen.get(key)
    if (first !== undefined)
      tellAt(place)(
        'duplicate-id',
        `specimen ${specimen} of this batch has its ${column.measure} on line ${first} already`,
        'keep one of the two, or correct the specimen, batch or age',
      )
    seen.set(key, line)
    return first === undefined ? readings : []
  })
}

/** A cell under a heading with a unit: a number, one above a ceiling, or a bound, which is refused where it is read. */
function isCellOfNumber(
  cell: string,
  { measure, unit }: { readonly measure: Measure; readonly unit: string },
  tell: Tell,
): boolean {
  if (/^(>|above\b|<|below\b)?\s*[+-]?\d+(\.\d+)?$/.test(cell)) return true
  const comma = /^([+-]?\d+),(\d+)$/.exec(cell)
  if (comma !== null) {
    const [, whole, rest] = comma
    const readings = [`${whole}.${rest}`, ...(rest?.length === 3 ? [`${whole}${rest}`] : [])]
    tell(
      'quantity-comma',
      `found "${shortened(cell)}"; a number in ${unit} was expected`,
      commaMend(readings),
    )
  } else
    tell(
      'quantity',
      `found "${shortened(cell)}"; a number in ${unit} was expected`,
      `write the number alone${measure.startsWith('resist') ? `, > 900 for one above a ceiling of 900 ${unit}` : ''}; leave the cell empty where there is no reading`,
    )
  return false
}

type Column =
  | { readonly place: PlaceName }
  | { readonly measure: Measure; readonly unit: string }
  | { readonly specimen: true }
  | { readonly unread: true }

/** A column's heading: a place, or a measure with its unit. */
function columnOf(heading: string, tell: Tell): Column {
  const name = heading.trim()
  const place = PLACES.find((one) => one === name)
  if (place !== undefined) return { place }
  const [, measure = name, unit = ''] = /^(.*?)\s*\(([^()]*)\)$/.exec(name) ?? []
  const known = MEASURE_NAMES.find((one) => one === measure)
  if (name === 'specimen') return { specimen: true }
  // A remark is for those who read the table.
  if (name === 'note') return { unread: true }
  if (known === undefined) {
    const names = [...PLACES, ...MEASURE_NAMES, 'specimen', 'note']
    tell(
      'key-unknown',
      `the column "${name}" is not known`,
      nearNames(measure, names) || `name it under columns, or use one of ${names.join(', ')}`,
    )
    return { unread: true }
  }
  const read = readQuantity(`1 ${unit}`, MEASURES[known])
  if (isFault(read)) {
    const units = KINDS[MEASURES[known]].units.map(({ symbol }) => symbol)
    tell(
      'quantity-unit',
      unit === ''
        ? `the column "${known}" does not say the unit of its readings`
        : `the unit "${shortened(unit)}" of this column is not one of ${KINDS[MEASURES[known]].title}`,
      `head it ${units.map((symbol) => `${known} (${symbol})`).join(' or ')}`,
    )
    return { unread: true }
  }
  return { measure: known, unit }
}

function rowTexts(
  cells: readonly Cell[],
  columns: readonly Column[],
  { table }: Study,
): WrittenReading['texts'] {
  const { every = {}, materials = {} } = table ?? {}
  const own = columns.flatMap((column, place): [PlaceName, string][] => {
    const cell = cells[place]?.text ?? ''
    if (!('place' in column) || cell === '') return []
    const code = column.place === 'material' && Object.hasOwn(materials, cell) ? materials[cell] : undefined
    return [[column.place, code ?? cell]]
  })
  const all = PLACES.flatMap((name): [PlaceName, string][] => {
    const value = name === 'material' ? undefined : every[name]
    return value === undefined ? [] : [[name, String(value)]]
  })
  return Object.fromEntries([...all, ...own])
}
