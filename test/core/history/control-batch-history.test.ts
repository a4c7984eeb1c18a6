import { describe, expect, it } from 'vitest'
import { controlBatchSeries, type MeasuredBatch } from '../../../src/core/history/control-batch-history.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { momentOfDay } from '../../../src/core/measure/moment.ts'
import type { Result } from '../../../src/core/result/result.ts'

/** Batches a week apart with one strength each. */
function batches(values: readonly number[], cement: (at: number) => string = () => 'A'): MeasuredBatch[] {
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
        value,
        valid: true,
        reasons: [],
      } as unknown as Result,
    ],
  }))
}

const LEVEL = [40.2, 39.7, 40.4, 39.9, 40.1, 39.6, 40.3, 39.8, 40.0, 40.2, 39.7, 40.2]

describe('controlBatchSeries', () => {
  it('has one series with a point for each batch, in order of casting', () => {
    const [series, ...others] = controlBatchSeries(batches(LEVEL), [])
    expect(others).toEqual([])
    expect(series?.points.map(({ named }) => named?.batch)).toEqual(LEVEL.map((_, at) => `K${at}`))
    expect(series?.segments).toHaveLength(1)
  })

  it('by hand: after batches of 40 and 42 one of 36.9 lies 10 % below their mean', () => {
    const [series] = controlBatchSeries(batches([40, 42, 36.9]), [])
    expect(series?.points.map(({ fromEarlierPercent }) => fromEarlierPercent)).toEqual([
      null,
      expect.closeTo(5, 10),
      expect.closeTo(-10, 10),
    ])
  })

  it('holds a batch against the scatter of all before it, once ten degrees of freedom are there', () => {
    const [series] = controlBatchSeries(batches([...LEVEL, 35.2]), [])
    const deviations = series?.points.map(({ fromEarlierDeviations }) => fromEarlierDeviations) ?? []
    expect(deviations.slice(0, 11)).toEqual(Array.from({ length: 11 }, () => null))
    expect(deviations[12]).toBeLessThan(-10)
    expect(Math.abs(deviations[11] ?? Number.NaN)).toBeLessThan(3)
  })

  it('finds by cumulative sums a small step that stays, and states how often they do so without one', () => {
    const shifted = [...LEVEL, ...LEVEL, ...LEVEL.map((value) => value - 0.5)]
    const [series] = controlBatchSeries(batches(shifted), [])
    const [segment] = series?.segments ?? []
    if (segment?.chart.shown !== true) throw new Error('the chart of 36 batches is shown')
    const rules = segment.chart.signals.filter(({ side }) => side === 'low').map(({ rule }) => rule)
    expect(rules).toContain('cusum')
    expect(rules).not.toContain('beyond-limits')
    expect(segment.cusum).toMatchObject({ shown: true, reference: 0.5, decision: 5 })
    expect(segment.chart.falseAlarms.map(({ rule }) => rule)).toContain('cusum')
  })

  it('begins anew with another cement, unless paired batches join the two', () => {
    const two = batches(LEVEL, (at) => (at < 6 ? 'A' : 'B'))
    expect(controlBatchSeries(two, [])[0]?.segments.map(({ cements }) => cements)).toEqual([['A'], ['B']])
    const bridges = [{ laboratory: 'works', from: 'A', to: 'B' }]
    expect(controlBatchSeries(two, bridges)[0]?.segments.map(({ cements }) => cements)).toEqual([['A', 'B']])
  })
})
