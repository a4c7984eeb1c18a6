import { describe, expect, it } from 'vitest'
import { consistency } from '../../../../src/core/studies/interlaboratory/consistency.ts'
import { cochran, grubbs } from '../../../../src/core/studies/interlaboratory/outliers.ts'

const cells = (...all: number[][]) => all.map((values, place) => ({ laboratory: String(place + 1), values }))

describe('consistency', () => {
  it('sums h to nought and the squares of k to the number of laboratories', () => {
    const found = consistency(cells([1, 3], [2, 6], [9, 10], [4, 4.5])) ?? []
    expect(found.reduce((total, { h }) => total + h, 0)).toBeCloseTo(0, 12)
    expect(found.reduce((total, { k }) => total + (k ?? 0) ** 2, 0)).toBeCloseTo(4, 12)
  })
  it('gives no k for single results, and nothing where all means are the same', () => {
    expect(consistency(cells([1], [2], [3]))?.map(({ k }) => k)).toEqual([null, null, null])
    expect(consistency(cells([2, 2], [2, 2], [2, 2]))).toBeNull()
    expect(consistency(cells([1, 2], [3, 4]))).toBeNull()
  })
})

describe('cochran', () => {
  // Variances 2, 8 and 0.5 of pairs (1, 3), (2, 6), (9, 10): C = 8 / 10.5.
  it('holds the largest variance against their sum', () => {
    expect(cochran(cells([1, 3], [2, 6], [9, 10]))).toMatchObject({
      laboratories: ['2'],
      standing: 'in-line',
    })
    expect(cochran(cells([1, 3], [2, 6], [9, 10]))?.statistic).toBeCloseTo(8 / 10.5, 12)
  })
  it('compares cells of the most frequent size alone', () => {
    expect(cochran(cells([1, 3], [2, 6], [9, 10, 40]))?.laboratories).toEqual(['2'])
  })
  it('has nothing to say without scatter or without replicates', () => {
    expect(cochran(cells([1], [2]))).toBeNull()
    expect(cochran(cells([1, 1], [2, 2]))).toBeNull()
  })
})

describe('grubbs', () => {
  it('finds two laboratories that lie together, which hide each other from the single test', () => {
    const found = grubbs(cells([10], [10.2], [9.8], [10.1], [9.9], [14], [14.1]))
    expect(found.map(({ test, standing }) => [test, standing])).toEqual([
      ['grubbs-low', 'in-line'],
      ['grubbs-high', 'in-line'],
      ['grubbs-two-low', 'in-line'],
      ['grubbs-two-high', 'outlier'],
    ])
    expect(found.at(-1)?.laboratories).toEqual(['6', '7'])
  })
  it('asks of single means only where there are three', () => {
    expect(grubbs(cells([1], [2], [9]))).toHaveLength(2)
    expect(grubbs(cells([1], [2]))).toEqual([])
  })
})
