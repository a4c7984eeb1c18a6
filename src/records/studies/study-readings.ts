/** The readings of a study, from its file or from the table beside it, with every fault of theirs. */
import { type Age, ageIn } from '../../core/measure/age.ts'
import { isInCalendar, type Moment, momentIn } from '../../core/measure/moment.ts'
import { isFault, KINDS, readQuantity } from '../../core/measure/units.ts'
import { CONTROL, type Measure, MEASURES, type StudyReading } from '../../core/studies/study-reading.ts'
import { nearNames } from '../diagnostics/near-names.ts'
import type { FileReport } from '../diagnostics/report.ts'
import { commaMend, quantityFault } from '../schema/quantity-faults.ts'
import type { Study } from '../schema/loaded-records.ts'
import { shortened } from '../schema/schema-words.ts'
import { below } from '../yaml/pointer.ts'
import { type Cell, type TableRow, tableRows } from './table-cells.ts'

/** Reports a fault of a value: where it stands, only the reader of that place knows. */
type Tell = (
  code: 'quantity' | 'key-missing' | 'schema' | Parameters<FileReport['at']>[1],
  message: string,
  mend: string,
) => void

/** One reading as text, its places filled from what holds for all. */
interface WrittenReading {
  readonly texts: Readonly<Partial<Record<PlaceName, string>>>
  readonly measure: Measure
  readonly text: string
  readonly tell: (name: PlaceName | null) => Tell
}

const PLACES = ['material', 'condition', 'laboratory', 'batch', 'age', 'tested'] as const
type PlaceName = (typeof PLACES)[number]

const MEASURE_NAMES = Object.keys(MEASURES) as Measure[]

/** Where a reading says no laboratory or batch, or a study has one condition alone. */
const ONE = '1'

/**
 * Readings of a study's own file.
 * @param study with `readings`
 * @param report takes the faults
 */
export function ownReadings(study: Study, report: FileReport): StudyReading[] {
  return (study.readings ?? []).flatMap((entry, index) =>
    MEASURE_NAMES.flatMap((measure) =>
      (entry[measure] ?? []).flatMap((text, specimen) =>
        readingOf(study, {
          texts: {
            ...entryTexts(entry),
          },
          measure,
          text,
          tell: (name) => (code, message, mend) =>
            report.at(
              name === null ? `/readings/${index}/${measure}/${specimen}` : `/readings/${index}/${name}`,
              code,
              message,
              mend,
            ),
        }),
      ),
    ),
  )
}

function entryTexts(entry: NonNullable<Study['readings']>[number]): WrittenReading['texts'] {
  return Object.fromEntries(
    PLACES.flatMap((name) => (entry[name] === undefined ? [] : [[name, String(entry[name])]])),
  )
}

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
  const heading = rows.next().value
  if (heading === undefined) {
    if (report.count() === 0)
      report.atPosition(
        1,
        1,
        'yaml-empty',
        'the table is empty',
        'write a heading, and a row for each specimen',
      )
    return []
  }
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

/** A reading from its texts; none where one of them is at fault. */
function readingOf(study: Study, { texts, measure, text, tell }: WrittenReading): StudyReading[] {
  const material = known(
    { name: 'material' },
    texts.material,
    [...Object.keys(study.materials), CONTROL],
    tell,
  )
  const conditions = study.kind === 'ruggedness' ? study.runs : study.conditions
  const word = study.kind === 'ruggedness' ? 'run' : 'condition'
  const condition = known({ name: 'condition', word }, texts.condition, Object.keys(conditions ?? {}), tell)
  const laboratories = Object.keys(study.laboratories ?? { [ONE]: {} })
  const laboratory = known({ name: 'laboratory' }, texts.laboratory, laboratories, tell)
  const batch = batchOf(texts.batch, tell)
  const age = ageOf(texts.age, tell)
  const tested = dayOf(texts.tested, tell)
  const value = readValue(text, measure, tell)
  if (material === null || condition === null || laboratory === null || batch === null) return []
  if (age === null || tested === null || value === null) return []
  if (material === CONTROL && (measure === 'strength-activity-index' || measure === 'resistivity-index')) {
    tell(null)(
      'schema',
      'the control mortar has no index: indices are relative to it',
      'take the reading out',
    )
    return []
  }
  return [
    {
      ...{ material, condition, laboratory, batch, age, measure, ...value },
      ...(tested === undefined ? {} : { tested }),
    },
  ]
}

/** A code that the study lists; where it lists only one, a reading need not say it. */
function known(
  { name, word = name }: { readonly name: PlaceName; readonly word?: string },
  text: string | undefined,
  codes: readonly string[],
  tell: WrittenReading['tell'],
): string | null {
  const only = codes.length === 1 ? codes[0] : undefined
  const code = text ?? only
  if (code === undefined) {
    tell(name)(
      'key-missing',
      `this reading does not say its ${word}`,
      codes.length === 0
        ? `list a ${word} in the study first`
        : `add the ${word}: ${codes.slice(0, 12).join(', ')}`,
    )
    return null
  }
  if (codes.includes(code)) return code
  tell(name)(
    'reference-unknown',
    `the study lists no ${word} "${shortened(code)}"`,
    nearNames(code, codes) || 'list it in the study',
  )
  return null
}

const CODE = /^[A-Za-z0-9][A-Za-z0-9-]{0,15}$/

function batchOf(text: string | undefined, tell: WrittenReading['tell']): string | null {
  if (text === undefined) return ONE
  if (CODE.test(text)) return text
  tell('batch')(
    'schema',
    `"${shortened(text)}" is not a code of a batch`,
    'write at most 16 letters, digits and hyphens, a letter or digit first: 2a',
  )
  return null
}

/** Nobody keeps mortar for longer, and beyond it a number is a slip. */
const OLDEST_HOURS = 50 * 366 * 24

function ageOf(text: string | undefined, tell: WrittenReading['tell']): Age | null {
  if (text === undefined) {
    tell('age')('key-missing', 'this reading does not say its age', 'add the age, such as 28 d')
    return null
  }
  // A column of plain numbers is days, as nearly every table of strengths has it.
  const age = ageIn(/^\d+$/.test(text) ? `${Number(text)} d` : text)
  if (age !== null && 0 < age.hours && age.hours <= OLDEST_HOURS) return age
  tell('age')('age-unknown', `"${shortened(text)}" is not an age`, 'write days or hours: 28 d, 72 h')
  return null
}

function dayOf(text: string | undefined, tell: WrittenReading['tell']): Moment | undefined | null {
  if (text === undefined) return undefined
  const day = /^(19|2\d)\d{2}-\d{2}-\d{2}$/.test(text) ? momentIn(text) : null
  if (day !== null && isInCalendar(day)) return day
  tell('tested')('date', `"${shortened(text)}" is not a calendar date`, 'write year-month-day: 2026-03-11')
  return null
}

function readValue(
  text: string,
  measure: Measure,
  tell: WrittenReading['tell'],
): { readonly value: number; readonly above: boolean } | null {
  const [, sign = '', rest = text] = /^\s*(>|above\b)?\s*(.*)$/.exec(text) ?? []
  const read = readQuantity(rest, MEASURES[measure])
  if (isFault(read)) {
    const { code, message, mend } = quantityFault(read, [MEASURES[measure]])
    tell(null)(code, message, mend)
    return null
  }
  if (read.censored !== undefined) {
    tell(null)(
      'quantity-bound',
      `"${text}" is a bound, and a study computes with its readings`,
      'write the reading itself',
    )
    return null
  }
  if (read.value <= 0) {
    tell(null)('quantity-range', `"${text}" is not above zero`, 'check the reading')
    return null
  }
  return { value: read.value, above: sign !== '' }
}
