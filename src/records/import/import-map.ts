/** The map of an import: which columns of a spreadsheet give what. Read and checked like a record. */
import { isPropertyKey, property } from '../../core/measure/properties.ts'
import { tradeWord } from '../../core/measure/trade-words.ts'
import { countWords } from '../../words/numbers.ts'
import { nearNames } from '../diagnostics/near-names.ts'
import type { FileReport } from '../diagnostics/report.ts'
import { fieldMend } from '../schema/field-names.ts'
import { reportSchemaErrors } from '../schema/schema-faults.ts'
import { validatorOf } from '../schema/schemas.ts'
import { tradeMend } from '../schema/trade-names.ts'
import { reportYaml } from '../yaml/load-yaml.ts'
import { parseYaml } from '../yaml/parse-yaml.ts'
import { below } from '../yaml/pointer.ts'
import type { CsvForm } from './csv.ts'
import { cellForm, readCell } from './cell-value.ts'
import { CAST_AND_AGE, fieldNames, fieldOf, type TableKind } from './fields.ts'

/** How the texts of cells are read. */
export interface WrittenForm {
  readonly numbers?: {
    readonly decimal?: 'point' | 'comma'
    readonly thousands?: 'none' | 'point' | 'comma' | 'space' | 'apostrophe'
  }
  readonly dates?: 'day-month-year' | 'month-day-year'
  readonly blank?: readonly string[]
  readonly 'stands-for'?: Readonly<Record<string, string>>
}

/** What a column gives. */
export interface Column extends WrittenForm {
  readonly to: string
  readonly unit?: string
  readonly age?: string
  readonly condition?: string
  readonly specimen?: string
  readonly for?: 'strength' | 'resistivity'
  readonly basis?: string
  readonly method?: string
  readonly 'standard-uncertainty'?: string
  readonly pattern?: string
  readonly prefix?: string
  readonly digits?: number
  readonly fill?: 'down'
}

/** Texts of a cell by the heading of its column. */
type Texts = Readonly<Record<string, string | readonly string[]>>
type Constants = Readonly<Record<string, string | number>>

export interface MappedTable extends WrittenForm {
  readonly holds: TableKind
  readonly sheet?: string
  readonly 'sheet-name'?: string
  readonly headings?: number | readonly number[]
  readonly 'fill-headings'?: 'yes' | 'no'
  readonly 'records-in'?: 'rows' | 'columns'
  readonly rows?: { readonly from?: number; readonly to?: number }
  readonly every?: Constants
  readonly cells?: Readonly<Record<string, string | Column>>
  readonly block?: string
  readonly only?: Texts
  readonly except?: Texts
  readonly planned?: readonly string[]
  readonly columns: Readonly<Record<string, string | Column>>
}

export interface ImportMap extends CsvForm, WrittenForm {
  readonly every?: Constants
  readonly 'not-read'?: readonly string[]
  readonly tables: readonly MappedTable[]
}

/** Said of a column that gives nothing. */
export const IGNORED = 'ignore'
/** Said of a column by a proposed map that leaves the choice to a person. */
export const UNDECIDED = 'undecided'

/** A column as a mapping, however it is written. */
export function columnOf(column: string | Column): Column {
  return typeof column === 'string' ? { to: column } : column
}

/** Fields in braces. */
export const IN_BRACES = /\{([a-z-]+)\}/g

/**
 * The map; undefined where anything in it is at fault.
 * @param report takes the faults, by line and column of the map
 */
export function readImportMap(text: string, report: FileReport): ImportMap | undefined {
  const yaml = parseYaml(text)
  if ('fault' in yaml) {
    reportYaml(yaml.fault, text, report)
    return undefined
  }
  const validate = validatorOf('import-map')
  if (!validate(yaml.value)) {
    reportSchemaErrors(validate.errors ?? [], report)
    return undefined
  }
  const map = yaml.value as ImportMap
  map.tables.forEach((table, index) => {
    checkTable(table, `/tables/${index}`, report)
  })
  // A constant of the whole map serves the tables that have such a field.
  for (const name of Object.keys(map.every ?? {}))
    if (!map.tables.some(({ holds }) => fieldOf(holds, name) !== undefined))
      reportField(
        name,
        { pointer: below('/every', name), kinds: map.tables.map(({ holds }) => holds) },
        report,
      )
  map.tables.forEach((table, index) => {
    checkConstants(map.every, table, { at: '/every', report })
    checkConstants(table.every, table, { at: `/tables/${index}/every`, report })
  })
  return report.count() === 0 ? map : undefined
}

interface Placed {
  readonly at: string
  readonly report: FileReport
}

/** What holds for all rows is written as a record would write it. */
function checkConstants(every: Constants = {}, { holds }: MappedTable, { at, report }: Placed): void {
  for (const [name, value] of Object.entries(every)) {
    const field = fieldOf(holds, name)
    const text = String(value)
    if (field === undefined || (name === 'tested' && text === CAST_AND_AGE)) continue
    if (text === UNDECIDED) {
      const message = `it is not decided what "${name}" is`
      report.at(
        below(at, name),
        'reference-unknown',
        message,
        'write what holds for all rows, or name a column that gives it',
      )
      continue
    }
    const reading = readCell({ kind: 'text', text }, field.reads, cellForm([], {}))
    if (reading !== null && 'fault' in reading)
      report.at(below(at, name), 'schema', reading.fault.message, reading.fault.mend)
  }
}

function checkTable(table: MappedTable, at: string, report: FileReport): void {
  const kinds = [table.holds]
  const check = (name: string, pointer: string) => {
    if (fieldOf(table.holds, name) === undefined) reportField(name, { pointer, kinds }, report)
  }
  if (reportResults(table, at, report)) return
  checkStandsFor(table, Object.values(table.columns), { at, report })
  for (const name of Object.keys(table.every ?? {})) check(name, below(`${at}/every`, name))
  for (const part of ['columns', 'cells'] as const)
    for (const [heading, column] of Object.entries(table[part] ?? {})) {
      const pointer = below(`${at}/${part}`, heading)
      const { to, pattern, unit } = columnOf(column)
      if (unit === UNDECIDED)
        report.at(
          `${pointer}/unit`,
          'quantity-unit',
          `it is not decided which unit the column "${heading}" has`,
          'write the unit of its numbers',
        )
      if (to === UNDECIDED)
        report.at(
          pointer,
          'reference-unknown',
          `it is not decided what the column "${heading}" gives`,
          `write the field or property that is meant, or ${IGNORED}`,
        )
      else if (to !== IGNORED) check(to, typeof column === 'string' ? pointer : `${pointer}/to`)
      checkPattern(pattern, `${pointer}/pattern`, check)
      if (typeof column !== 'string')
        checkStandsFor({ ...column, holds: table.holds }, [column], { at: pointer, report })
    }
  checkPattern(table.block, `${at}/block`, check)
  checkPattern(table['sheet-name'], `${at}/sheet-name`, check)
}

/** What a text of the sheet stands for must be a value of a column that it may stand in: in most months it stands in none. */
function checkStandsFor(
  { holds, 'stands-for': standsFor = {} }: Pick<MappedTable, 'holds' | 'stands-for'>,
  columns: readonly (string | Column)[],
  { at, report }: Placed,
): void {
  for (const [text, meant] of Object.entries(standsFor)) {
    const readings = columns.map(columnOf).flatMap((column) => {
      const field = fieldOf(holds, column.to)
      const unit = column.unit === UNDECIDED ? {} : column
      return field === undefined
        ? []
        : [readCell({ kind: 'text', text: meant }, field.reads, cellForm([], unit))]
    })
    const faults = readings.flatMap((reading) =>
      reading !== null && 'fault' in reading ? [reading.fault] : [],
    )
    const [fault] = faults
    if (fault !== undefined && faults.length === readings.length)
      report.at(below(`${at}/stands-for`, text), 'schema', fault.message, fault.mend)
  }
}

/** Columns of results in a table that takes none are told together, for it is the kind of the table that is wrong. */
function reportResults({ holds, columns }: MappedTable, at: string, report: FileReport): boolean {
  const results = Object.values(columns)
    .map((column) => columnOf(column).to)
    .filter((to) => fieldOf(holds, to) === undefined && fieldOf('analyses', to)?.part === 'analysis')
    .filter(isPropertyKey)
  if (results.length === 0) return false
  const named = results.slice(0, NAMED_RESULTS).join(', ')
  report.at(
    `${at}/holds`,
    'reference-unknown',
    `a table of ${holds} takes no results, and ${countWords(results.length, 'column')} of it ${results.length === 1 ? 'gives one' : 'give some'}: ${named}${NAMED_RESULTS < results.length ? ' ...' : ''}`,
    'write holds: analyses, which takes what is known of lots and samples as well',
  )
  return true
}

const NAMED_RESULTS = 4

function checkPattern(
  pattern: string | undefined,
  pointer: string,
  check: (name: string, pointer: string) => void,
): void {
  for (const [, name = ''] of (pattern ?? '').matchAll(IN_BRACES)) check(name, pointer)
}

interface Misnamed {
  readonly pointer: string
  readonly kinds: readonly TableKind[]
}

function reportField(name: string, { pointer, kinds }: Misnamed, report: FileReport): void {
  const known = [...new Set(kinds.flatMap(fieldNames))]
  report.at(
    pointer,
    'reference-unknown',
    `"${name}" is no field of a table of ${kinds.join(' or ')}`,
    computedMend(name) ||
      tradeMend(name, known) ||
      fieldMend(name, known) ||
      nearNames(name, known) ||
      `write a property by its key, or one of ${known
        .filter((field) => /^[a-z-]+$/.test(field))
        .slice(0, 30)
        .join(', ')}`,
  )
}

/** What is computed here has no column, whatever the trade calls it. */
function computedMend(name: string): string {
  const word = tradeWord(name)
  return word !== undefined && 'sure' in word && property(word.sure).nature === 'derived'
    ? `write ${IGNORED}: ${word.sure} is computed from the other results`
    : ''
}
