import { describe, expect, it } from 'vitest'
import { clustersOf, comparableGroups } from '../../../src/core/history/comparable-points.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { pointsOf } from './points-fixture.ts'

describe('comparableGroups', () => {
  const begins = (points: Parameters<typeof comparableGroups>[0], restarts: number[] = []) =>
    comparableGroups(points, restarts, []).map((group) => [group.begins, group.points.length])

  it('keep points of one laboratory and control cement together', () =>
    expect(begins(pointsOf([80, 81, 82], { cement: 'A' }))).toEqual([['first', 3]]))

  it('part at another laboratory, another control cement and a restart, and say which', () => {
    const points = [
      ...pointsOf([80, 81], { cement: 'A' }),
      ...pointsOf([82, 83], { cement: 'B', from: 2 }),
      ...pointsOf([84], { cement: 'B', laboratory: 'quay', from: 4 }),
      ...pointsOf([85], { cement: 'B', laboratory: 'quay', from: 5 }),
    ]
    const restart = points[5]?.sampled.day ?? 0
    expect(begins(points, [restart])).toEqual([
      ['first', 2],
      ['control-cement', 2],
      ['laboratory', 1],
      ['restart', 1],
    ])
  })

  it('go on after points of another laboratory came between', () => {
    const [a, b, c] = [
      pointsOf([1], {}),
      pointsOf([2], { laboratory: 'quay', from: 1 }),
      pointsOf([3], { from: 2 }),
    ]
    expect(begins([...a, ...b, ...c])).toEqual([
      ['first', 2],
      ['laboratory', 1],
    ])
  })

  it('are one across cements that paired batches join, chains included, in their own laboratory alone', () => {
    const points = ['A', 'B', 'C'].flatMap((cement, at) => pointsOf([80, 81], { cement, from: 2 * at }))
    const bridge = (laboratory: string, from: string, to: string) => ({ laboratory, from, to })
    const count = (bridges: Parameters<typeof comparableGroups>[2]) =>
      comparableGroups(points, [], bridges).map((group) => group.points.length)
    expect(count([bridge('works', 'A', 'B')])).toEqual([4, 2])
    expect(count([bridge('works', 'B', 'C'), bridge('works', 'A', 'B')])).toEqual([6])
    expect(count([bridge('quay', 'A', 'B')])).toEqual([2, 2, 2])
  })
})

describe('clustersOf', () => {
  it('makes one of the points that share a control batch: mean place and mean value', () => {
    const points = pointsOf([80, 82, 90], { clusters: ['K1', 'K1', 'K2'] })
    expect(clustersOf(points)).toEqual([
      { place: 0.5, value: 81, sampled: readMoment('2026-01-01') },
      { place: 2, value: 90, sampled: readMoment('2026-01-15') },
    ])
  })
})
