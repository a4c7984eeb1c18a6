/** The mean of one mortar at one age as a result. */
import { defined } from '../measure/defined.ts'
import { property, type PropertyKey, storedUnit } from '../measure/properties.ts'
import type { MortarMeasurement } from '../mortar/mortar-measurement.ts'
import type { Moment } from '../measure/moment.ts'
import { knownFrom } from '../mortar/known-when.ts'
import type { ResultReason } from '../result/reason.ts'
import { resultKey } from '../result/result-key.ts'
import type { Result, UnmadeResult } from '../result/result.ts'
import { boundsStep } from '../result/working.ts'
import type { JudgedReading, TakenReading } from './judged-readings.ts'
import { specimenSteps } from './mortar-working.ts'
import { boundsOfMean } from './tested-specimens.ts'

/** What all results of one mortar share. */
export type OfMortar = Pick<
  Result,
  'laboratory' | 'sample' | 'sampleKind' | 'duty' | 'role' | 'begun' | 'method'
> & {
  readonly condition: string
}

/** The mean, or a test without a value and why it has none. */
export function meanResult(
  measurement: MortarMeasurement,
  { reading, specimens, valid, reasons }: JudgedReading,
  mortar: OfMortar,
): Result | UnmadeResult {
  const { property: key } = measurement
  const { mean } = specimens
  if (mean === null) return unmadeResult(key, reading, mortar, reasons)
  return {
    ...defined(mortar),
    key: resultKey({ ...mortar, property: key, age: reading.age }),
    property: key,
    age: reading.age,
    value: mean,
    unit: storedUnit(key),
    decimals: property(key).decimals,
    ...defined({ bounds: boundsOfMean(specimens) }),
    n: specimens.n,
    tested: reading.tested,
    ...lateKnown(reading.tested, knownFrom(reading)),
    ...(specimens.meanOnly ? { summaryOnly: true as const } : {}),
    valid,
    reasons,
    working: () => [
      ...specimenSteps(measurement, mortar.role === 'control' ? 'control' : 'test', { ...specimens, mean }),
      ...boundsStep(boundsOfMean(specimens), { unit: storedUnit(key), decimals: property(key).decimals }),
    ],
  }
}

/** `known` of a result, only where it became known after its test. */
export function lateKnown(tested: Moment, known: Moment): Pick<Result, 'known'> {
  return known.day === tested.day ? {} : { known }
}

/** A test that was done but gives no value. */
export function unmadeResult(
  key: PropertyKey,
  { age, tested }: Pick<TakenReading, 'age' | 'tested'>,
  { condition, laboratory, sample, sampleKind, duty, begun = tested }: OfMortar,
  reasons: readonly ResultReason[],
): UnmadeResult {
  return {
    property: key,
    condition,
    age,
    laboratory,
    sample,
    sampleKind,
    ...defined({ duty }),
    tested,
    begun,
    reasons,
  }
}
