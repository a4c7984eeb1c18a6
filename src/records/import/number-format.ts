/**
 * What a sheet shows of a number: its decimals, its leading noughts, per cent, a date or a time of day.
 * Source: ECMA-376 part 1, 18.8.30 (formats) and 18.17.4 (dates).
 */
import { momentOfDay } from '../../core/measure/moment.ts'
import type { CellValue } from './grid.ts'

/** What a number format makes of a number. */
export interface NumberFormat {
  readonly date: boolean
  readonly time: boolean
  readonly percent: boolean
  /** Decimals that are always shown. */
  readonly decimals: number
  /** Digits before the point that are always shown. */
  readonly leading: number
}

/** Codes of the formats that a workbook names by number alone and that show more than the number. */
const BUILT_IN: Readonly<Record<number, string>> = {
  1: '0',
  2: '0.00',
  3: '#,##0',
  4: '#,##0.00',
  9: '0%',
  10: '0.00%',
  14: 'yyyy-mm-dd',
  15: 'd-mmm-yy',
  16: 'd-mmm',
  17: 'mmm-yy',
  18: 'h:mm',
  19: 'h:mm:ss',
  20: 'h:mm',
  21: 'h:mm:ss',
  22: 'yyyy-mm-dd h:mm',
  37: '#,##0',
  38: '#,##0',
  39: '#,##0.00',
  40: '#,##0.00',
}

const GENERAL: NumberFormat = { date: false, time: false, percent: false, decimals: 0, leading: 1 }

/** The format of a number in a workbook: by its own code, else the one that its number stands for. */
export function numberFormat(id: number, code: string | undefined): NumberFormat {
  const written = code ?? BUILT_IN[id]
  if (written === undefined || /^general$/i.test(written)) return GENERAL
  // What stands in quotes, behind a backslash or in brackets is colour, condition or plain text; only hours that may
  // pass 24 are written in brackets too.
  const [first = ''] = written
    .replace(/"[^"]*"|\\.|_./g, '')
    .replace(/\[(?!h+\]|m+\]|s+\])[^\]]*\]/gi, '')
    .split(';')
  const [, whole = '', fraction = ''] = /([#0?,]*)(?:\.([#0?]+))?/.exec(first.replace(/^[^#0?.]*/, '')) ?? []
  const time = /[hs]|am\/pm/i.test(first)
  return {
    date: /[yd]/i.test(first) || (/m/i.test(first) && !time),
    time,
    percent: first.includes('%'),
    decimals: (fraction.match(/0/g) ?? []).length,
    leading: Math.max(1, (whole.match(/0/g) ?? []).length),
  }
}

const MINUTES_A_DAY = 1440
/** Day number 0 of the two calendars, in days since 1970: 1899-12-30, as from March 1900 on, and 1904-01-01. */
const EPOCH_1900 = -25569
const EPOCH_1904 = -24107
/** 31 December 9999. */
const LAST_DAY = 2_958_465

/**
 * A number of a sheet as the sheet shows it.
 * @param written the number as the file holds it
 * @param since1904 the workbook counts days from 1904
 */
export function shownNumber(written: string, format: NumberFormat, since1904: boolean): CellValue {
  const value = Number(written)
  if (written.trim() === '' || !Number.isFinite(value)) return { kind: 'fault', text: written }
  if (format.date || format.time) return shownTime(value, format, since1904)
  const digits = padded(plainDigits(format.percent ? value * 100 : value), format.decimals)
  const [whole = '', fraction] = digits.replace('-', '').split('.')
  if (format.percent) return { kind: 'number', text: digits, percent: true }
  return whole.length < format.leading && fraction === undefined
    ? { kind: 'number', text: digits, padded: whole.padStart(format.leading, '0') }
    : { kind: 'number', text: digits }
}

/** Fifteen digits are what a spreadsheet itself keeps; those beyond are dust of the binary number. */
function plainDigits(value: number): string {
  const rounded = Number(value.toPrecision(15))
  const text = String(rounded)
  if (!text.includes('e')) return text
  return Math.abs(rounded) < 1 ? rounded.toFixed(20).replace(/0+$/, '') : BigInt(rounded).toString()
}

/** The digits that the sheet shows as well where they are noughts; none is taken away. */
function padded(digits: string, decimals: number): string {
  const [whole = '', fraction = ''] = digits.split('.')
  const shown = fraction.padEnd(decimals, '0')
  return shown === '' ? whole : `${whole}.${shown}`
}

function shownTime(value: number, format: NumberFormat, since1904: boolean): CellValue {
  // To the second: a spreadsheet stores 09:20 as a fraction that is a little off.
  const seconds = Math.round((value - Math.floor(value)) * 86_400)
  const day = Math.floor(value) + (seconds === 86_400 ? 1 : 0)
  const clock = clockText(seconds === 86_400 ? 0 : seconds)
  if (!format.date && day === 0) return { kind: 'time', text: clock }
  // The calendar that begins in 1900 has a 29 February of that year; days before it count from another start.
  if (day < 0 || LAST_DAY < day || (!since1904 && day < 61)) return { kind: 'fault', text: String(value) }
  const date = momentOfDay(day + (since1904 ? EPOCH_1904 : EPOCH_1900)).text
  return { kind: 'date', text: seconds === 0 && !format.time ? date : `${date}T${clock}` }
}

function clockText(seconds: number): string {
  const minutes = Math.floor(seconds / 60) % MINUTES_A_DAY
  const parts = [Math.floor(minutes / 60), minutes % 60, ...(seconds % 60 === 0 ? [] : [seconds % 60])]
  return parts.map((part) => String(part).padStart(2, '0')).join(':')
}
