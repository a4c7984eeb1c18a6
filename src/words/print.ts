/** Numbers, dates and words as they stand on a page. */
import type { Operator } from '../core/criteria/criterion.ts'
import type { Result } from '../core/result/result.ts'
import type { StatedLimit } from '../core/criteria/limits-for-class.ts'

const THIN_SPACE = '\u2009'
const NO_BREAK = '\u00a0'
const MINUS = '\u2212'

/** A number with fixed decimals, true minus, and a thin space at each thousand from 10 000 on. */
export function number(value: number, decimals: number): string {
  const [whole = '', fraction] = Math.abs(value).toFixed(decimals).split('.')
  const grouped = whole.length < 5 ? whole : whole.replace(/(?<=\d)(?=(\d{3})+$)/g, THIN_SPACE)
  const digits = fraction === undefined ? grouped : `${grouped}.${fraction}`
  return value < 0 && /[1-9]/.test(digits) ? MINUS + digits : digits
}

const UNITS: Readonly<Record<string, string>> = {
  '%': '%',
  'percentage points': 'points',
  'ohm m': 'Ω·m',
  ohm: 'Ω',
  degC: '°C',
  'g/cm3': 'g/cm³',
  'm2/kg': 'm²/kg',
  mm2: 'mm²',
  t: 't',
  MPa: 'MPa',
  kN: 'kN',
  g: 'g',
  mm: 'mm',
  h: 'h',
  'J/g': 'J/g',
  Hz: 'Hz',
  mL: 'mL',
}

/** The printed sign of a stored unit. */
export function unitSign(unit: string): string {
  return UNITS[unit] ?? unit
}

/** A value with its unit, which never breaks from it. */
export function quantity(value: number, decimals: number, unit: string): string {
  const sign = unitSign(unit)
  return sign === '' ? number(value, decimals) : `${number(value, decimals)}${NO_BREAK}${sign}`
}

/** A value with its unit and sign, for differences: "+0.3 points". */
export function signed(value: number, decimals: number, unit: string): string {
  return `${0 < Number(value.toFixed(decimals)) ? '+' : ''}${quantity(value, decimals, unit)}`
}

/** Names alone: d3-time-format would add 4.5 KB to every script that prints a date. */
const MONTHS = 'January February March April May June July August September October November December'.split(
  ' ',
)

/** "8 March 2026"; with its clock time where there is one: "8 March 2026, 14:30". */
export function date(moment: string): string {
  const day = `${Number(moment.slice(8, 10))}${NO_BREAK}${MONTHS[Number(moment.slice(5, 7)) - 1] ?? ''} ${moment.slice(0, 4)}`
  const clock = clockTime(moment)
  return clock === null ? day : `${day}, ${clock}`
}

/** "14:30"; null for a bare date. */
export function clockTime(moment: string): string | null {
  return 10 < moment.length ? moment.slice(11, 16) : null
}

/** "8 Mar 2026", for tables. */
export function shortDate(moment: string): string {
  const month = MONTHS[Number(moment.slice(5, 7)) - 1] ?? ''
  return [Number(moment.slice(8, 10)), month.slice(0, 3), moment.slice(0, 4)].join(NO_BREAK)
}

/** A period, saying common parts once: "2 to 8 March 2026". */
export function period(from: string, to: string): string {
  const [start, end] = [from.slice(0, 10), to.slice(0, 10)]
  if (start === end) return date(start)
  if (start.slice(0, 7) === end.slice(0, 7)) return `${Number(start.slice(8, 10))} to ${date(end)}`
  return `${date(start)} to ${date(end)}`
}

const KIND_WORDS: Readonly<Record<string, string>> = {
  'coal-fly-ash': 'coal fly ash',
  'coal-bottom-ash': 'coal bottom ash',
  'harvested-coal-ash': 'harvested coal ash',
  'raw-natural-pozzolan': 'raw natural pozzolan',
  'calcined-natural-pozzolan': 'calcined natural pozzolan',
  slag: 'slag',
  'silica-fume': 'silica fume',
  blend: 'blend',
  'limestone-filler': 'ground limestone filler',
  'quartz-filler': 'ground quartz filler',
}

export function kindWords(kind: string): string {
  return KIND_WORDS[kind] ?? kind
}

/** First letter large. */
export function sentence(text: string): string {
  return text === '' ? '' : `${text[0]?.toUpperCase()}${text.slice(1)}`
}

export function plural(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`
}

const LIMIT_SIGNS: Readonly<Record<Operator, string>> = {
  'at-least': '≥',
  'at-most': '≤',
  above: '>',
  below: '<',
  between: '',
  'magnitude-at-most': '±',
  report: '',
}

/** A limit with its own digits: "≥ 75 %", "± 5 points", "10 to 20 %". */
export function limitText({ operator, written }: StatedLimit): string {
  if (operator === 'report') return 'to be reported'
  const texts = written.map((text) =>
    writtenText(text).replace('percentage points', 'points').replace('percentage point', 'point'),
  )
  if (operator === 'between') return texts.join(' to ')
  return `${LIMIT_SIGNS[operator]}${NO_BREAK}${texts[0] ?? ''}`
}

/** A quantity's written text with the signs of print and a space that does not break. */
export function writtenText(text: string): string {
  return text
    .replace(/\bdeg ?(?=[CF]\b)/g, '°')
    .replace(/\bohm[ .·]?(c?m)\b/g, 'Ω·$1')
    .replace(/kohm\b/g, 'kΩ')
    .replace(/\bohm\b/g, 'Ω')
    .replace(/(?<=m)2\b/g, '²')
    .replace(/(?<=m)3\b/g, '³')
    .replace(/^-/, MINUS)
    .replace(/(?<!^1 )short ton$/, 'short tons')
    .replace(/(?<=\d) (?=\S)/g, NO_BREAK)
}

/**
 * The value of a result as reported or computed; "< 0.1 %" where it lies below the limit of determination.
 */
export function resultText(result: Pick<Result, 'value' | 'decimals' | 'unit' | 'censored'>): string {
  const text = quantity(result.value, result.decimals, result.unit)
  return result.censored === 'below' ? `<${NO_BREAK}${text}` : text
}

/** Keeps a number and its unit on one line ("50 °C", "28 d"). */
export function unbroken(text: string): string {
  return text.replace(/(?<=\d) (?=(?:[%°±µΩ]|[a-zA-Z]{1,3}\b(?!-)))/g, NO_BREAK)
}

/** A full sentence: first letter large, a stop at the end. */
export function fullSentence(text: string): string {
  const body = sentence(text.trim())
  return body === '' || /[.!?]$/.test(body) ? body : `${body}.`
}

/**
 * Pounds are exact by definition (1959); a short ton is 2000 of them, so that a tonne is 1.102 311 short
 * tons.
 */
export const SHORT_TONS_IN_TONNE = 1000 / (2000 * 0.45359237)
/** 1 MPa in pounds-force per square inch, from the exact inch and pound-force of src/core/units.ts. */
const PSI_IN_MPA = (25.4 * 25.4) / 4.4482216152605

/** A mass of material in both systems, the site's own first: "1450 t (1598 short tons)". */
export function massText(massT: number, units: 'SI' | 'US'): string {
  const tonnes = quantity(massT, massT < 100 ? 1 : 0, 't')
  const shortTons = `${number(massT * SHORT_TONS_IN_TONNE, massT < 100 ? 1 : 0)}${NO_BREAK}short${NO_BREAK}tons`
  return units === 'SI' ? `${tonnes} (${shortTons})` : `${shortTons} (${tonnes})`
}

/** The same value in US customary units where the trade uses them; null elsewhere. */
export function usText(value: number, unit: string): string | null {
  if (unit === 'MPa') return `${number(Math.round((value * PSI_IN_MPA) / 10) * 10, 0)}${NO_BREAK}psi`
  if (unit === 'ohm m') return `${number(value * 100, 0)}${NO_BREAK}Ω·cm`
  return null
}
