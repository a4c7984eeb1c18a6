/** Strengths and resistivities of a control batch at each age. */
import { checkAge } from './age.ts'
import { batchResistivity, type BatchResistivity } from './bulk-resistivity.ts'
import { batchStrength, type BatchStrength } from './compressive-strength.ts'
import { dateOf } from './moment.ts'
import type { ControlMortar, MortarCondition, ResistivityReading, StrengthReading } from './mortar.ts'
import { property } from './properties.ts'
import { readingFaults } from './reading-faults.ts'
import { resultKey } from './result-key.ts'
import type { Result } from './result.ts'
import { resistivityLines, strengthLines } from './working-lines.ts'

interface Batch<Reading, Computed> { readonly reading: Reading; readonly batch: Computed; readonly valid: boolean; readonly reasons: readonly string[] }
export type ReadStrength = Batch<StrengthReading, BatchStrength>
export type ReadResistivity = Batch<ResistivityReading, BatchResistivity>

/** Readings that were taken by the as-of date; the others are planned. */
export function taken<T extends { readonly tested?: string; readonly specimens?: object; readonly mean?: unknown }>(readings: readonly T[] | undefined, asOf: string): T[] {
  return (readings ?? []).filter((reading) => reading.tested !== undefined && dateOf(reading.tested) <= asOf && (reading.specimens !== undefined || reading.mean !== undefined))
}

/** A strength reading with its own faults: range, age, a retest that replaces it. */
export function readStrength(reading: StrengthReading, cast: string, condition: MortarCondition, replaced: ReadonlyMap<string, string>): ReadStrength {
  const batch = batchStrength(reading, condition.strength?.specimen, condition.strength?.['batch-range'])
  const age = ageFaults(cast, reading, condition)
  const retest = retestFault(reading, replaced)
  return { reading, batch, valid: batch.valid && age.valid && retest.length === 0, reasons: [...batch.reasons, ...age.reasons, ...retest] }
}

/** A resistivity reading with its own faults: temperature, conditioning, geometry, age, a retest that replaces it. */
export function readResistivity(reading: ResistivityReading, cast: string, condition: MortarCondition, replaced: ReadonlyMap<string, string>): ReadResistivity {
  const batch = batchResistivity(reading, condition.resistivity?.specimen)
  const age = ageFaults(cast, reading, condition)
  const faults = [...readingFaults(reading, condition), ...retestFault(reading, replaced)]
  return { reading, batch, valid: batch.valid && age.valid && faults.length === 0, reasons: [...batch.reasons, ...age.reasons, ...faults] }
}

/** Which readings are replaced: "age|moment of the replaced one" to the moment of the retest. */
export function replacedBy(readings: readonly { readonly age: string; readonly tested?: string; readonly 'retest-of'?: string }[]): Map<string, string> {
  return new Map(readings.flatMap((reading) => (reading['retest-of'] === undefined ? [] : [[`${reading.age}|${reading['retest-of']}`, reading.tested ?? ''] as const])))
}

function retestFault(reading: { readonly age: string; readonly tested?: string }, replaced: ReadonlyMap<string, string>): string[] {
  const retest = replaced.get(`${reading.age}|${reading.tested ?? ''}`)
  return retest === undefined ? [] : [`replaced by the retest of ${retest}`]
}

function ageFaults(cast: string, reading: { readonly age: string; readonly tested?: string }, condition: MortarCondition): { valid: boolean; reasons: string[] } {
  const tolerance = condition.ages.find((entry) => entry.age === reading.age)?.within
  if (tolerance === undefined || reading.tested === undefined) return { valid: true, reasons: [] }
  const age = checkAge(cast, reading.tested, reading.age, tolerance.value)
  if (age.check === 'within') return { valid: true, reasons: [] }
  if (age.check === 'cannot-be-verified') return { valid: true, reasons: ['the age cannot be verified: a clock time is missing'] }
  return { valid: false, reasons: [`tested at ${inDays(age.hours)} d, outside ${reading.age} ± ${tolerance.written}`] }
}

function inDays(hours: number): string {
  return (hours / 24).toFixed(2)
}

/**
 * @param id of the control batch
 * @param asOf calendar date; readings taken later are left out
 * @returns one result for each reading, in the order of the record
 */
export function controlResults({ id, control, condition, asOf }: { id: string; control: ControlMortar; condition: MortarCondition; asOf: string }): Result[] {
  const common = { condition: control.condition, laboratory: control.laboratory, sample: id, sampleKind: 'control' as const, role: 'control' as const }
  const strengths = taken(control.strength, asOf)
  const resistivities = taken(control.resistivity, asOf)
  return [
    ...strengths.flatMap((reading) => strengthResult(readStrength(reading, control.cast, condition, replacedBy(strengths)), common)),
    ...resistivities.flatMap((reading) => resistivityResult(readResistivity(reading, control.cast, condition, replacedBy(resistivities)), common)),
  ]
}

type Common = Pick<Result, 'condition' | 'laboratory' | 'sample' | 'sampleKind' | 'role' | 'method'>

/** The mean strength of a batch as a result; none where it cannot be computed. */
export function strengthResult({ reading, batch, valid, reasons }: ReadStrength, common: Common): Result[] {
  if (batch.meanMPa === null) return []
  return [{
    ...common, key: resultKey({ ...common, property: 'compressive-strength', age: reading.age }), property: 'compressive-strength', age: reading.age, value: batch.meanMPa, unit: 'MPa',
    decimals: property('compressive-strength').decimals, n: batch.n, tested: reading.tested ?? '', ...(batch.summaryOnly ? { summaryOnly: true as const } : {}), valid, reasons,
    working: () => strengthLines(common.role === 'control' ? 'control' : 'test', batch),
  }]
}

/** The mean resistivity of a batch as a result; none where it cannot be computed. */
export function resistivityResult({ reading, batch, valid, reasons }: ReadResistivity, common: Common): Result[] {
  if (batch.meanOhmMetre === null) return []
  return [{
    ...common, key: resultKey({ ...common, property: 'bulk-resistivity', age: reading.age }), property: 'bulk-resistivity', age: reading.age, value: batch.meanOhmMetre, unit: 'ohm m',
    decimals: property('bulk-resistivity').decimals, n: batch.n, tested: reading.tested ?? '', ...(batch.summaryOnly ? { summaryOnly: true as const } : {}), valid, reasons,
    working: () => resistivityLines(common.role === 'control' ? 'control' : 'test', batch),
  }]
}
