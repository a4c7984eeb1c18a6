import { describe, expect, it } from 'vitest'
import { limitStrip } from '../../src/charts/limit-strip.ts'

describe('limitStrip', () => {
  it('sets an upper limit at the same place whatever its size, so that a column reads downwards', () => {
    const [small, large] = [limitStrip({ value: 2, to: 4 }), limitStrip({ value: 17, to: 34 })]
    expect(small?.limits).toEqual(large?.limits)
    expect(small?.mark).toEqual(large?.mark)
  })
  it('draws a value at the very limit on the limit', () => {
    for (const limit of [{ from: 75 }, { to: 75 }]) {
      const strip = limitStrip({ value: 75, ...limit })
      expect(strip?.mark?.x).toBe(strip?.limits[0])
    }
  })
  it('shades the side that meets: right of a lower limit, left of an upper one, between two', () => {
    const lower = limitStrip({ value: 80, from: 75 })
    const upper = limitStrip({ value: 80, to: 75 })
    const both = limitStrip({ value: 12, from: 10, to: 20 })
    expect(lower?.allowed.x).toBe(lower?.limits[0])
    expect((upper?.allowed.x ?? 0) + (upper?.allowed.width ?? 0)).toBeCloseTo(
      upper?.limits[0] ?? Number.NaN,
      2,
    )
    expect(both?.allowed.x).toBe(both?.limits[0])
    expect((both?.allowed.x ?? 0) + (both?.allowed.width ?? 0)).toBeCloseTo(both?.limits[1] ?? Number.NaN, 2)
  })
  it('puts no deviation in the middle and both signs at equal distance', () => {
    const at = (value: number) => limitStrip({ value, from: -5, to: 5 })?.mark?.x ?? Number.NaN
    expect(at(0)).toBe(60)
    expect(at(3) - at(0)).toBeCloseTo(at(0) - at(-3), 2)
  })
  it('keeps a value far away on the strip and says on which side it lies beyond', () => {
    expect(limitStrip({ value: 1500, from: 75 })?.mark).toMatchObject({
      beyond: 'right',
    })
    expect(limitStrip({ value: 10, from: 75 })?.mark).toMatchObject({
      beyond: 'left',
    })
    expect(limitStrip({ value: 9, from: -0.8, to: 0.8 })?.mark?.x).toBeLessThanOrEqual(120)
  })
  it('draws the limit without a mark where there is no value yet', () => {
    expect(limitStrip({ from: 75 })).toMatchObject({ mark: null })
  })
  it('gives nothing where there is no limit, or none that distances can be in proportion to', () => {
    expect(limitStrip({ value: 3 })).toBeNull()
    expect(limitStrip({ value: 3, to: 0 })).toBeNull()
    expect(limitStrip({ value: 3, from: -2 })).toBeNull()
    expect(limitStrip({ value: 3, from: 5, to: 5 })).toBeNull()
  })
})
