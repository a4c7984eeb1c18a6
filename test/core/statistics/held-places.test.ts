import { describe, expect, it } from 'vitest'
import { chartOf } from '../../../src/core/statistics/chart-signals.ts'
import { proportionGrowth } from '../../../src/core/statistics/proportion-growth.ts'
import { heldPlaces, runSignals } from '../../../src/core/statistics/run-rules.ts'

describe('heldPlaces', () => {
  it('by hand: a run of ten holds at its eighth, ninth and tenth, a rise of seven at its sixth and seventh', () => {
    const run = [-1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, -1]
    expect(heldPlaces(run)).toMatchObject({ 'run-of-eight': [8, 9, 10], 'beyond-limits': [] })
    const rise = [0.5, -1, -0.7, -0.4, -0.1, 0.2, 0.5, 0.8, 0.1]
    expect(heldPlaces(rise)['six-rising-or-falling']).toEqual([6, 7])
    expect(heldPlaces([0, 3.1, -3.1, 3])['beyond-limits']).toEqual([1, 2])
  })
  it('begins with each signal: a value on the centre ends a run, equal values end a rise', () => {
    const zeros = [1, 1, 1, 1, 0, 1, 1, 1, 1, 1, 1, 1, 1]
    expect(heldPlaces(zeros)['run-of-eight']).toEqual([12])
    expect(runSignals(zeros).map(({ rule, at }) => [rule, at])).toContainEqual(['run-of-eight', 12])
    expect(heldPlaces([1, 2, 3, 3, 4, 5, 6])['six-rising-or-falling']).toEqual([])
  })
})

describe('chartOf', () => {
  it('holds averages and sums beyond their limits at every point of an excursion, whose first is the signal', () => {
    const level = Array.from({ length: 20 }, (_, place) => (place % 2 === 0 ? -1 : 1))
    const chart = chartOf([...level, ...level.map((value) => value + 4)], level)
    for (const rule of ['ewma', 'cusum'] as const) {
      const places = chart?.held[rule] ?? []
      expect(places.length, rule).toBeGreaterThan(10)
      expect(chart?.signals.find((signal) => signal.rule === rule)?.at, rule).toBe(places[0])
    }
  })
})

describe('proportionGrowth', () => {
  it('by hand: from 1 of 10 to 8 of 10 is 0.6 after the correction, over √(0.45 · 0.55 · 0.2) = 0.2225', () => {
    // scipy 1.17.1, norm.sf: 0.0035005, and 0.0387424 where neighbours correlate by 0.4.
    const [before, after] = [
      { near: 1, n: 10 },
      { near: 8, n: 10 },
    ]
    expect(proportionGrowth(before, after, 0)).toBeCloseTo(0.0035005, 7)
    expect(proportionGrowth(before, after, 0.4)).toBeCloseTo(0.0387424, 7)
    expect(proportionGrowth(after, before, 0)).toBeGreaterThan(0.99)
    expect(proportionGrowth({ near: 0, n: 5 }, { near: 0, n: 5 }, 0)).toBe(1)
  })
})
