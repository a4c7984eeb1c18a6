import { describe, expect, it } from 'vitest'
import { laneBars } from '../../src/charts/lane-bars.ts'

const groups = [
  {
    name: 'A',
    bars: [
      { name: '1', value: 1, beyond: false },
      { name: '2', value: -2, beyond: true },
    ],
  },
  {
    name: 'B',
    bars: [
      { name: '1', value: 0, beyond: false },
      { name: '2', value: 2, beyond: false },
    ],
  },
]

describe('laneBars', () => {
  const drawn = laneBars(groups, [-1.9, 1.9])

  it('raises bars above nought and lowers those below it', () => {
    const [up, down] = drawn?.bars ?? []
    expect((up?.top ?? 0) + (up?.height ?? 0)).toBeCloseTo(drawn?.zero ?? NaN, 0)
    expect(down?.top).toBe(drawn?.zero)
    expect(down?.height).toBeCloseTo(2 * (up?.height ?? 0), 0)
  })
  it('keeps the bars of a group together and groups apart', () => {
    const [a1, a2, b1] = drawn?.bars ?? []
    expect((a1?.x ?? 0) + (a1?.width ?? 0)).toBeLessThan(a2?.x ?? 0)
    expect((a2?.x ?? 0) + (a2?.width ?? 0) + 20).toBeLessThan(b1?.x ?? 0)
  })
  it('shows a bar of nought, and limits either side', () => {
    expect(drawn?.bars[2]?.height).toBe(0.5)
    const [low = 0, high = 0] = drawn?.limits ?? []
    expect(low - (drawn?.zero ?? 0)).toBeCloseTo((drawn?.zero ?? 0) - high, 0)
  })
  it('has nothing to draw without a bar', () => {
    expect(laneBars([{ name: 'A', bars: [] }], [2])).toBeNull()
  })
})
