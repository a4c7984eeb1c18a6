/**
 * A cell to the text that a record would write, or why not. Nothing is repaired: what can be read in two ways is
 * refused, and the map says which is meant.
 */
import {
  isFault,
  KINDS,
  normaliseUnitText,
  readPerhapsAbove,
  readQuantity,
} from '../../core/measure/units.ts'
import { dateOf, isInCalendar, momentIn } from '../../core/measure/moment.ts'
import { quantityFault } from '../schema/quantity-faults.ts'
import { shortened } from '../schema/schema-words.ts'
import type { Reads } from './fields.ts'
import type { CellValue } from './grid.ts'
import type { Column, WrittenForm } from './import-map.ts'

/** Why a cell is not taken. */
export interface CellFault {
  readonly message: string
  readonly mend: string
}

/** `null` for a cell without a value. */
export type CellReading = { readonly written: string } | { readonly fault: CellFault } | null

/** How the cells of a column are read: the map's form, the table's over it, the column's over that. */
export interface CellForm extends Pick<Column, 'unit' | 'prefix' | 'digits'> {
  readonly decimal: 'point' | 'comma' | undefined
  readonly thousands: 'none' | 'point' | 'comma' | 'space' | 'apostrophe' | undefined
  readonly dates: WrittenForm['dates']
  readonly blank: ReadonlySet<string>
  readonly standsFor: ReadonlyMap<string, string>
}

/** @param forms the map's first, the column's last */
export function cellForm(forms: readonly WrittenForm[], column: Partial<Column>): CellForm {
  const last = <T>(pick: (form: WrittenForm) => T | undefined): T | undefined =>
    forms.map(pick).findLast((value) => value !== undefined)
  return {
    decimal: last(({ numbers }) => numbers?.decimal),
    thousands: last(({ numbers }) => numbers?.thousands),
    dates: last(({ dates }) => dates),
    blank: new Set(forms.flatMap(({ blank }) => blank ?? [])),
    standsFor: new Map(forms.flatMap((form) => Object.entries(form['stands-for'] ?? {}))),
    ...(column.unit === undefined ? {} : { unit: column.unit }),
    ...(column.prefix === undefined ? {} : { prefix: column.prefix }),
    ...(column.digits === undefined ? {} : { digits: column.digits }),
  }
}

/** A cell's text as a person sees it, outer blanks off and those within made one. */
export function shownText(cell: CellValue): string {
  switch (cell.kind) {
    case 'number':
      return cell.percent === true ? `${cell.text} %` : (cell.padded ?? cell.text)
    default:
      return cell.text.replace(/[\s\u00a0\u202f\u200b]+/g, ' ').trim()
  }
}

/** The text that a record would write for a cell. */
export function readCell(cell: CellValue, reads: Reads, form: CellForm): CellReading {
  if (cell.kind === 'fault')
    return refused(
      `found ${/^#/.test(cell.text) ? `the error ${cell.text}` : cell.text}; ${wanted(reads, form)} was expected`,
      'correct the cell in the spreadsheet, or clear it',
    )
  const text = shownText(cell)
  if (text === '' || form.blank.has(text)) return null
  const meant = form.standsFor.get(text)
  // What it stands for is written as in a record, whatever the signs of the sheet.
  if (meant !== undefined) return readers(reads, { kind: 'text', text: meant }, meant, AS_RECORDS(form))
  return readers(reads, cell, text, form)
}

const AS_RECORDS = ({ unit }: CellForm): CellForm => ({
  decimal: 'point',
  thousands: 'none',
  dates: undefined,
  blank: new Set(),
  standsFor: new Map(),
  ...(unit === undefined ? {} : { unit }),
})

function readers(reads: Reads, cell: CellValue, text: string, form: CellForm): CellReading {
  switch (reads.as) {
    case 'text':
      return { written: text }
    case 'list':
      return /[^;\s]/.test(text)
        ? { written: text }
        : expected(text, reads, form, 'write a text before each ;')
    case 'id':
      return readId(text, form)
    case 'count':
      return /^\d{1,9}$/.test(text) ? { written: text } : expected(text, reads, form, 'write a whole number')
    case 'age':
      return readAgeCell(text, form)
    case 'time':
      return readTimeCell(cell, text, form)
    case 'date':
    case 'moment':
      return readDateCell(cell, text, reads, form)
    case 'quantity':
      return readQuantityCell(cell, text, reads, form)
  }
}

function refused(message: string, mend: string): { readonly fault: CellFault } {
  return { fault: { message, mend } }
}

function expected(text: string, reads: Reads, form: CellForm, mend: string): { readonly fault: CellFault } {
  return refused(`found "${shortened(text)}"; ${wanted(reads, form)} was expected`, mend)
}

/** What is expected of a cell, in words. */
function wanted(reads: Reads, { unit }: Pick<CellForm, 'unit'>): string {
  switch (reads.as) {
    case 'text':
      return 'a text'
    case 'list':
      return 'a text, or several with ; between them,'
    case 'id':
      return 'an id'
    case 'count':
      return 'a whole number'
    case 'age':
      return 'an age'
    case 'time':
      return 'a time of day'
    case 'date':
      return 'a date'
    case 'moment':
      return 'a date, or a date and time,'
    case 'quantity':
      return unit === undefined ? KINDS[reads.kind].title : `a number in ${unit}`
  }
}

const ID = /^[A-Za-z0-9][A-Za-z0-9-]{0,63}$/

function readId(text: string, { prefix = '', digits }: CellForm): CellReading {
  const filled = digits === undefined || !/^\d+$/.test(text) ? text : text.padStart(digits, '0')
  const id = `${prefix}${filled}`
  return ID.test(id)
    ? { written: id }
    : refused(
        `found "${shortened(text)}"; an id of letters, digits and hyphens was expected`,
        `write under stands-for which id is meant, such as "${shortened(text)}": ${suggestedId(text)}, or how the text is made up under pattern`,
      )
}

/** An id made of what a text has of letters and digits. */
export function suggestedId(text: string): string {
  const id = text
    .normalize('NFKD')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 64)
  return id === '' ? 'ID' : id
}

const AGE = /^(\d{1,5})\s*-?\s*(d|days?|h|hours?|hrs?)?\.?$/i

function readAgeCell(text: string, form: CellForm): CellReading {
  const found = AGE.exec(text)
  const unit = found?.[2] ?? form.unit
  const days = unit === undefined ? null : /^d/i.test(unit) ? 'd' : /^h/i.test(unit) ? 'h' : null
  return found === null || days === null
    ? expected(text, { as: 'age' }, form, 'write it as 28 d, or say unit: d for the column')
    : { written: `${Number(found[1])} ${days}` }
}

const CLOCK = /^(\d{1,2})[:.h](\d{2})(?:[:.](\d{2})(?:\.0+)?)?\s*(am|pm|a\.m\.|p\.m\.)?$/i

/** "9:20", "09:20:30", "9:20 pm" as a record writes it; null for what is no time of day. */
function clockOf(text: string): string | null {
  const found = CLOCK.exec(text)
  if (found === null) return null
  const [, hour = '', minute = '', second, half] = found
  const twelve = half === undefined ? null : /^p/i.test(half) ? 12 : 0
  if (twelve !== null && (Number(hour) < 1 || 12 < Number(hour))) return null
  const hours = twelve === null ? Number(hour) : (Number(hour) % 12) + twelve
  if (23 < hours || 59 < Number(minute) || 59 < Number(second ?? 0)) return null
  const clock = `${String(hours).padStart(2, '0')}:${minute}`
  return second === undefined || second === '00' ? clock : `${clock}:${second}`
}

function readTimeCell(cell: CellValue, text: string, form: CellForm): CellReading {
  const clock = cell.kind === 'time' ? text : clockOf(text)
  return clock === null ? expected(text, { as: 'time' }, form, 'write it as 09:20') : { written: clock }
}

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec']
/** Captures year, month, day, and what follows. */
const YEAR_FIRST = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ,]+(.+))?$/
/** Captures two numbers, the year, and what follows. */
const YEAR_LAST = /^(\d{1,2})[-/. ]+(\d{1,2})[-/. ]+(\d{4})(?:[T ,]+(.+))?$/
const NAMED_DAY_FIRST = /^(\d{1,2})(?:st|nd|rd|th)?[-/. ]+([A-Za-z]{3,9})\.?[-/., ]+(\d{4})(?:[T ,]+(.+))?$/
const NAMED_MONTH_FIRST = /^([A-Za-z]{3,9})\.?[-/. ]+(\d{1,2})(?:st|nd|rd|th)?[-/., ]+(\d{4})(?:[T ,]+(.+))?$/

function readDateCell(cell: CellValue, text: string, reads: Reads, form: CellForm): CellReading {
  if (cell.kind === 'date') return asDate(text, text, reads, form)
  if (cell.kind === 'number')
    return expected(text, reads, form, 'format the cell as a date in the spreadsheet')
  const ordered = /^\d{1,2}[-/. ]+\d{1,2}[-/. ]+\d{4}/.test(text)
  if (ordered && form.dates === undefined)
    return refused(
      `found "${shortened(text)}"; whether the day or the month comes first is not said`,
      'write dates: day-month-year or dates: month-day-year in the map',
    )
  const parts = dateParts(text, form.dates)
  if (parts === null)
    return expected(text, reads, form, 'write it as 2026-12-31, or with four digits of the year')
  const [year, month, day, rest] = parts
  const clock = rest === undefined ? null : clockText(rest)
  if (rest !== undefined && clock === null)
    return expected(text, reads, form, 'write it as 2026-12-31, with a time as 09:20')
  const date = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`
  return asDate(text, clock === null ? date : `${date}T${clock}`, reads, form)
}

/** A time with its offset, if it states one; null for what is no time. */
function clockText(rest: string): string | null {
  const [, time = rest, offset = ''] = /^(.*?)\s*(Z|[+-]\d{2}:\d{2})$/.exec(rest) ?? []
  const clock = clockOf(time.trim())
  return clock === null ? null : `${clock}${offset}`
}

type DateParts = readonly [year: string, month: string, day: string, rest: string | undefined]

function dateParts(text: string, order: WrittenForm['dates']): DateParts | null {
  const first = YEAR_FIRST.exec(text)
  if (first !== null) return [first[1] ?? '', first[2] ?? '', first[3] ?? '', first[4]]
  const last = YEAR_LAST.exec(text)
  if (last !== null) {
    const [, a = '', b = '', year = '', rest] = last
    return order === 'day-month-year' ? [year, b, a, rest] : [year, a, b, rest]
  }
  const [, day, name, year, rest] = NAMED_DAY_FIRST.exec(text) ?? swapped(NAMED_MONTH_FIRST.exec(text)) ?? []
  const month = MONTHS.indexOf((name ?? '').slice(0, 3).toLowerCase()) + 1
  return month === 0 ? null : [year ?? '', String(month), day ?? '', rest]
}

function swapped(found: RegExpExecArray | null): (string | undefined)[] | null {
  return found === null ? null : [found[0], found[2], found[1], found[3], found[4]]
}

function asDate(text: string, written: string, reads: Reads, form: CellForm): CellReading {
  const moment = momentIn(written)
  if (moment === null || !isInCalendar(moment))
    return expected(text, reads, form, 'write a day that the calendar has, as 2026-12-31')
  return { written: reads.as === 'date' ? dateOf(moment).text : written }
}

const SIGNS = {
  none: '',
  point: '\\.',
  comma: ',',
  space: '[ \\u00a0\\u202f\\u2009]',
  apostrophe: "['’]",
} as const
/** Captures a sign of a bound, the number as far as it may go, and the unit. */
const WRITTEN = /^(<|>|≤|≥|below\b|above\b)?\s*([+\-−]?[\d.,'’\s\u00a0\u202f\u2009]*\d)\s*(\D.*)?$/s

function readQuantityCell(
  cell: CellValue,
  text: string,
  reads: Extract<Reads, { as: 'quantity' }>,
  form: CellForm,
): CellReading {
  if (cell.kind === 'date' || cell.kind === 'time')
    return expected(
      text,
      reads,
      form,
      'the spreadsheet took a number for a date: format the cell as a number and enter it again',
    )
  const unit = form.unit
  if (cell.kind === 'number') {
    if (cell.percent === true && unit !== undefined && unit !== '%')
      return expected(text, reads, form, 'the cell is formatted in per cent: correct the unit or the format')
    return asQuantity(`${cell.text} ${cell.percent === true ? '%' : (unit ?? '')}`, text, reads, form)
  }
  const found = WRITTEN.exec(text)
  if (found === null) return expected(text, reads, form, namedTexts(text))
  const [, sign = '', digits = '', ownUnit] = found
  const number = plainNumber(digits, form)
  if ('fault' in number) return number
  const own = ownUnit === undefined ? undefined : normaliseUnitText(ownUnit)
  if (own !== undefined && unit !== undefined && own !== normaliseUnitText(unit))
    return expected(text, reads, form, `write the number alone, or correct the column’s unit in the map`)
  const bound = { '≤': '', '≥': '' }[sign] === undefined ? sign : null
  if (bound === null) return expected(text, reads, form, `write ${sign === '≤' ? '<' : '>'} and the number`)
  return asQuantity(`${bound} ${number.plain} ${own ?? unit ?? ''}`, text, reads, form)
}

function namedTexts(text: string): string {
  return `correct the cell; where "${shortened(text)}" stands for a value or for none, say so under stands-for or blank in the map`
}

function asQuantity(
  written: string,
  text: string,
  reads: Extract<Reads, { as: 'quantity' }>,
  form: CellForm,
): CellReading {
  const quantity = written.trim().replace(/\s+/g, ' ')
  const read = (reads.above === true ? readPerhapsAbove : readQuantity)(quantity, reads.kind)
  if (!isFault(read)) return { written: quantity }
  if (read.fault === 'no-unit')
    return expected(
      text,
      reads,
      form,
      `say the column’s unit in the map, such as unit: ${KINDS[reads.kind].units[0]?.symbol}`,
    )
  const { message, mend } = quantityFault(read, [reads.kind])
  return refused(message, mend)
}

/** Digits with a decimal point alone. */
function plainNumber(
  digits: string,
  form: CellForm,
): { readonly plain: string } | { readonly fault: CellFault } {
  const text = digits.replace('−', '-')
  const decimal = form.decimal ?? 'point'
  const thousands = SIGNS[form.thousands ?? 'none']
  const group = thousands === '' ? String.raw`\d+` : String.raw`(?:\d{1,3}(?:${thousands}\d{3})+|\d+)`
  const pattern = new RegExp(`^[+-]?${group}(?:${SIGNS[decimal]}\\d+)?$`)
  if (pattern.test(text)) {
    const ungrouped = thousands === '' ? text : text.replace(new RegExp(thousands, 'g'), '')
    return { plain: decimal === 'comma' ? ungrouped.replace(',', '.') : ungrouped }
  }
  const sign = /[.,'’]/.exec(text)?.[0] ?? ' '
  return refused(
    `found "${shortened(digits)}"; ${signWords(form)}`,
    sign === ',' && form.decimal === undefined && form.thousands === undefined
      ? 'say in the map what the comma is: numbers: { decimal: comma } or numbers: { thousands: comma }'
      : 'correct the number, or the signs under numbers in the map',
  )
}

function signWords({ decimal = 'point', thousands = 'none' }: CellForm): string {
  const between =
    thousands === 'none' ? 'no sign' : thousands === 'apostrophe' ? 'an apostrophe' : `a ${thousands}`
  return `a decimal ${decimal} and ${between} between thousands were expected`
}
