import { describe, expect, it } from 'vitest'
import { controlBatchSeries } from '../../../src/core/history/control-batch-history.ts'
import { batchesOf } from './batches-fixture.ts'

const LEVEL = [40.2, 39.7, 40.4, 39.9, 40.1, 39.6, 40.3, 39.8, 40.0, 40.2, 39.7, 40.2]

describe('controlBatchSeries', () => {
  it('has one series with a point for each batch, in order of casting', () => {
    const [series, ...others] = controlBatchSeries(batchesOf(LEVEL), [])
    expect(others).toEqual([])
    expect(series?.points.map(({ named }) => named?.batch)).toEqual(LEVEL.map((_, at) => `K${at}`))
    expect(series?.segments).toHaveLength(1)
  })

  it('by hand: after batches of 40 and 42 one of 36.9 lies 10 % below their mean', () => {
    const [series] = controlBatchSeries(batchesOf([40, 42, 36.9]), [])
    expect(series?.points.map(({ fromEarlierPercent }) => fromEarlierPercent)).toEqual([
      null,
      expect.closeTo(5, 10),
      expect.closeTo(-10, 10),
    ])
  })

  it('holds a batch against the scatter of all before it, once eight degrees of freedom are there', () => {
    const [series] = controlBatchSeries(batchesOf([...LEVEL, 35.2]), [])
    const deviations = series?.points.map(({ fromEarlierDeviations }) => fromEarlierDeviations) ?? []
    expect(deviations.slice(0, 9)).toEqual(Array.from({ length: 9 }, () => null))
    expect(deviations[12]).toBeLessThan(-10)
    expect(Math.abs(deviations[11] ?? Number.NaN)).toBeLessThan(3)
  })

  it('finds by cumulative sums a small step that stays, and states how often they do so without one', () => {
    const shifted = [...LEVEL, ...LEVEL, ...LEVEL.map((value) => value - 0.5)]
    const [series] = controlBatchSeries(batchesOf(shifted), [])
    const [segment] = series?.segments ?? []
    if (segment?.chart.shown !== true) throw new Error('the chart of 36 batches is shown')
    const rules = segment.chart.signals.filter(({ side }) => side === 'low').map(({ rule }) => rule)
    expect(rules).toContain('cusum')
    expect(rules).not.toContain('beyond-limits')
    expect(segment.cusum).toMatchObject({ shown: true, reference: 0.5, decision: 5 })
    expect(segment.chart.falseAlarms.map(({ rule }) => rule)).toContain('cusum')
  })

  it('begins anew with another cement, unless paired batches join the two', () => {
    const two = batchesOf(LEVEL, (at) => (at < 6 ? 'A' : 'B'))
    expect(controlBatchSeries(two, [])[0]?.segments.map(({ cements }) => cements)).toEqual([['A'], ['B']])
    const bridges = [{ laboratory: 'works', from: 'A', to: 'B' }]
    expect(controlBatchSeries(two, bridges)[0]?.segments.map(({ cements }) => cements)).toEqual([['A', 'B']])
    // The pairs tell how far apart the cements are: the first batch with the other is held against none.
    const percents = controlBatchSeries(two, bridges)[0]?.points.map((one) => one.fromEarlierPercent)
    expect([percents?.[5], percents?.[6]]).toEqual([expect.closeTo(-1.15, 2), null])
  })
})
