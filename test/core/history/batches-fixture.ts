/** Control batches with one strength each. */
import type { MeasuredBatch } from '../../../src/core/history/control-batch-history.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { momentOfDay } from '../../../src/core/measure/moment.ts'
import type { Result } from '../../../src/core/result/result.ts'

/** Batches a week apart with one strength each. */
export function batchesOf(
  values: readonly number[],
  cement: (at: number) => string = () => 'A',
): MeasuredBatch[] {
  return values.map((value, at) => ({
    id: `K${at}`,
    laboratory: 'works',
    cast: momentOfDay(20_454 + 7 * at),
    cement: cement(at),
    results: [
      {
        property: 'compressive-strength',
        condition: 'c311',
        age: readAge('28 d'),
        unit: 'MPa',
        decimals: 1,
        tested: momentOfDay(20_454 + 7 * at + 28),
        value,
        valid: true,
        reasons: [],
      } as unknown as Result,
    ],
  }))
}
