/** Each reference test of a record as the core takes it. */
import type { Quantity } from '../../../core/measure/units.ts'
import type { ConsumptionTest, PasteMix } from '../../../core/studies/reference/calcium-hydroxide-consumed.ts'
import type { Thermogram } from '../../../core/studies/reference/calcium-hydroxide-content.ts'
import type { TemperatureRange } from '../../../core/studies/reference/thermogravimetric-loss.ts'
import type { FileReport } from '../../diagnostics/report.ts'
import type { MaterialReference } from '../../schema/loaded-records.ts'
import { HEAT_ROWS, MASS_ROWS, ownRows, readRows } from './reading-rows.ts'
import type { FoundTable, ReferenceTables } from './reference-tables.ts'
import type { PlacedReadings } from './reference-tests.ts'

type Entry<Key extends keyof MaterialReference> = NonNullable<MaterialReference[Key]>

/** Where a test stands in its study. */
export interface TestPlace {
  readonly material: string
  readonly pointer: string
  readonly tables: ReferenceTables
  readonly report: FileReport
}

/** Units in which readings belong to one gram already. */
const PER_GRAM = ['specific-power', 'heat']
const POWERS = ['power', 'specific-power']
const MILLIGRAMS = 1000

/** @returns null where something is missing or at fault, which is told */
export function heatOf(entry: Entry<'heat'>, at: TestPlace): PlacedReadings | null {
  const { sample, share, start, age } = entry
  const { pointer, report } = at
  const rows = at.tables.rowsOf(entry, HEAT_ROWS, at)
  if (rows === null) return null
  const perGram = PER_GRAM.includes(rows.kind)
  if (!perGram && sample === undefined) {
    report.atKey(
      pointer,
      'key-missing',
      `the readings are of the whole sample, in ${rows.kind === 'power' ? 'mW' : 'J'}, and its mass is not stated`,
      'add sample, the mass of paste in the calorimeter',
    )
    return null
  }
  const baseline = baselineOf(entry, rows, at)
  if (baseline === null) return null
  return {
    rows,
    of: {
      test: 'heat',
      readings: {
        readings: rows.points,
        of: POWERS.includes(rows.kind) ? 'power' : 'heat',
        sampleG: perGram ? 1 : (sample?.value ?? 1),
        share: share.value / 100,
        baseline,
        startHours: start.value,
        atHours: age.hours,
      },
    },
  }
}

function baselineOf(
  { baseline }: Entry<'heat'>,
  { kind }: FoundTable,
  { pointer, report }: TestPlace,
): FoundTable['points'] | null {
  const isPower = POWERS.includes(kind)
  if (isPower && baseline === undefined)
    report.atKey(
      pointer,
      'key-missing',
      'the test has no baseline, and a power without one sums to any heat',
      'add baseline, a blank reading or two: ["0 h, 0.10 mW"]; 0 mW where it was taken off already',
    )
  if (!isPower && baseline !== undefined)
    report.atKey(
      `${pointer}/baseline`,
      'key-unknown',
      'a baseline belongs to readings of power, and these are of heat',
      'take it out, or give the power',
    )
  if (!isPower) return baseline === undefined ? [] : null
  if (baseline === undefined) return null
  if (2 < baseline.length) {
    report.atKey(
      `${pointer}/baseline`,
      'schema',
      `the baseline has ${baseline.length} readings; one, or two with a drift between them, were expected`,
      'keep the one before and the one after',
    )
    return null
  }
  const own = ownRows(baseline, `${pointer}/baseline`, report)
  const read = own === null ? null : readRows(own, { ...HEAT_ROWS, y: [kind] })
  return read?.points ?? null
}

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
): { readonly thermogram: Thermogram; readonly rows: FoundTable } | null {
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
  return {
    rows,
    thermogram: {
      curve: rows.points.map(({ x, y }) => ({ x, y: y * MILLIGRAMS })),
      water: tangents
        ? { before: rangeOf(tangents.before), after: rangeOf(tangents.after) }
        : rangeOf(water ?? NO_RANGE),
      carbonate: carbonate === undefined ? null : rangeOf(carbonate),
      basis,
    },
  }
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

export function waterOf({ crucibles }: Entry<'bound-water'>): PlacedReadings {
  return {
    rows: null,
    of: {
      test: 'bound-water',
      readings: crucibles.map(({ crucible, dried, ignited }) => ({
        crucibleG: crucible.value,
        driedG: dried.value,
        ignitedG: ignited.value,
      })),
    },
  }
}

export function fixationOf(entry: Entry<'calcium-hydroxide-fixed'>): PlacedReadings {
  return {
    rows: null,
    of: {
      test: 'calcium-hydroxide-fixed',
      readings: {
        materialG: entry.material.value,
        limeG: entry.lime.value,
        blankLimeG: (entry['blank-lime'] ?? entry.lime).value,
        acidMmolPerL: entry.acid.value,
        sampleMl: entry['sample-volume'].value,
        blankMl: entry['blank-volume'].value,
        aliquotMl: entry.aliquot.value,
        totalMl: entry.total.value,
      },
    },
  }
}

export function pozzolanicityOf(entry: Entry<'pozzolanicity'>): PlacedReadings {
  const { aliquot, acid, complex } = entry
  return {
    rows: null,
    of: {
      test: 'pozzolanicity',
      readings: {
        aliquotMl: aliquot.value,
        acidMmolPerL: acid.concentration.value,
        acidMl: acid.volume.value,
        complexMmolPerL: complex.concentration.value,
        complexMl: complex.volume.value,
        errorMl: entry['volume-error'].value,
      },
    },
  }
}

export function limeStrengthOf(
  { cube, area, loads }: Entry<'lime-strength'>,
  { pointer, report }: TestPlace,
): PlacedReadings | null {
  const areaMm2 = area?.value ?? (cube === undefined ? undefined : cube.value * cube.value)
  if (areaMm2 === undefined || (area !== undefined && cube !== undefined)) {
    report.atKey(
      pointer,
      areaMm2 === undefined ? 'key-missing' : 'reading-twice',
      areaMm2 === undefined
        ? 'the loads have no area to be divided by'
        : 'the test states the side of a cube and an area',
      'write one of the two: cube, or area',
    )
    return null
  }
  return {
    rows: null,
    of: { test: 'lime-strength', readings: { loadsKN: loads.map(({ value }) => value), areaMm2 } },
  }
}
