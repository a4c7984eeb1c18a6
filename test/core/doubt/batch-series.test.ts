import { readMoment } from '../../../src/core/measure/moment.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import { batchSeries } from '../../../src/core/doubt/batch-series.ts'
import type { Result } from '../../../src/core/result/result.ts'

function result(more: Partial<Result>): Result {
  return {
    property: 'strength-activity-index',
    condition: 'warm',
    age: readAge('28 d'),
    laboratory: 'quay',
    role: 'producer',
    value: 90,
    tested: readMoment('2026-03-05'),
    valid: true,
    ...more,
  } as Result
}

describe('batchSeries', () => {
  it('takes a control’s strength for the strength index, grouped by cement, valid ones alone', () => {
    const strength = result({ property: 'compressive-strength', role: 'control', value: 40 })
    const series = batchSeries(
      [
        { cement: 'PC-A', results: [strength, { ...strength, valid: false }] },
        { cement: 'PC-B', results: [{ ...strength, value: 42 }] },
      ],
      [],
    )
    expect([...(series.get('quay')?.values() ?? [])]).toEqual([
      {
        property: 'strength-activity-index',
        condition: 'warm',
        age: readAge('28 d'),
        of: 'control batches',
        batches: [
          { group: 'PC-A', tested: readMoment('2026-03-05'), mean: 40 },
          { group: 'PC-B', tested: readMoment('2026-03-05'), mean: 42 },
        ],
      },
    ])
  })

  it('takes no other property of a control', () => {
    const flow = result({ property: 'density', role: 'control', value: 3.1 })
    expect(batchSeries([{ cement: 'PC-A', results: [flow] }], []).size).toBe(0)
  })

  it('takes no lot whose indices are alone of their kind, nor what was tested to verify', () => {
    const alone = { id: 'ash/2', results: [result({}), result({ age: readAge('7 d') })] }
    const verified = { id: 'ash/3', results: [result({}), result({ role: 'verification' })] }
    const elsewhere = { id: 'ash/4', results: [result({}), result({ laboratory: 'hill' })] }
    expect(batchSeries([], [alone, verified, elsewhere]).size).toBe(0)
  })

  it('takes indices of a lot only where two of one kind are valid, grouped by lot', () => {
    const twice = { id: 'ash/1', results: [result({}), result({ value: 92 })] }
    const once = {
      id: 'ash/2',
      results: [result({}), result({ valid: false }), result({ age: readAge('7 d') })],
    }
    const [series] = [...(batchSeries([], [twice, once]).get('quay')?.values() ?? [])]
    expect(series).toMatchObject({
      of: 'repeated lots',
      batches: [
        { group: 'ash/1', mean: 90 },
        { group: 'ash/1', mean: 92 },
      ],
    })
  })
})
