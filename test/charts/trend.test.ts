import { readMoment } from '../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import { placeLabels } from '../../src/charts/labels.ts'
import { type TrendInput, type TrendPoint, trendModel } from '../../src/charts/trend.ts'

function point(
  day: number,
  value: number | null,
  status: TrendPoint['status'] = 'valid',
  mean?: number,
): TrendPoint {
  return {
    lot: `S/L${day}`,
    at: readMoment(`2026-01-${String(day).padStart(2, '0')}`),
    value,
    status,
    ...(mean === undefined ? {} : { mean }),
  }
}

function model(points: readonly TrendPoint[], more: Partial<TrendInput> = {}) {
  return trendModel({ points, limits: [], events: [], decimals: 1, width: 900, height: 240, ...more })
}

describe('trendModel', () => {
  it('breaks its line at a point that is not valid, and marks that point by another shape', () => {
    const trend = model([point(1, 80), point(5, 82), point(9, 20, 'not-valid'), point(13, 81), point(17, 83)])
    expect(trend?.lines.map((path) => path.match(/[ML]/g)?.length)).toEqual([2, 2])
    expect(trend?.marks.map((mark) => mark.shape)).toEqual([
      'circle',
      'circle',
      'diamond',
      'circle',
      'circle',
    ])
  })
  it('puts an awaited point on the lower edge, as a ring, and does not break the line for it', () => {
    const trend = model([point(1, 80), point(5, 82), point(9, null, 'pending')])
    expect(trend?.marks[2]).toMatchObject({ shape: 'ring', y: 240 - 26 - 5 })
    expect(trend?.lines).toHaveLength(1)
  })
  it('is null without any value and stands for one value alone', () => {
    expect(model([])).toBeNull()
    expect(model([point(1, null, 'pending')])).toBeNull()
    const trend = model([point(1, 80)])
    expect(trend?.marks).toHaveLength(1)
    expect([trend?.marks[0]?.x, trend?.marks[0]?.y].every((value) => Number.isFinite(value))).toBe(true)
  })
  it('keeps every point and limit inside the plot, with equal values too', () => {
    for (const values of [
      [80, 80, 80],
      [74.9, 75.1, 120],
      [-0.03, 0.02, 0.05],
    ]) {
      const trend = model(
        values.map((value, index) => point(1 + 4 * index, value)),
        { limits: [{ value: 75, label: 'at least 75 %' }] },
      )
      for (const y of [
        ...(trend?.marks.map((mark) => mark.y) ?? []),
        ...(trend?.limits.map((limit) => limit.y) ?? []),
      ]) {
        expect(y).toBeGreaterThanOrEqual(trend?.plot.top ?? 0)
        expect(y).toBeLessThanOrEqual(trend?.plot.bottom ?? 0)
      }
    }
  })
  it('takes a logarithmic axis where 80 and 1500 % stand together, and sets them well apart from the edges', () => {
    const trend = model([point(1, 80), point(5, 95), point(9, 1500)])
    expect(trend?.logarithmic).toBe(true)
    const heights = trend?.marks.map((mark) => mark.y) ?? []
    expect((heights[0] ?? 0) - (heights[1] ?? 0)).toBeGreaterThan(5)
    expect(model([point(1, 80), point(5, 95)])?.logarithmic).toBe(false)
  })
  it('keeps a linear axis where one is asked for, however far the values spread', () => {
    expect(model([point(1, 0.4), point(5, 5.9)], { axis: 'linear' })?.logarithmic).toBe(false)
    expect(model([point(1, 0.4), point(5, 5.9)])?.logarithmic).toBe(true)
  })
  it('draws a dot for each valid point and for no other', () => {
    const trend = model([
      point(1, 80),
      point(5, 20, 'not-valid'),
      point(9, 82),
      point(13, 81, 'withdrawn'),
      point(17, null, 'pending'),
    ])
    const valid = trend?.marks.filter((mark) => mark.shape === 'circle') ?? []
    expect(valid).toHaveLength(2)
    expect(trend?.dots).toBe(valid.map((mark) => `M${mark.x},${mark.y}h0`).join(''))
  })
  it('keeps the band inside the plot, though it reaches further than the values', () => {
    const trend = model([point(1, 2.3, 'valid', 2.3), point(9, 2.35, 'valid', 2.32)], {
      band: { half: 5, relative: true },
      decimals: 2,
    })
    const heights = [...(trend?.band.matchAll(/,(-?\d+(?:\.\d+)?)/g) ?? [])].map((match) => Number(match[1]))
    expect(heights).toHaveLength(4)
    expect(Math.min(...heights)).toBeGreaterThanOrEqual(trend?.plot.top ?? 0)
    expect(Math.max(...heights)).toBeLessThanOrEqual(trend?.plot.bottom ?? 0)
  })
  it('adds the rows of event labels above, so that the plot keeps its height', () => {
    const bare = model([point(1, 80), point(28, 82)])
    const events = [
      { from: readMoment('2026-01-10'), title: 'outage of the second boiler' },
      { from: readMoment('2026-01-11'), title: 'outage of the first boiler' },
    ]
    const trend = model([point(1, 80), point(28, 82)], { events })
    expect(trend?.height).toBe(240 + 30)
    expect((trend?.plot.bottom ?? 0) - (trend?.plot.top ?? 0)).toBe(
      (bare?.plot.bottom ?? 0) - (bare?.plot.top ?? 0),
    )
  })
  it('cuts an event’s label that is wider than the plot, and leaves out events outside it', () => {
    const trend = model([point(1, 80), point(28, 82)], {
      width: 380,
      events: [
        { from: readMoment('2026-01-10'), title: 'a'.repeat(90) },
        { from: readMoment('2020-01-10'), title: 'long ago' },
      ],
    })
    expect(trend?.events.map((event) => event.label.text.endsWith('…'))).toEqual([true])
    expect(trend?.events[0]?.label.text.length).toBeLessThan(60)
  })
  it('draws the band of a percentage wider where the mean is larger', () => {
    const trend = model([point(1, 2, 'valid', 2), point(9, 2.1, 'valid', 2.5)], {
      band: { half: 5, relative: true },
    })
    const numbers = trend?.band.match(/-?\d+(\.\d+)?/g)?.map(Number) ?? []
    const [, upper0 = 0, , upper1 = 0, , lower1 = 0, , lower0 = 0] = numbers
    expect(Math.abs(lower1 - upper1)).toBeGreaterThan(Math.abs(lower0 - upper0))
  })
  it('sets two limits’ labels apart when the limits lie close together', () => {
    const trend = model([point(1, 80), point(5, 120)], {
      limits: [
        { value: 75, label: 'a' },
        { value: 75.5, label: 'b' },
      ],
    })
    const [first, second] = trend?.limits ?? []
    expect((second?.labelY ?? 0) - (first?.labelY ?? 0)).toBeGreaterThanOrEqual(13)
  })
})

describe('placeLabels', () => {
  it('gives each row labels that do not touch and keeps all inside the bounds', () => {
    const wishes = [40, 60, 80, 300, 310, 890].map((x, index) => ({ text: `event ${index}`, x, width: 60 }))
    const placed = placeLabels(wishes, { left: 30, right: 900 })
    for (const [index, label] of placed.entries()) {
      expect(label.x - 30).toBeGreaterThanOrEqual(30)
      expect(label.x + 30).toBeLessThanOrEqual(900)
      for (const other of placed.slice(index + 1))
        if (other.row === label.row) expect(Math.abs(other.x - label.x)).toBeGreaterThanOrEqual(60)
    }
    expect(new Set(placed.map((label) => label.row)).size).toBeGreaterThan(1)
  })
})
