/**
 * Every quantity of a record against what is physical, by property for results, by kind elsewhere; and a bound
 * where only a value will do.
 */
import { isPropertyKey, property, type PropertyKey } from '../../core/measure/properties.ts'
import { KINDS, type Quantity, type QuantityKind, writtenNumber } from '../../core/measure/units.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { RecordKind } from '../schema/schemas.ts'
import { below } from '../yaml/pointer.ts'

type Bounds = readonly [number, number]

/** Bounds by kind of quantity, stored unit: outside them no bench reads anything. */
export const BOUNDS: Readonly<Partial<Record<QuantityKind, Bounds>>> = {
  fraction: [-100, 1e6],
  // No press for mortar goes further, and no mortar reaches half of this strength.
  force: [1e-4, 5000],
  stress: [0.01, 400],
  resistance: [0, 1e9],
  resistivity: [1e-3, 1e7],
  temperature: [-50, 200],
  length: [0.1, 5000],
  area: [1, 1e6],
  'lot-mass': [1e-3, 1e7],
  'batch-mass': [1e-4, 1e7],
  density: [0.1, 30],
  frequency: [0.1, 1e9],
  duration: [0, 200_000],
  'temperature-difference': [0, 100],
  'sample-mass': [0, 1e6],
  power: [-1e4, 1e5],
  'specific-power': [-100, 1000],
  energy: [-1e5, 1e6],
  heat: [-100, 5000],
  concentration: [0, 2e4],
  pressure: [1e-3, 1e4],
  angle: [0, 90],
}

/**
 * Bounds by key where the kind's are too wide: no specimen is without resistance, no share of a whole is more
 * than the whole.
 */
const BOUNDS_BY_KEY: ReadonlyMap<string, Bounds> = new Map<string, Bounds>([
  ['amount', [0, 100]],
  ['share', [0, 100]],
  ['standard-uncertainty', [0, 1e6]],
  ['moisture', [0, 100]],
  ['Na2O-equivalent', [0, 100]],
  ['flow', [0, 1000]],
  ['coefficient-of-variation', [0, 1000]],
  ['known', [1e-3, 1e9]],
  ['read', [1e-3, 1e9]],
  // A month may produce, divert and hold nothing.
  ['produced', [0, 1e7]],
  // No ramp, interval or first day lasts no time; no meter or resistor is without resistance.
  ['for', [0.01, 200_000]],
  ['over', [0.01, 200_000]],
  ['every', [0.01, 1e7]],
  ['or-every', [0.01, 200_000]],
  ['bath-every', [0.01, 200_000]],
  ['core-every', [0.01, 200_000]],
  ['ceiling', [1e-3, 1e9]],
  ['diverted', [0, 1e7]],
  ['rejected', [0, 1e7]],
  ['stock', [0, 1e7]],
])

/** Mortar is made, cured and read where water neither freezes nor boils. */
const OF_MORTAR: Bounds = [1, 100]

/** Bounds by key for a study: cubes that a machine takes, steps that round. */
const STUDY_BOUNDS: ReadonlyMap<string, Bounds> = new Map<string, Bounds>([
  ['replacement', [0.1, 99.9]],
  ['cube', [10, 300]],
  ['end-contact', [0, 1e5]],
  ['limit', [1, 1000]],
  ['strength-activity-index', [0.01, 50]],
  ['resistivity-index', [0.01, 500]],
  ['heat', [-100, 5000]],
  ['calcium-hydroxide', [-20, 300]],
])

/** Figures of a reference test as its laboratory reports them. */
const REPORTED: ReadonlySet<string> = new Set(['heat', 'calcium-hydroxide'])

/** Members whose own members are resistances of specimens or resistors. */
const IN_SERIES: ReadonlySet<string> = new Set(['specimens', 'directions', 'check-resistors'])

/** Records that say at which temperature mortar is to be made, cured and read. */
const PLANS_MORTAR: ReadonlySet<RecordKind> = new Set(['condition', 'study'])

/** Records that hold what a laboratory reports. */
const HAS_RESULTS: ReadonlySet<RecordKind> = new Set(['lot', 'source'])

/** Keys and indices from the record to a value; written out only for a fault. */
type Path = (string | number)[]

export function checkPhysical(kind: RecordKind, record: unknown, report: FileReport): void {
  const path: Path = []
  walk(record, path, (quantity) => {
    // Readings of reference tests are checked where they are read.
    if (kind === 'study' && path.includes('reference')) return
    if (quantity.censored !== undefined && !isResult(kind, path)) {
      reportBound(pointerOf(path), quantity, report)
      return
    }
    const bounds = boundsAt(kind, path, quantity.kind)
    if (bounds !== undefined && !within(quantity.value, bounds))
      reportRange(pointerOf(path), quantity, bounds, report)
  })
}

/** Only what a laboratory reports of a lot, or of what was diverted, may be known from one side; everything else is computed with. */
function isResult(kind: RecordKind, path: Path): boolean {
  if (kind === 'study') return REPORTED.has(String(path.at(-1)))
  if (!HAS_RESULTS.has(kind) || !(path.includes('results') || path.includes('control-results'))) return false
  const last = path.at(-1)
  return typeof last === 'number' || last === 'value' || isPropertyKey(last ?? '')
}

function reportBound(pointer: string, { written }: Quantity, report: FileReport): void {
  report.at(
    pointer,
    'quantity-bound',
    `found the text "${written}"; a bound cannot be computed with, a value was expected`,
    'write the value read; only results of an analysis may be written as below a bound',
  )
}

export function within(value: number, [low, high]: Bounds): boolean {
  return low <= value && value <= high
}

export function reportRange(pointer: string, quantity: Quantity, bounds: Bounds, report: FileReport): void {
  const [message, mend] = rangeWords(quantity.written, quantity.kind, bounds)
  report.at(pointer, 'quantity-range', message, slipMend(quantity) ?? mend)
}

/** What a bench commonly reads, in the stored unit: only what lies here in another unit is taken for a slip. Own choice. */
const COMMON: Readonly<Partial<Record<QuantityKind, Bounds>>> = {
  force: [5, 400],
  stress: [1, 150],
  density: [1.5, 4],
}

/** The same number in another unit of its kind, where that is common: 4500 MPa looks like psi. */
function slipMend(quantity: Quantity): string | undefined {
  const { kind, unit } = quantity
  const common = COMMON[kind]
  if (common === undefined) return undefined
  const number = writtenNumber(quantity)
  const meant = KINDS[kind].units
    .filter(({ symbol, factor }) => symbol !== unit && within(Number(number) * factor, common))
    .map(({ symbol }) => symbol)
  if (meant.length === 0) return undefined
  return `the number looks like ${meant.join(' or ')}, not ${unit}: write ${meant.map((each) => `${number} ${each}`).join(', or ')}, if that is what was read`
}

/** @param text the quantity as a message names it */
export function rangeWords(text: string, kind: QuantityKind, [low, high]: Bounds): [string, string] {
  const { stored } = KINDS[kind]
  const range = `between ${low} and ${high}${stored === '' ? '' : ` ${stored}`}`
  return [`${text} is not physically possible here`, `check the number and its unit: ${range} was expected`]
}

function boundsAt(kind: RecordKind, path: Path, quantity: QuantityKind): Bounds | undefined {
  const of = path.findLastIndex((key) => key === 'results') + 1
  if (HAS_RESULTS.has(kind) && 0 < of && path.at(-1) !== 'standard-uncertainty')
    return property(path[of] as PropertyKey).bounds
  // The levels of a programme are one step further down.
  if (PLANS_MORTAR.has(kind) && (path.at(-1) === 'temperature' || path.at(-2) === 'temperature'))
    return OF_MORTAR
  const inStudy =
    kind === 'study' && path[0] !== 'programme' ? STUDY_BOUNDS.get(String(path.at(-1))) : undefined
  if (inStudy !== undefined) return inStudy
  const isRead = path.at(-1) === 'resistance' || IN_SERIES.has(String(path.at(-2)))
  if (quantity === 'resistance' && isRead) return [1e-3, 1e9]
  return BOUNDS_BY_KEY.get(String(path.at(-1))) ?? BOUNDS[quantity]
}

function pointerOf(path: Path): string {
  return path.map((part) => below('', String(part))).join('')
}

function walk(value: unknown, path: Path, visit: (quantity: Quantity) => void): void {
  if (typeof value !== 'object' || value === null) return
  if ('written' in value && 'kind' in value) {
    visit(value as Quantity)
    return
  }
  const list = Array.isArray(value)
  for (const key of Object.keys(value)) {
    const member = (value as Record<string, unknown>)[key]
    if (typeof member !== 'object') continue
    path.push(list ? Number(key) : key)
    walk(member, path, visit)
    path.pop()
  }
}
