/** What a study's readings gave by a day. */
import { isBy, type Moment } from '../../core/measure/moment.ts'
import { batchIndices, type StudyIndices } from '../../core/studies/batch-indices.ts'
import type { StudyRecord } from '../records.ts'
import { specimensOf } from './screening-asked.ts'

/**
 * @param asOf readings made after it are left out; without it none is
 * @returns the indices, and how many readings they are made from
 */
export function knownIndices(
  { record, readings }: StudyRecord,
  asOf: Moment | undefined,
): { readonly readings: number; readonly indices: StudyIndices } {
  const known = readings.filter(
    ({ tested }) => tested === undefined || asOf === undefined || isBy(tested, asOf),
  )
  return { readings: known.length, indices: batchIndices(known, specimensOf(record)) }
}
