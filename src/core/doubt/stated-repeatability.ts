/** The standard uncertainty that a laboratory states for its results: the scatter between its batches. */
import type { Uncertainty } from '../result/uncertainty.ts'
import { type Age, isSameAge } from '../measure/age.ts'
import { defined } from '../measure/defined.ts'
import { inForce, type Moment } from '../measure/moment.ts'
import { property, type PropertyKey } from '../measure/properties.ts'
import type { Result } from '../result/result.ts'
import { isFault, type Quantity, type QuantityKind, readQuantity } from '../measure/units.ts'

/** An entry of a laboratory's record, keys as in YAML. */
export interface StatedRepeatability {
  readonly property: string
  readonly condition?: string
  readonly age?: Age
  /** With its unit, for an index in percentage points. */
  readonly 'standard-deviation'?: string
  readonly 'coefficient-of-variation'?: Quantity
  readonly 'degrees-of-freedom'?: number
  readonly from: Moment
  readonly to?: Moment
  readonly basis: string
}

/**
 * The uncertainty that a laboratory states for a result.
 * @param stated entries of the result's laboratory
 * @returns from the entry in force on the day of the test for that property, condition and age, the most
 * particular of several; undefined where there is none
 * Notes: 1. a coefficient of variation is taken of the result's own value; 2. an entry without a condition or
 * an age holds for all of them.
 */
export function statedUncertainty(
  stated: readonly StatedRepeatability[],
  result: Result,
): Uncertainty | undefined {
  const entry = stated
    .filter(
      (candidate) =>
        candidate.property === result.property &&
        (candidate.condition === undefined || candidate.condition === result.condition) &&
        (candidate.age === undefined || isSameAge(candidate.age, result.age)) &&
        inForce(candidate, result.tested),
    )
    .sort((a, b) => particulars(b) - particulars(a))[0]
  const u = entry === undefined ? undefined : deviationOf(entry, result)
  if (entry === undefined || u === undefined) return undefined
  const df = entry['degrees-of-freedom']
  return defined({ u, df, basis: { code: 'stated' as const, params: { basis: entry.basis } } })
}

function particulars({ condition, age }: StatedRepeatability): number {
  return (condition === undefined ? 0 : 1) + (age === undefined ? 0 : 1)
}

function deviationOf(entry: StatedRepeatability, result: Result): number | undefined {
  const text = entry['standard-deviation']
  if (text === undefined)
    return entry['coefficient-of-variation'] === undefined
      ? undefined
      : (Math.abs(result.value) * entry['coefficient-of-variation'].value) / 100
  const readings = deviationKinds(result.property).map((kind) => readQuantity(text, kind))
  const quantity = readings.find((reading) => !isFault(reading))
  return quantity === undefined || isFault(quantity) ? undefined : quantity.value
}

/**
 * Kinds that a standard deviation of a property may be written in. A scatter of percentages is in percentage
 * points; for a measured property its own unit may stand, for an index it would be read as relative.
 */
export function deviationKinds(key: PropertyKey): QuantityKind[] {
  const { kind, nature } = property(key)
  return kind !== 'fraction' ? [kind] : nature === 'index' ? ['points'] : ['points', 'fraction']
}
