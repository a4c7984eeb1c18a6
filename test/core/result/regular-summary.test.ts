import { describe, expect, it } from 'vitest'
import { regularSummaries, type SampledResult } from '../../../src/core/result/regular-summary.ts'

const regular = (value: number, more: Partial<SampledResult> = {}): SampledResult => ({
  property: 'loss-on-ignition',
  sampleKind: 'grab',
  value,
  valid: true,
  ...more,
})
const composite = (value: number, more: Partial<SampledResult> = {}) =>
  regular(value, { sampleKind: 'composite', ...more })

describe('regularSummaries', () => {
  it('gives number, mean and range beside the composite, as worked by hand', () => {
    // 2.1 + 1.7 + 2.8 + 1.7 = 8.3 = 83/10, over four: 83/40 = 2.075.
    const four = [regular(2.1), regular(1.7), regular(2.8), regular(1.7)]
    const [found, ...others] = regularSummaries([...four, composite(2.2)])
    expect(others).toEqual([])
    expect([found?.n, found?.mean]).toEqual([4, { value: 83 / 40 }])
    expect([found?.least, found?.most]).toEqual([four[1], four[2]])
    expect(found?.composites.map(({ value }) => value)).toEqual([2.2])
  })
  it('is the same whatever the order, and moves with a constant', () => {
    const values = [2.1, 1.7, 2.8, 1.9]
    const of = (list: readonly number[]) =>
      regularSummaries(list.map((value) => regular(value)))[0]?.mean.value
    expect(of(values.toReversed())).toBe(of(values))
    expect(of(values.map((value) => value + 10))).toBeCloseTo((of(values) ?? 0) + 10, 12)
  })
  it('leaves out what is not valid, is of a mortar or verifies, and what stands alone', () => {
    const left = [
      regular(9, { valid: false }),
      regular(9, { sampleKind: 'split' }),
      regular(9, { condition: 'c311' }),
      composite(9, { valid: false }),
    ]
    expect(regularSummaries([regular(1), ...left])).toEqual([])
    const [found] = regularSummaries([
      regular(1),
      regular(2, { sampleKind: 'composite', duty: 'regular' }),
      ...left,
    ])
    expect([found?.n, found?.mean.value, found?.composites]).toEqual([2, 1.5, []])
  })
  it('keeps properties and methods apart, in the order in which they first come', () => {
    const other = (value: number) => regular(value, { method: 'ASTM D7348' })
    const dry = (value: number) => regular(value, { property: 'moisture' })
    const found = regularSummaries([dry(0.1), regular(1), other(3), dry(0.3), regular(2), other(4)])
    expect(found.map(({ n, mean, least }) => [least.property, least.method, n, mean.value])).toEqual([
      ['moisture', undefined, 2, 0.2],
      ['loss-on-ignition', undefined, 2, 1.5],
      ['loss-on-ignition', 'ASTM D7348', 2, 3.5],
    ])
  })
  it('gives a mean within bounds where a value is known only as below something', () => {
    // Between (0 + 0.3) / 2 and (0.1 + 0.3) / 2.
    const below = regular(0.1, { censored: 'below', bounds: { low: 0, high: 0.1, open: 'high' } })
    const [found] = regularSummaries([below, regular(0.3)])
    expect(found?.mean).toEqual({ value: 0.2, bounds: { low: 0.15, high: 0.2, open: 'high' } })
    expect(found?.least).toBe(below)
  })
})
