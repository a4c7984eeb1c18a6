/** Calcium hydroxide consumed, by its thermograms, as the core takes it. */
import type { Quantity } from '../../../core/measure/units.ts'
import type { ConsumptionTest, PasteMix } from '../../../core/studies/reference/calcium-hydroxide-consumed.ts'
import {
  calciumHydroxideContent,
  type Thermogram,
} from '../../../core/studies/reference/calcium-hydroxide-content.ts'
import { isReferenceFault } from '../../../core/studies/reference/reference-fault.ts'
import type { TemperatureRange } from '../../../core/studies/reference/thermogravimetric-loss.ts'
import { tellFault } from './fault-words.ts'
import type { Entry, PlacedReadings, TestPlace } from './placed-readings.ts'
import { MASS_ROWS, type ReadRows } from './reading-rows.ts'

/** In a gram: curves stand in mg. */
const MILLIGRAMS = 1000

/** @returns null where something is missing or at fault, which is told */
export function consumptionOf(entry: Entry<'calcium-hydroxide'>, at: TestPlace): PlacedReadings | null {
  const { mix, blank } = entry
  const own = thermogramOf(entry, at)
  const blankAt = { ...at, pointer: `${at.pointer}/blank` }
  const other = blank === undefined ? null : thermogramOf(blank, blankAt)
  const before = at.report.count()
  if (mix.material === undefined) tellMissing('material', 'the material in the paste', at)
  if (blank?.mix.material !== undefined)
    at.report.atKey(
      `${blankAt.pointer}/mix/material`,
      'key-unknown',
      'a blank is mixed without the material',
      'take it out',
    )
  if (before < at.report.count() || own === null) return null
  if (blank !== undefined && other === null) return null
  const readings: ConsumptionTest = {
    ...own.thermogram,
    mix: mixOf(mix),
    blank: blank === undefined || other === null ? null : { ...other.thermogram, mix: mixOf(blank.mix) },
  }
  return { rows: own.rows, of: { test: 'calcium-hydroxide-consumed', readings } }
}

type ThermogramEntry = Omit<Entry<'calcium-hydroxide'>, 'blank' | 'method' | 'age' | 'tested'>

function thermogramOf(
  entry: ThermogramEntry,
  at: TestPlace,
): { readonly thermogram: Thermogram; readonly rows: ReadRows } | null {
  const { water, tangents, carbonate, basis, mix } = entry
  const { pointer, report } = at
  const rows = at.tables.rowsOf(entry, MASS_ROWS, at)
  if ((water === undefined) === (tangents === undefined)) {
    report.atKey(
      pointer,
      water === undefined ? 'key-missing' : 'reading-twice',
      water === undefined
        ? 'the test does not say where the water of the hydroxide leaves'
        : 'the test states a plain step and tangents',
      'write water, from a temperature to another, or tangents, before and after the step',
    )
    return null
  }
  if (basis === 'initial' && mix.water === undefined) {
    tellMissing('water', 'the water of the paste, on the initial basis,', at)
    return null
  }
  if (rows === null) return null
  const massless = rows.points.findIndex(({ y }) => y <= 0)
  if (0 <= massless) {
    rows.tell(massless)('quantity-range', 'this mass is not above zero', 'check the reading')
    return null
  }
  const thermogram: Thermogram = {
    curve: rows.points.map(({ x, y }) => ({ x, y: y * MILLIGRAMS })),
    water: tangents
      ? { before: rangeOf(tangents.before), after: rangeOf(tangents.after) }
      : rangeOf(water ?? NO_RANGE),
    carbonate: carbonate === undefined ? null : rangeOf(carbonate),
    basis,
  }
  const found = calciumHydroxideContent(thermogram)
  if (!isReferenceFault(found)) return { rows, thermogram }
  tellFault(found, { pointer, report, rows })
  return null
}

interface WrittenRange {
  readonly from: Pick<Quantity, 'value'>
  readonly to: Pick<Quantity, 'value'>
}

/** One of the two forms is always there: it was asked for above. */
const NO_RANGE: WrittenRange = { from: { value: 0 }, to: { value: 0 } }

function rangeOf({ from, to }: WrittenRange): TemperatureRange {
  return { from: from.value, to: to.value }
}

function tellMissing(key: string, what: string, { pointer, report }: TestPlace): void {
  report.atKey(
    `${pointer}/mix`,
    'key-missing',
    `the mix does not state ${what}`,
    `add ${key}, with its mass in g`,
  )
}

function mixOf(mix: Entry<'calcium-hydroxide'>['mix']): PasteMix {
  return {
    calciumHydroxideG: mix['calcium-hydroxide'].value,
    materialG: mix.material?.value ?? null,
    waterG: mix.water?.value ?? 0,
    otherG: mix.other?.value ?? 0,
    materialLoss: (mix['ignition-loss']?.value ?? 0) / 100,
  }
}
