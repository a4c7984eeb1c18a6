/** Regular samples of a lot taken together, beside its composite: what mills print as averages and ranges of grabs. */
import { type Duty, dutyOf, type SampleKind } from '../measure/duty.ts'
import type { PropertyKey } from '../measure/properties.ts'
import { mean } from '../statistics/descriptive.ts'
import { type Bounds, boundsOfSum, type Known } from './bounds.ts'

/** What is asked of a result: one with a condition belongs to a mortar and is left out. */
export interface SampledResult extends Known {
  readonly property: PropertyKey
  readonly condition?: string
  readonly method?: string
  readonly sampleKind: SampleKind
  readonly duty?: Duty
  readonly valid: boolean
}

export interface RegularSummary<Sampled> {
  /** Regular results, two or more; a method of its own makes an entry of its own. */
  readonly n: number
  readonly mean: { readonly value: number; readonly bounds?: Bounds }
  readonly least: Sampled
  readonly most: Sampled
  /** Results of the same property and method on composite samples, in the order given. */
  readonly composites: readonly Sampled[]
}

/**
 * Number, mean and range of the regular samples of a lot, by property and method.
 * @param results of one lot, in the stored units of their properties
 * @returns in the order in which the properties first come; none with fewer than two valid regular results
 * Notes: 1. results that are not valid count nowhere; 2. every regular result counts once, whatever mass its sample
 * stands for; 3. what is known only within bounds gives a mean within bounds, and stands in the range by its written
 * figure; 4. of equal results the first is the one named.
 * Source: JCGM 100:2008, 4.2.1, equation (3), for the mean; interval arithmetic for its bounds.
 */
export function regularSummaries<Sampled extends SampledResult>(
  results: readonly Sampled[],
): RegularSummary<Sampled>[] {
  const counted = results.filter(({ condition, valid }) => condition === undefined && valid)
  const alike = Map.groupBy(counted, ({ property, method }) => `${property}|${method ?? ''}`)
  return [...alike.values()].flatMap((own) => {
    const regular = own.filter((result) => dutyOf(result) === 'regular')
    const composites = own.filter((result) => dutyOf(result) === 'composite')
    const [first, ...others] = regular
    return first === undefined || others.length === 0 ? [] : [{ ...summary([first, ...others]), composites }]
  })
}

function summary<Sampled extends SampledResult>(
  regular: readonly [Sampled, ...Sampled[]],
): Omit<RegularSummary<Sampled>, 'composites'> {
  const bounds = boundsOfSum(regular.map((of) => ({ factor: 1 / regular.length, of })))
  return {
    n: regular.length,
    // JCGM 100:2008, 4.2.1, equation (3).
    mean: { value: mean(regular.map(({ value }) => value)), ...(bounds === undefined ? {} : { bounds }) },
    least: regular.reduce((least, result) => (result.value < least.value ? result : least)),
    most: regular.reduce((most, result) => (most.value < result.value ? result : most)),
  }
}
