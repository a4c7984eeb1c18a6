/** The readings of a study, from its file or from the table beside it, with every fault of theirs. */
import { csvParseRows } from 'd3'
import { type Age, ageIn } from '../../core/measure/age.ts'
import { type Moment, momentIn } from '../../core/measure/moment.ts'
import { isFault, readQuantity } from '../../core/measure/units.ts'
import { CONTROL, type Measure, MEASURES, type StudyReading } from '../../core/studies/study-reading.ts'
import { nearNames } from '../diagnostics/near-names.ts'
import type { FileReport } from '../diagnostics/report.ts'
import { quantityFault } from '../schema/quantity-faults.ts'
import type { Study } from '../schema/loaded-records.ts'

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

/**
 * Readings of the table beside a study.
 * @param study with `table`
 * @param text of the CSV file
 * @param report takes the faults of the table, by its own lines
 */
export function tableReadings(study: Study, text: string, report: FileReport): StudyReading[] {
  const { columns: renamed = {}, every = {} } = study.table ?? {}
  const [headings = [], ...rows] = csvParseRows(text.replace(/^\uFEFF/, ''))
  const tellAt = (line: number, place: number): Tell => {
    return (code, message, mend) => report.atPosition(line, columnAt(text, line, place), code, message, mend)
  }
  const columns = headings.map((heading, place) =>
    columnOf(renamed[heading.trim()] ?? heading, tellAt(1, place)),
  )
  if (headings.length > 0 && !columns.some((column) => 'measure' in column))
    report.atPosition(
      1,
      1,
      'key-missing',
      'no column of the table holds readings',
      `head one of them with a measure and its unit, such as load (kN) or resistivity (ohm m)`,
    )
  return rows.flatMap((cells, row) => {
    const line = row + 2
    if (cells.every((cell) => cell.trim() === '')) return []
    if (cells.length !== headings.length) {
      report.atPosition(
        line,
        1,
        'schema',
        `this row has ${cells.length} cells, and the heading has ${headings.length}`,
        'write a cell for each column, empty where there is no reading',
      )
      return []
    }
    const texts = rowTexts(cells, columns, every)
    return columns.flatMap((column, place): StudyReading[] => {
      const cell = cells[place]?.trim() ?? ''
      if (!('measure' in column) || cell === '') return []
      return readingOf(study, {
        texts,
        measure: column.measure,
        text: `${cell} ${column.unit}`,
        tell: (name) => {
          const own =
            name === null ? place : columns.findIndex((other) => 'place' in other && other.place === name)
          return tellAt(line, Math.max(0, own))
        },
      })
    })
  })
}

type Column =
  | { readonly place: PlaceName }
  | { readonly measure: Measure; readonly unit: string }
  | { readonly unread: true }

/** A column's heading: a place, or a measure with its unit. */
function columnOf(heading: string, tell: Tell): Column {
  const name = heading.trim()
  const place = PLACES.find((one) => one === name)
  if (place !== undefined) return { place }
  const [, measure = name, unit = ''] = /^(.*?)\s*\(([^()]*)\)$/.exec(name) ?? []
  const known = MEASURE_NAMES.find((one) => one === measure)
  // Specimens are counted, not named; a remark is for those who read the table.
  if (known === undefined && (name === 'specimen' || name === 'note')) return { unread: true }
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
    const { code, mend } = quantityFault(read, [MEASURES[known]])
    tell(
      code,
      `the column "${name}" does not say the unit of its readings`,
      mend.replace(/^write 1 /, 'write in brackets '),
    )
    return { unread: true }
  }
  return { measure: known, unit }
}

function rowTexts(
  cells: readonly string[],
  columns: readonly Column[],
  every: NonNullable<NonNullable<Study['table']>['every']>,
): WrittenReading['texts'] {
  const own = columns.flatMap((column, place): [PlaceName, string][] => {
    const cell = cells[place]?.trim() ?? ''
    return 'place' in column && cell !== '' ? [[column.place, cell]] : []
  })
  const all = PLACES.flatMap((name): [PlaceName, string][] => {
    const value = name === 'material' ? undefined : every[name]
    return value === undefined ? [] : [[name, String(value)]]
  })
  return Object.fromEntries([...all, ...own])
}

/** A reading from its texts; none where one of them is at fault. */
function readingOf(study: Study, { texts, measure, text, tell }: WrittenReading): StudyReading[] {
  const material = known('material', texts.material, [...Object.keys(study.materials), CONTROL], tell)
  const conditions = study.kind === 'ruggedness' ? study.runs : study.conditions
  const condition = known('condition', texts.condition, Object.keys(conditions ?? {}), tell)
  const laboratories = Object.keys(study.laboratories ?? { [ONE]: {} })
  const laboratory = known('laboratory', texts.laboratory, laboratories, tell)
  const age = ageOf(texts.age, tell)
  const tested = dayOf(texts.tested, tell)
  const value = readValue(text, measure, tell)
  if (material === null || condition === null || laboratory === null || age === null || value === null)
    return []
  return [
    {
      ...{ material, condition, laboratory, age, measure, ...value },
      batch: texts.batch ?? ONE,
      ...(tested === undefined ? {} : { tested }),
    },
  ]
}

/** A code that the study lists; where it lists only one, a reading need not say it. */
function known(
  name: PlaceName,
  text: string | undefined,
  codes: readonly string[],
  tell: WrittenReading['tell'],
): string | null {
  const only = codes.length === 1 ? codes[0] : undefined
  const code = text ?? only
  if (code === undefined) {
    tell(null)(
      'key-missing',
      `this reading does not say its ${name}`,
      `add the ${name}: ${codes.slice(0, 12).join(', ')}`,
    )
    return null
  }
  if (codes.includes(code)) return code
  tell(name)(
    'reference-unknown',
    `the study lists no ${name} "${code}"`,
    nearNames(code, codes) || 'list it in the study',
  )
  return null
}

function ageOf(text: string | undefined, tell: WrittenReading['tell']): Age | null {
  if (text === undefined) {
    tell(null)('key-missing', 'this reading does not say its age', 'add the age, such as 28 d')
    return null
  }
  // A column of plain numbers is days, as nearly every table of strengths has it.
  const age = ageIn(/^\d+$/.test(text) ? `${text} d` : text)
  if (age === null) tell('age')('age-unknown', `"${text}" is not an age`, 'write days or hours: 28 d, 72 h')
  return age
}

function dayOf(text: string | undefined, tell: WrittenReading['tell']): Moment | undefined {
  if (text === undefined) return undefined
  const day = momentIn(text, 0)
  if (day === null)
    tell('tested')('date', `"${text}" is not a calendar date`, 'write year-month-day: 2026-03-11')
  return day ?? undefined
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

/** Where a cell begins, from 1; cells that hold a comma are few, and their line is what matters. */
function columnAt(text: string, line: number, place: number): number {
  const row = text.split('\n', line)[line - 1] ?? ''
  return row
    .split(',')
    .slice(0, place)
    .reduce((offset, cell) => offset + cell.length + 1, 1)
}
