import { describe, expect, it } from 'vitest'
import { halfNormalPlot } from '../../src/charts/half-normal-plot.ts'

const points = [
  { factor: 1, size: 1, score: 0.3, standsOut: false },
  { factor: 0, size: 10, score: 1.5, standsOut: true },
]

describe('halfNormalPlot', () => {
  it('rises with size and runs with the score', () => {
    const [small, large] = halfNormalPlot(points, 2)?.points ?? []
    expect(small?.x).toBeLessThan(large?.x ?? 0)
    expect(small?.y).toBeGreaterThan(large?.y ?? 0)
    expect([small?.factor, large?.factor]).toEqual([1, 0])
  })
  // An effect of chance alone lies at the standard error times its score: 2 × 0.3 = 0.6 of a size of 1.
  it('draws the line with the standard error as its slope', () => {
    const drawn = halfNormalPlot(points, 2)
    const [small] = drawn?.points ?? []
    const { plot, line } = drawn ?? {}
    const slope = ((plot?.bottom ?? 0) - (line?.y ?? 0)) / ((line?.x ?? 0) - (plot?.left ?? 0))
    const rise = slope * ((small?.x ?? 0) - (plot?.left ?? 0))
    expect(rise / ((plot?.bottom ?? 0) - (small?.y ?? 0))).toBeCloseTo(0.6, 1)
  })
  it('draws no line without an error, and nothing without an effect', () => {
    expect(halfNormalPlot(points, null)?.line).toBeNull()
    expect(halfNormalPlot([], 1)).toBeNull()
  })
})
