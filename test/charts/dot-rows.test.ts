import { describe, expect, it } from 'vitest'
import { type Dot, dotRows } from '../../src/charts/dot-rows.ts'

const dot = (value: number, more: Partial<Dot> = {}): Dot => ({
  ...{ value, low: null, high: null, shape: 'disc', name: null },
  ...more,
})

describe('dotRows', () => {
  it('lays equal ratios equally far apart', () => {
    const drawn = dotRows([{ lanes: [[dot(50), dot(100), dot(200)]], ground: null, mark: null }])
    const [a = 0, b = 0, c = 0] = drawn?.rows[0]?.dots.map(({ x }) => x) ?? []
    expect(b - a).toBeCloseTo(c - b, 0)
    expect(a).toBeGreaterThan(0)
    expect(c).toBeLessThan(1000)
  })
  it('keeps lanes in their order and rows apart', () => {
    const row = { lanes: [[dot(60)], [dot(70)], [dot(80)]], ground: null, mark: null }
    const drawn = dotRows([row, row])
    const [first, second] = drawn?.rows ?? []
    const [upper = 0, middle = 0, lower = 0] = first?.dots.map(({ y }) => y) ?? []
    expect(upper).toBeLessThan(middle)
    expect(middle).toBeLessThan(lower)
    expect((first?.top ?? 0) + (first?.height ?? 0)).toBeLessThan(second?.top ?? 0)
  })
  it('names a dot above the first lane and below the last, where no other dot stands', () => {
    const lanes = [[dot(60, { name: 'A' })], [dot(70)], [dot(80, { name: 'C' })]]
    const [first, , last] = dotRows([{ lanes, ground: null, mark: null }])?.rows[0]?.dots ?? []
    expect(first?.nameY).toBeLessThan((first?.y ?? 0) - 4)
    expect(first?.nameY).toBeGreaterThan(0)
    expect(last?.nameY).toBeGreaterThan((last?.y ?? 0) + 12)
  })
  it('draws intervals, ground and threshold on the same scale as the dots', () => {
    const drawn = dotRows([
      {
        lanes: [[dot(100, { low: 90, high: 110 })], [dot(75)]],
        ground: { from: 75, to: 100, is: 'gap' },
        mark: 90,
      },
    ])
    const [row] = drawn?.rows ?? []
    const [reactive, inert] = row?.dots ?? []
    expect(row?.ground?.x).toBe(inert?.x)
    expect((row?.ground?.x ?? 0) + (row?.ground?.width ?? 0)).toBeCloseTo(reactive?.x ?? 0, 0)
    expect(row?.mark).toBe(row?.intervals[0]?.from)
  })
  it('has ticks within the scale, and nothing to draw without a value', () => {
    const drawn = dotRows([{ lanes: [[dot(48), dot(104)]], ground: null, mark: null }])
    expect(drawn?.ticks.map(({ value }) => value)).toEqual([50, 60, 70, 80, 90, 100])
    expect(dotRows([{ lanes: [[]], ground: null, mark: null }])).toBeNull()
  })
})
