import { describe, expect, it } from 'vitest'
import { type MapRegion, reactivityMap } from '../../src/charts/reactivity-map.ts'

const POINTS = [
  { name: 'Q1', heat: 0, consumed: 0, shape: 'square' },
  { name: 'A1', heat: 300, consumed: 60, shape: 'disc' },
  { name: 'S1', heat: 400, consumed: 10, shape: 'disc' },
] as const
const OPEN = { from: null, below: null }
const region = (
  name: string,
  heat: Partial<MapRegion['heat']>,
  consumed: Partial<MapRegion['heat']>,
): MapRegion => ({
  name,
  heat: { ...OPEN, ...heat },
  consumed: { ...OPEN, ...consumed },
})

describe('reactivityMap', () => {
  const model = reactivityMap(POINTS, [
    region('inert', { below: 120 }, { below: 50 }),
    region('hydraulic, less or more', { from: 120 }, { below: 50 }),
    region('pozzolanic', {}, { from: 50 }),
  ])
  it('puts a point where its two figures stand on linear axes that begin below nothing', () => {
    expect(model?.xTicks).toContainEqual({ value: 300, x: model?.points[1]?.x })
    expect(model?.yTicks).toContainEqual({ value: 60, y: model?.points[1]?.y })
    expect(model?.points[0]?.x).toBeGreaterThan(model?.plot.left ?? Number.NaN)
    expect(model?.points[0]?.y).toBeLessThan(model?.plot.bottom ?? Number.NaN)
  })
  // Sides within the plot: 120 J/g up to 50 g, shared by two regions; 50 g left of it, right of it, and all along.
  it('draws the boundaries that regions state, one that two share once, and none at an open end', () => {
    const { plot } = model as NonNullable<typeof model>
    const tick = (wanted: number) => model?.yTicks.find(({ value }) => value === wanted)?.y ?? Number.NaN
    const y = (tick(40) + tick(60)) / 2
    expect(model?.edges).toHaveLength(4)
    expect(model?.edges.filter(({ x1, x2 }) => x1 === x2)).toEqual([
      expect.objectContaining({ y1: expect.closeTo(y, 0) as number, y2: plot.bottom }),
    ])
    for (const edge of model?.edges.filter(({ y1, y2 }) => y1 === y2) ?? []) expect(edge.y1).toBeCloseTo(y, 0)
  })
  it('names a region in its corner, broken at a comma, and leaves out what has no room', () => {
    expect(model?.regionNames.map(({ lines }) => lines)).toEqual([
      ['inert'],
      ['hydraulic,', 'less or more'],
      ['pozzolanic'],
    ])
    const narrow = reactivityMap(POINTS, [
      region('a name longer than its room', { from: 380, below: 400 }, {}),
    ])
    expect(narrow?.regionNames).toEqual([])
    expect(narrow?.edges).toHaveLength(2)
  })
  it('has room for a value below nothing and is null without points', () => {
    const below = reactivityMap([{ name: 'Q', heat: -4, consumed: 1, shape: 'square' }], [])
    expect(below?.points[0]?.x).toBeGreaterThan(below?.plot.left ?? Number.NaN)
    expect(reactivityMap([], [])).toBeNull()
  })
})
