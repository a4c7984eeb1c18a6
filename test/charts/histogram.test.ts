/** A histogram about an edge as plain values. */
import { describe, expect, it } from 'vitest'
import { histogram } from '../../src/charts/histogram.ts'

const about = { edge: 75, barWidth: 1, window: { from: 73, to: 77 }, expected: null, height: 130 }

describe('histogram', () => {
  it('begins a bar at the edge: a value at the edge counts above it, one below it before it', () => {
    const bars = histogram({ ...about, values: [74.999, 75, 75.5, 78.2] })?.bars
    expect(bars?.map(({ from, count }) => ({ from, count }))).toEqual([
      { from: 73, count: 0 },
      { from: 74, count: 1 },
      { from: 75, count: 2 },
      { from: 76, count: 0 },
      { from: 77, count: 0 },
      { from: 78, count: 1 },
    ])
    expect(bars?.every(({ from, to }) => to - from === 1)).toBe(true)
  })

  it('counts every value once', () => {
    const values = Array.from({ length: 200 }, (_, step) => 70 + ((step * 7.3) % 12))
    const bars = histogram({ ...about, values })?.bars ?? []
    expect(bars.reduce((sum, { count }) => sum + count, 0)).toBe(200)
  })

  it('places edge and window on the axis of the bars', () => {
    // Six bars from 73 to 79: the edge is a third of the way, the window four sixths.
    const model = histogram({ ...about, values: [74.999, 75, 78.2] })
    expect(model?.edge).toBeCloseTo(333.3, 1)
    expect(model?.window).toEqual({ x: 0, width: 666.7 })
  })

  it('draws the expected count on the scale of the bars', () => {
    const model = histogram({ ...about, values: [75.2, 75.3, 76.1], expected: () => 2 })
    const top = model?.counts.find(({ count }) => count === 2)?.y
    expect(model?.curve).toMatch(new RegExp(`^M0,${top}L`))
  })

  it('is nothing without a value', () => {
    expect(histogram({ ...about, values: [] })).toBeNull()
  })
})
