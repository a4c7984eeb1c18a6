/** Strengths and resistivities of a control batch at each age. */
import { checkAge } from '../measure/age.ts'
import { batchResistivity, type BatchResistivity } from '../resistivity/bulk-resistivity.ts'
import { batchStrength, type BatchStrength } from '../strength/compressive-strength.ts'
import { dateOf } from '../measure/moment.ts'
import type { ControlMortar, MortarCondition, ResistivityReading, StrengthReading } from '../mortar/mortar.ts'
import { property, type PropertyKey } from '../measure/properties.ts'
import { readingFaults, readingNotes } from '../resistivity/reading-faults.ts'
import { resultKey } from '../result/result-key.ts'
import { isMade, type Result, type UnmadeResult } from '../result/result.ts'
import { replacedReadings } from '../mortar/retests.ts'
import { resistivityLines, strengthLines } from '../../words/working-lines.ts'

interface Batch<Reading, Computed> {
  readonly reading: Reading
  readonly batch: Computed
  readonly valid: boolean
  readonly reasons: readonly string[]
}
export type ReadStrength = Batch<StrengthReading, BatchStrength>
export type ReadResistivity = Batch<ResistivityReading, BatchResistivity>

/** Readings that were taken by the as-of date; the others are planned. */
export function taken<
  T extends { readonly tested?: string; readonly specimens?: object; readonly mean?: unknown },
>(readings: readonly T[] | undefined, asOf: string): T[] {
  return (readings ?? []).filter(
    (reading) =>
      reading.tested !== undefined &&
      dateOf(reading.tested) <= asOf &&
      (reading.specimens !== undefined || reading.mean !== undefined),
  )
}

/** Strength readings with their own faults: range, age, a retest that replaces one. */
export function readStrengths(
  readings: readonly StrengthReading[],
  cast: string,
  condition: MortarCondition,
): ReadStrength[] {
  const replaced = replacedReadings(readings)
  return readings.map((reading) => {
    const batch = batchStrength(reading, condition.strength?.specimen, condition.strength?.['batch-range'])
    return withFaults(reading, batch, ageFaults(cast, reading, condition), retestFault(replaced.get(reading)))
  })
}

/**
 * Resistivity readings with their own faults: temperature, conditioning, geometry, age, a retest that
 * replaces one.
 */
export function readResistivities(
  readings: readonly ResistivityReading[],
  cast: string,
  condition: MortarCondition,
): ReadResistivity[] {
  const replaced = replacedReadings(readings)
  return readings.map((reading) => {
    const batch = batchResistivity(reading, condition.resistivity?.specimen)
    const faults = [...readingFaults(reading, condition), ...retestFault(replaced.get(reading))]
    const age = ageFaults(cast, reading, condition)
    return withFaults(
      reading,
      batch,
      { ...age, reasons: [...age.reasons, ...readingNotes(reading, condition)] },
      faults,
    )
  })
}

function withFaults<
  Reading,
  Computed extends { readonly valid: boolean; readonly reasons: readonly string[] },
>(
  reading: Reading,
  batch: Computed,
  age: { valid: boolean; reasons: readonly string[] },
  faults: readonly string[],
): Batch<Reading, Computed> {
  return {
    reading,
    batch,
    valid: batch.valid && age.valid && faults.length === 0,
    reasons: [...batch.reasons, ...age.reasons, ...faults],
  }
}

function retestFault(retest: string | undefined): string[] {
  return retest === undefined ? [] : [`replaced by the retest of ${retest}`]
}

function ageFaults(
  cast: string,
  reading: { readonly age: string; readonly tested?: string },
  condition: MortarCondition,
): { valid: boolean; reasons: string[] } {
  const tolerance = condition.ages.find((entry) => entry.age === reading.age)?.within
  if (tolerance === undefined || reading.tested === undefined) return { valid: true, reasons: [] }
  const age = checkAge(cast, reading.tested, reading.age, tolerance.value)
  if (age.check === 'within') return { valid: true, reasons: [] }
  if (age.check === 'cannot-be-verified')
    return { valid: true, reasons: ['the age cannot be verified: a clock time is missing'] }
  return {
    valid: false,
    reasons: [`tested at ${inDays(age.hours)} d, outside ${reading.age} ± ${tolerance.written}`],
  }
}

function inDays(hours: number): string {
  return (hours / 24).toFixed(2)
}

/**
 * @param id of the control batch
 * @param asOf calendar date; readings taken later are left out
 * @returns one result for each reading that gives a value, in the order of the record
 */
export function controlResults({
  id,
  control,
  condition,
  asOf,
}: {
  id: string
  control: ControlMortar
  condition: MortarCondition
  asOf: string
}): Result[] {
  const common = {
    condition: control.condition,
    laboratory: control.laboratory,
    sample: id,
    sampleKind: 'control' as const,
    role: 'control' as const,
  }
  return [
    ...readStrengths(taken(control.strength, asOf), control.cast, condition).map((read) =>
      strengthResult(read, common),
    ),
    ...readResistivities(taken(control.resistivity, asOf), control.cast, condition).map((read) =>
      resistivityResult(read, common),
    ),
  ].filter(isMade)
}

type Common = Pick<Result, 'condition' | 'laboratory' | 'sample' | 'sampleKind' | 'role' | 'method'>

/** A test that was done but gives no value. */
export function unmade(
  property: PropertyKey,
  reading: { readonly age: string; readonly tested?: string },
  common: Common,
  reasons: readonly string[],
): UnmadeResult {
  const { condition = '', laboratory, sample } = common
  return { property, condition, age: reading.age, laboratory, sample, tested: reading.tested ?? '', reasons }
}

/** The mean strength of a batch as a result, or why there is none. */
export function strengthResult(
  { reading, batch, valid, reasons }: ReadStrength,
  common: Common,
): Result | UnmadeResult {
  if (batch.meanMPa === null) return unmade('compressive-strength', reading, common, reasons)
  return {
    ...common,
    key: resultKey({ ...common, property: 'compressive-strength', age: reading.age }),
    property: 'compressive-strength',
    age: reading.age,
    value: batch.meanMPa,
    unit: 'MPa',
    decimals: property('compressive-strength').decimals,
    n: batch.n,
    tested: reading.tested ?? '',
    ...(batch.summaryOnly ? { summaryOnly: true as const } : {}),
    valid,
    reasons,
    working: () => strengthLines(common.role === 'control' ? 'control' : 'test', batch),
  }
}

/** The mean resistivity of a batch as a result, or why there is none. */
export function resistivityResult(
  { reading, batch, valid, reasons }: ReadResistivity,
  common: Common,
): Result | UnmadeResult {
  if (batch.meanOhmMetre === null) return unmade('bulk-resistivity', reading, common, reasons)
  return {
    ...common,
    key: resultKey({ ...common, property: 'bulk-resistivity', age: reading.age }),
    property: 'bulk-resistivity',
    age: reading.age,
    value: batch.meanOhmMetre,
    unit: 'ohm m',
    decimals: property('bulk-resistivity').decimals,
    n: batch.n,
    tested: reading.tested ?? '',
    ...(batch.summaryOnly ? { summaryOnly: true as const } : {}),
    valid,
    reasons,
    working: () => resistivityLines(common.role === 'control' ? 'control' : 'test', batch),
  }
}
