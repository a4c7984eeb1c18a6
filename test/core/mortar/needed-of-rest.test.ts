import { describe, expect, it } from 'vitest'
import { judgeBatch } from '../../../src/core/mortar/batch-range.ts'
import { neededOfRest } from '../../../src/core/mortar/needed-of-rest.ts'

const CUBES = [
  { of: 3, rangePercent: 8.7 },
  { of: 2, rangePercent: 7.6 },
]

describe('neededOfRest', () => {
  // By hand: 3 x 30 = 90; 90 - 29 - 30 = 31. The range of 29, 30 and x is at most 8.7 % of their mean where
  // x - 29 <= 0.029 (59 + x), so x <= 30.711 / 0.971, and 30 - x <= 0.029 (59 + x), so x >= 28.289 / 1.029.
  it('gives the third cube of three by hand', () => {
    const found = neededOfRest([29, 30], 3, 30, CUBES)
    expect(found).toMatchObject({ left: 1, rule: { of: 3, rangePercent: 8.7 } })
    expect(found?.each).toBeCloseTo(31, 12)
    expect(found?.inRange?.from).toBeCloseTo(28.289 / 1.029, 12)
    expect(found?.inRange?.to).toBeCloseTo(30.711 / 0.971, 12)
  })

  // By hand: 3 x 30 - 27 = 63, 31.5 each. x - 27 <= 0.029 (27 + 2 x): x <= 27.783 / 0.942; 27 - x likewise from below.
  it('gives the two left of three by hand', () => {
    const found = neededOfRest([27], 3, 30, CUBES)
    expect(found?.left).toBe(2)
    expect(found?.each).toBeCloseTo(31.5, 12)
    expect(found?.inRange?.from).toBeCloseTo((27 - 0.783) / 1.058, 12)
    expect(found?.inRange?.to).toBeCloseTo(27.783 / 0.942, 12)
  })

  it('finds no value where those tested lie too far apart for any', () => {
    expect(neededOfRest([20, 30], 3, 25, CUBES)?.inRange).toBeNull()
  })

  it('gives less than nothing where any value will do', () => {
    expect(neededOfRest([50, 52], 3, 30, CUBES)?.each).toBeCloseTo(-12, 12)
  })

  it('gives the range alone where no mean is asked for, and the mean alone without a rule', () => {
    expect(neededOfRest([29, 30], 3, undefined, CUBES)).not.toHaveProperty('each')
    expect(neededOfRest([29, 30], 3, 30)).toEqual({ left: 1, each: 31 })
    expect(neededOfRest([29], 2, 30, [{ of: 2, withinPercent: 10 }])).toEqual({ left: 1, each: 31 })
  })

  it('gives the mean itself where none was tested yet', () => {
    expect(neededOfRest([], 3, 30, CUBES)).toEqual({ left: 3, each: 30 })
  })

  it('gives nothing where all were tested, or none and no mean is asked for', () => {
    expect(neededOfRest([29, 30, 31], 3, 30, CUBES)).toBeUndefined()
    expect(neededOfRest([], 3, undefined, CUBES)).toBeUndefined()
  })

  it('keeps the range that the batch is judged by, at the ends and a little beyond them', () => {
    for (const read of [[29, 30], [31.4, 30.2], [27], [30, 32.4]]) {
      const ends = neededOfRest(read, 3, undefined, CUBES)?.inRange
      if (ends === null || ends === undefined) throw new RangeError('the cases have a range')
      const dropsNone = (x: number) =>
        judgeBatch([...read, ...Array.from({ length: 3 - read.length }, () => x)], CUBES).steps[0]?.kept
      expect([ends.from + 1e-9, ends.to - 1e-9].map(dropsNone)).toEqual([true, true])
      expect([ends.from - 1e-6, ends.to + 1e-6].map(dropsNone)).toEqual([false, false])
    }
  })
})
