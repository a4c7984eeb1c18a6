/** Lots with a producer's and an agency's results. */
import type { ComparedLot } from '../../../src/core/agency/pairs.ts'
import type { PropertyKey } from '../../../src/core/measure/properties.ts'
import { momentOfDay, readMoment } from '../../../src/core/measure/moment.ts'
import type { Result } from '../../../src/core/result/result.ts'
import { result, setOf } from '../judging/fixture.ts'

export const LOSS = setOf([{ clause: 'loss', property: 'loss-on-ignition', 'at-most': '6.0 %' }])

export function agencys(key: PropertyKey, value: number, more: Partial<Result> = {}): Result {
  return result(key, value, {
    role: 'verification',
    laboratory: 'roads',
    sample: 'S',
    sampleKind: 'split',
    ...more,
  })
}

/** @param place days after 1 March 2026 at which the lot was sampled */
export function lotOf(
  place: number,
  results: readonly Result[],
  more: Partial<ComparedLot> = {},
): ComparedLot {
  return {
    id: `ash/${place}`,
    number: `A-${place}`,
    sampled: momentOfDay(readMoment('2026-03-01').day + place),
    class: 'F',
    results,
    criterion: LOSS,
    ...more,
  }
}
