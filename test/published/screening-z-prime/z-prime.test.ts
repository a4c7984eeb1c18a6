import { describe, expect, it } from 'vitest'
import { separation } from '../../../src/core/studies/screening/separation.ts'
import { zPrime } from '../../../src/core/studies/screening/z-prime.ts'
import { onlyCase } from '../values.ts'

const { inputs, expected, tolerance } = onlyCase('screening-z-prime')
const placed = (values: number[]) =>
  values.map((value, place) => ({ material: String(place), value, above: false }))

describe('Zhang, Chung and Oldenburg 1999, well separated controls', () => {
  const [positive, negative] = [inputs['positive'], inputs['negative']] as [number[], number[]]
  it('zPrime gives the value of the formula', () => {
    const wanted = expected['z_prime'] as number
    expect(Math.abs((zPrime(positive, negative) ?? NaN) / wanted - 1)).toBeLessThanOrEqual(
      tolerance['rel'] ?? 0,
    )
  })
  it('separation finds the gap whole', () => {
    const found = separation(placed(negative), placed(positive))
    expect(found.area).toBe(expected['auc'])
    expect(found.lowestReactive.value - found.highestInert.value).toBe(expected['gap_min_pos_minus_max_neg'])
    expect(found.wrongSide).toEqual([])
  })
  it('zPrime has no value for one of a class, nor without a distance', () => {
    expect(zPrime([1], [2, 3])).toBeNull()
    expect(zPrime([1, 3], [2, 2])).toBeNull()
  })
})
