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
  it('takes no batch that is known only within bounds', () => {
    const control = result({
      property: 'bulk-resistivity',
      role: 'control',
      value: 40,
      bounds: { low: 40, high: null, open: 'low' },
    })
    const index = result({ property: 'resistivity-index', bounds: { low: 90, high: null, open: 'low' } })
    const lot = {
      id: 'L1',
      results: [
        { ...index, control: 'K1' },
        { ...index, control: 'K2' },
      ],
    }
    expect(batchSeries([{ cement: 'PC-A', results: [control] }], [lot])).toEqual(new Map())
  })
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
    const twice = { id: 'ash/1', results: [result({ control: 'K1' }), result({ control: 'K2', value: 92 })] }
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

  const means = (...results: readonly Result[]) =>
    [
      ...(batchSeries([], [{ id: 'ash/1', results }])
        .get('quay')
        ?.values() ?? []),
    ].map(({ batches }) => batches.map(({ mean }) => mean))

  it('takes one index for each control, the first, since what two share does not scatter between them', () => {
    const [first, second] = [
      result({ control: 'K1' }),
      result({ control: 'K1', value: 92, tested: readMoment('2026-03-06') }),
    ]
    const third = result({ control: 'K2', value: 94, tested: readMoment('2026-03-07') })
    expect([means(second, third, first), means(first, second)]).toEqual([[[90, 94]], []])
  })

  it('takes indices that name no control as against one', () => {
    expect(means(result({}), result({ value: 92 }))).toEqual([])
    expect(means(result({}), result({ value: 92 }), result({ value: 93, control: 'K1' }))).toEqual([[90, 93]])
  })

  it('takes another index against a control from the day on which the first no longer stands', () => {
    const day = (text: string) => readMoment(text).day
    const [first, second, other] = [
      result({ control: 'K1' }),
      result({ control: 'K1', value: 92 }),
      result({ control: 'K2', value: 94 }),
    ]
    const observations = [
      { result: first, from: day('2026-03-05'), until: day('2026-03-20') },
      { result: second, from: day('2026-03-08') },
      { result: other, from: day('2026-03-06') },
    ]
    const found = batchSeries([], [{ id: 'ash/1', results: [second, other], observations }])
    const [series] = [...(found.get('quay')?.values() ?? [])]
    expect(series?.batches.map(({ mean, from, until }) => [mean, from, until])).toEqual([
      [90, undefined, day('2026-03-20')],
      [92, day('2026-03-20'), undefined],
      [94, day('2026-03-06'), undefined],
    ])
  })

  it('puts "72 h" and "3 d" into one series', () => {
    const [early, late] = [
      result({ control: 'K1', age: readAge('72 h') }),
      result({ control: 'K2', value: 92, age: readAge('3 d') }),
    ]
    expect(means(early, late)).toEqual([[90, 92]])
  })
})
