/**
 * The closed list of units a record may be written in, and the one unit each kind of quantity is stored in.
 *
 * Every factor is exact by definition. NIST SP 811 (2008), B.8, prints them rounded to seven digits, and the
 * exact pound and pound-force in its footnotes. Factors without a source beside them follow from these, or
 * are decimal prefixes and hours of a day. Half of the file is the list.
 */
import { commaReadings } from './comma-numbers.ts'
import { toSignificant } from './rounding.ts'

/** What a quantity is, which decides the units it may carry. */
export type QuantityKind =
  | 'fraction'
  | 'points'
  | 'batch-mass'
  | 'lot-mass'
  | 'force'
  | 'stress'
  | 'length'
  | 'area'
  | 'resistance'
  | 'resistivity'
  | 'temperature'
  | 'temperature-difference'
  | 'density'
  | 'specific-surface'
  | 'duration'
  | 'frequency'
  | 'ratio'
  | 'heat'
  | 'volume'
  | 'sample-mass'
  | 'power'
  | 'specific-power'
  | 'energy'
  | 'concentration'
  | 'pressure'
  | 'angle'

/** One way of writing a unit: stored = factor × written + offset. */
export interface Unit {
  readonly symbol: string
  readonly factor: number
  readonly offset?: number
  readonly aliases?: readonly string[]
}

/**
 * A kind's stored unit (its symbol on a page) and all units that it may be written in, the stored one first.
 */
export interface KindOfQuantity {
  readonly stored: string
  readonly title: string
  readonly example: string
  readonly units: readonly Unit[]
}

/** Exact: NIST SP 811 (2008), B.8. */
const INCH_MM = 25.4
/** Exact: NIST SP 811 (2008), B.8, footnote 22. */
const POUND_KG = 0.45359237
/** One pound times 9.80665 m/s², exact: NIST SP 811 (2008), B.8, footnote 23. */
const POUND_FORCE_N = 4.4482216152605

export const KINDS: Readonly<Record<QuantityKind, KindOfQuantity>> = {
  fraction: {
    stored: '%',
    title: 'per cent',
    example: '4.86 %',
    units: [
      { symbol: '%', factor: 1, aliases: ['percent', 'per cent'] },
      { symbol: 'mg/kg', factor: 0.0001 },
      { symbol: 'g/100 g', factor: 1 },
    ],
  },
  points: {
    stored: 'percentage points',
    title: 'percentage points',
    example: '5 percentage points',
    units: [{ symbol: 'percentage points', factor: 1, aliases: ['percentage point'] }],
  },
  'batch-mass': {
    stored: 'g',
    title: 'mass of a batch',
    example: '249 g',
    units: [
      { symbol: 'g', factor: 1 },
      { symbol: 'kg', factor: 1000 },
      { symbol: 'lb', factor: 1000 * POUND_KG },
    ],
  },
  'lot-mass': {
    stored: 't',
    title: 'mass of a lot or shipment',
    example: '1450 t',
    units: [
      { symbol: 't', factor: 1, aliases: ['tonne', 'tonnes', 'metric ton', 'Mg'] },
      // 2000 lb and 2240 lb: NIST Handbook 44, appendix C, read second-hand.
      { symbol: 'short ton', factor: (2000 * POUND_KG) / 1000, aliases: ['short tons', 'US ton', 'US tons'] },
      { symbol: 'long ton', factor: (2240 * POUND_KG) / 1000, aliases: ['long tons'] },
      { symbol: 'kg', factor: 0.001 },
      { symbol: 'lb', factor: POUND_KG / 1000 },
    ],
  },
  force: {
    stored: 'kN',
    title: 'load',
    example: '78.4 kN',
    units: [
      { symbol: 'kN', factor: 1 },
      { symbol: 'N', factor: 0.001 },
      { symbol: 'lbf', factor: POUND_FORCE_N / 1000 },
      { symbol: 'kip', factor: POUND_FORCE_N, aliases: ['kips', 'klbf'] },
    ],
  },
  stress: {
    stored: 'MPa',
    title: 'strength',
    example: '31.4 MPa',
    units: [
      { symbol: 'MPa', factor: 1, aliases: ['N/mm2'] },
      { symbol: 'psi', factor: POUND_FORCE_N / (INCH_MM * INCH_MM) },
      { symbol: 'ksi', factor: (1000 * POUND_FORCE_N) / (INCH_MM * INCH_MM) },
    ],
  },
  length: {
    stored: 'mm',
    title: 'length',
    example: '50.8 mm',
    units: [
      { symbol: 'mm', factor: 1 },
      { symbol: 'cm', factor: 10 },
      { symbol: 'm', factor: 1000 },
      { symbol: 'in', factor: INCH_MM, aliases: ['inch', 'inches'] },
    ],
  },
  area: {
    stored: 'mm2',
    title: 'area',
    example: '2500 mm2',
    units: [
      { symbol: 'mm2', factor: 1 },
      { symbol: 'cm2', factor: 100 },
      { symbol: 'in2', factor: INCH_MM * INCH_MM },
    ],
  },
  resistance: {
    stored: 'ohm',
    title: 'electrical resistance',
    example: '812 ohm',
    units: [
      { symbol: 'ohm', factor: 1, aliases: ['ohms'] },
      { symbol: 'kohm', factor: 1000, aliases: ['kohms'] },
    ],
  },
  resistivity: {
    stored: 'ohm m',
    title: 'bulk resistivity',
    example: '44.0 ohm m',
    units: [
      { symbol: 'ohm m', factor: 1 },
      { symbol: 'ohm cm', factor: 0.01 },
      { symbol: 'kohm cm', factor: 10 },
      { symbol: 'kohm m', factor: 1000 },
    ],
  },
  temperature: {
    stored: 'degC',
    title: 'temperature',
    example: '23.1 degC',
    units: [
      { symbol: 'degC', factor: 1 },
      // 5/9 (F − 32): NIST SP 811 (2008), B.8 (from memory).
      { symbol: 'degF', factor: 5 / 9, offset: -160 / 9 },
    ],
  },
  'temperature-difference': {
    stored: 'degC',
    title: 'temperature difference',
    example: '2 degC',
    units: [
      { symbol: 'degC', factor: 1, aliases: ['K'] },
      { symbol: 'degF', factor: 5 / 9 },
    ],
  },
  density: {
    stored: 'g/cm3',
    title: 'density',
    example: '2.43 g/cm3',
    units: [
      { symbol: 'g/cm3', factor: 1, aliases: ['Mg/m3', 't/m3'] },
      { symbol: 'kg/m3', factor: 0.001 },
    ],
  },
  'specific-surface': {
    stored: 'm2/kg',
    title: 'specific surface',
    example: '380 m2/kg',
    units: [
      { symbol: 'm2/kg', factor: 1 },
      { symbol: 'm2/g', factor: 1000 },
      { symbol: 'cm2/g', factor: 0.1 },
    ],
  },
  duration: {
    stored: 'h',
    title: 'age or duration',
    example: '28 d',
    units: [
      { symbol: 'h', factor: 1 },
      { symbol: 'd', factor: 24 },
      { symbol: 'min', factor: 1 / 60 },
      { symbol: 'weeks', factor: 168, aliases: ['week'] },
    ],
  },
  frequency: {
    stored: 'Hz',
    title: 'frequency',
    example: '1 kHz',
    units: [
      { symbol: 'Hz', factor: 1 },
      { symbol: 'kHz', factor: 1000 },
    ],
  },
  ratio: { stored: '', title: 'plain number', example: '0.485', units: [{ symbol: '', factor: 1 }] },
  heat: { stored: 'J/g', title: 'heat', example: '240 J/g', units: [{ symbol: 'J/g', factor: 1 }] },
  volume: {
    stored: 'mL',
    title: 'volume',
    example: '242 mL',
    units: [
      { symbol: 'mL', factor: 1, aliases: ['ml'] },
      { symbol: 'L', factor: 1000 },
    ],
  },
  'sample-mass': {
    stored: 'g',
    title: 'mass of a sample',
    example: '0.3124 g',
    units: [
      { symbol: 'g', factor: 1 },
      { symbol: 'mg', factor: 0.001 },
    ],
  },
  power: {
    stored: 'mW',
    title: 'thermal power',
    example: '6.31 mW',
    units: [
      { symbol: 'mW', factor: 1 },
      { symbol: 'uW', factor: 0.001, aliases: ['\u00b5W', '\u03bcW'] },
      { symbol: 'W', factor: 1000 },
    ],
  },
  'specific-power': {
    stored: 'mW/g',
    title: 'thermal power per gram',
    example: '1.24 mW/g',
    units: [
      { symbol: 'mW/g', factor: 1, aliases: ['W/kg'] },
      { symbol: 'W/g', factor: 1000 },
    ],
  },
  energy: {
    stored: 'J',
    title: 'heat of a sample',
    example: '412 J',
    units: [
      { symbol: 'J', factor: 1 },
      { symbol: 'kJ', factor: 1000 },
    ],
  },
  concentration: {
    stored: 'mmol/L',
    title: 'concentration',
    example: '0.100 mol/L',
    units: [
      { symbol: 'mmol/L', factor: 1 },
      { symbol: 'mol/L', factor: 1000 },
    ],
  },
  pressure: {
    stored: 'kPa',
    title: 'pressure',
    example: '2 kPa',
    units: [
      { symbol: 'kPa', factor: 1 },
      { symbol: 'Pa', factor: 0.001 },
      { symbol: 'psi', factor: (1000 * POUND_FORCE_N) / (INCH_MM * INCH_MM) },
    ],
  },
  angle: {
    stored: 'deg',
    title: 'phase angle',
    example: '5 deg',
    units: [{ symbol: 'deg', factor: 1, aliases: ['degrees'] }],
  },
}

/**
 * A quantity as written and as stored. `value` is in the stored unit of its kind; `unit` is the unit it was
 * written in; `written` is the text of the record; `decimals` counts the digits written after the decimal
 * point, in the written unit; `censored: 'below'` marks a result reported as "less than".
 */
export interface Quantity {
  readonly kind: QuantityKind
  readonly value: number
  readonly unit: string
  readonly written: string
  readonly decimals: number
  readonly censored?: 'below'
  /** The reading lies above the value, a meter's ceiling; only where a record allows it. */
  readonly above?: true
}

/** Why a text is not a quantity of the kind asked for. */
export type QuantityFault =
  | { readonly fault: 'not-a-number'; readonly found: string }
  /** `readings`: every quantity that may be meant, with a decimal point. */
  | { readonly fault: 'decimal-comma'; readonly found: string; readonly readings: readonly string[] }
  | { readonly fault: 'no-unit'; readonly found: string }
  | { readonly fault: 'ambiguous-ton'; readonly found: string }
  /** "1e3 %" */
  | { readonly fault: 'exponent'; readonly found: string }
  | { readonly fault: 'unknown-unit'; readonly found: string; readonly number: string }
  | {
      readonly fault: 'wrong-kind'
      readonly found: string
      readonly number: string
      readonly is: QuantityKind
    }
  | { readonly fault: 'above'; readonly found: string }
  | { readonly fault: 'out-of-range'; readonly found: string }

const NUMBER = String.raw`[+-]?\d+(?:\.\d+)?`
const QUANTITY = new RegExp(String.raw`^(<\s*|below\s+)?(${NUMBER})\s*(.*)$`)
/** Captures what follows the sign of a reading beyond a ceiling. */
const ABOVE = /^(?:>|above\b)\s*(.*)$/
/** Captures the sign before a number with commas, the number, and what follows. */
const COMMA_NUMBER = /^(<\s*|below\s+)?([+-]?\d+(?:\.\d+)*(?:,\d+)+(?:\.\d+)?)(.*)$/
/** What follows the digits of a number such as 1e3; no unit begins so. */
const EXPONENT = /^e[+-]?\d/i
/** Beyond this no quantity of a bench or a lot is physical in any listed unit. */
const LARGEST_WRITTEN = 1e9

const spellings = new Map<QuantityKind, ReadonlyMap<string, Unit>>(
  (Object.keys(KINDS) as QuantityKind[]).map((kind) => [
    kind,
    new Map(
      KINDS[kind].units.flatMap((unit) =>
        [unit.symbol, ...(unit.aliases ?? [])].map((name) => [name, unit] as const),
      ),
    ),
  ]),
)

/**
 * Spells the signs of the trade in one way: Ω and µ in both code points, raised dot, °, ², ³, − and repeated
 * blanks.
 * @param text as written, number and unit or unit alone
 */
export function normaliseUnitText(text: string): string {
  return /^[\x20-\x7e]*$/.test(text) && !text.includes('  ')
    ? text.trim()
    : text
        .normalize('NFC')
        .replace(/[\u2126\u03a9]/g, 'ohm')
        .replace(/\u00b0\s*/g, 'deg')
        .replace(/[\u00b7\u22c5]/g, ' ')
        .replace(/\u00b2/g, '2')
        .replace(/\u00b3/g, '3')
        .replace(/\u2212/g, '-')
        .replace(/[\s\u00a0\u202f]+/g, ' ')
        .trim()
}

function unitSpelling(text: string): string {
  return text
    .replace(/\s*\.\s*/g, ' ')
    .replace(/ohm(?=c?m$)/, 'ohm ')
    .replace(/^k ohm/, 'kohm')
    .replace(/^deg (?=[CF]$)/, 'deg')
}

/**
 * Reads a quantity as written on a bench sheet.
 * @param text number and unit: "78.4 kN", "< 0.1 %", "below 5 MPa"
 * @param kind what the record asks for at this place
 * @returns the value in the kind's stored unit, to 14 significant digits, with the text, unit and decimals as
 * written; or the fault found
 * Notes: 1. no digit grouping, exponent or decimal comma; 2. "ton" alone is refused; 3. "<" and "below" keep
 * the bound as the value, marked as censored, and "above" is a fault; 4. letter case counts in units; 5. what
 * is physical for a property is not checked here.
 * Source: factors of NIST SP 811 (2008), B.8, exact.
 */
export function readQuantity(text: string, kind: QuantityKind): Quantity | QuantityFault {
  const normal = normaliseUnitText(text)
  if (ABOVE.test(normal)) return { fault: 'above', found: text }
  const comma = COMMA_NUMBER.exec(normal)
  if (comma !== null) return commaFault(text, comma)
  const match = QUANTITY.exec(normal)
  if (match === null) return { fault: 'not-a-number', found: text }
  const [, below, number = '', rest = ''] = match
  const spelling = unitSpelling(rest)
  const unit = spellings.get(kind)?.get(spelling)
  if (unit === undefined) return unitFault(text, number, spelling)
  const written = Number(number)
  if (Math.abs(written) > LARGEST_WRITTEN) return { fault: 'out-of-range', found: text }
  const point = number.indexOf('.')
  const quantity = {
    kind,
    value: toStored(written, unit),
    unit: unit.symbol,
    written: text.trim(),
    decimals: point < 0 ? 0 : number.length - point - 1,
  }
  return below === undefined ? quantity : { ...quantity, censored: 'below' }
}

/**
 * Reads a quantity that may be written as above a ceiling: "> 850 ohm", "above 850 ohm".
 * @param text,kind as of `readQuantity`
 * @returns the ceiling as the value, marked as `above`; a plain quantity as it is; or the fault found
 */
export function readPerhapsAbove(text: string, kind: QuantityKind): Quantity | QuantityFault {
  const ceiling = ABOVE.exec(normaliseUnitText(text))?.[1]
  if (ceiling === undefined) return readQuantity(text, kind)
  const quantity = readQuantity(ceiling, kind)
  if (isFault(quantity)) return { ...quantity, found: text }
  return quantity.censored === undefined
    ? { ...quantity, written: text.trim(), above: true }
    : { fault: 'not-a-number', found: text }
}

/** The digits of a quantity as it was written, without sign words and unit ("< 0.10 %" gives "0.10"). */
export function writtenNumber(quantity: Quantity): string {
  return QUANTITY.exec(normaliseUnitText(quantity.written))?.[2] ?? String(quantity.value)
}

/** Whether a text could not be read as a quantity. */
export function isFault(outcome: Quantity | QuantityFault): outcome is QuantityFault {
  return 'fault' in outcome
}

/** All spellings that a kind accepts, for near names in a diagnostic. */
export function acceptedSpellings(kind: QuantityKind): string[] {
  return [...(spellings.get(kind)?.keys() ?? [])]
}

function toStored(written: number, unit: Unit): number {
  // Own choice: 14 digits take the binary dust of a factor such as 0.001 off and keep every digit that a
  // bench writes.
  const value = written * unit.factor + (unit.offset ?? 0)
  return unit.factor === 1 && unit.offset === undefined ? written : toSignificant(value, 14)
}

function commaFault(found: string, [, below = '', number = '', rest = '']: RegExpExecArray): QuantityFault {
  const readings = commaReadings(number).map((reading) => `${below}${reading}${rest}`)
  return { fault: 'decimal-comma', found, readings }
}

function unitFault(found: string, number: string, spelling: string): QuantityFault {
  if (spelling === '') return { fault: 'no-unit', found }
  if (EXPONENT.test(spelling)) return { fault: 'exponent', found }
  if (/^tons?$/i.test(spelling)) return { fault: 'ambiguous-ton', found }
  const other = (Object.keys(KINDS) as QuantityKind[]).find((kind) => spellings.get(kind)?.has(spelling))
  return other === undefined
    ? { fault: 'unknown-unit', found, number }
    : { fault: 'wrong-kind', found, number, is: other }
}
