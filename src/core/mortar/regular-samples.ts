/** When the samples of a lot were complete. */
import { defined } from '../measure/defined.ts'
import { type Duty, dutyOf } from '../measure/duty.ts'
import type { Moment } from '../measure/moment.ts'
import type { Sample } from './mortar.ts'

/** A sample with the time of its taking: a period, or the moment of a grab. */
export interface TakenSample extends Sample {
  readonly taken?: { readonly to: Moment }
  readonly on?: Moment
}

/**
 * The ends of sampling of all samples of one duty.
 * @returns in the order of the record, those without a time left out
 */
export function endsOfSampling(
  samples: readonly TakenSample[],
  duty: Duty,
): readonly (readonly [id: string, end: Moment])[] {
  return samples.flatMap(({ id, kind, taken, on, ...sample }) => {
    const end = taken?.to ?? on
    const own = dutyOf({ sampleKind: kind, ...defined({ duty: sample.duty }) })
    return end === undefined || own !== duty ? [] : [[id, end] as const]
  })
}

/**
 * When the regular samples of a lot were complete.
 * @returns by mark; undefined where it has none that says so
 */
export function regularSamples({
  samples,
}: {
  readonly samples: readonly TakenSample[]
}): Readonly<Record<string, Moment>> | undefined {
  const ends = endsOfSampling(samples, 'regular')
  return ends.length === 0 ? undefined : Object.fromEntries(ends)
}
