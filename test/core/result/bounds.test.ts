import { describe, expect, it } from 'vitest'
import {
  boundsOf,
  boundsOfProduct,
  boundsOfQuotient,
  boundsOfSum,
  extentOf,
  isBounded,
  reportedBounds,
} from '../../../src/core/result/bounds.ts'

const below = (value: number) => ({ value, bounds: { low: 0, high: value, open: 'high' as const } })
const at = (value: number) => ({ value })

describe('reportedBounds', () => {
  it('lies between nothing and the bound, which is not reached', () => {
    expect(reportedBounds('SO3', { value: 0.1, censored: 'below' })).toEqual({
      low: 0,
      high: 0.1,
      open: 'high',
    })
    expect(reportedBounds('density', { value: 2.4, censored: 'below' })).toEqual({
      low: 0,
      high: 2.4,
      open: 'high',
    })
    expect(reportedBounds('SO3', { value: 0.1 })).toBeUndefined()
  })
  it('is a magnitude where the property may have either sign, but for a bound below zero', () => {
    expect(reportedBounds('autoclave-expansion', { value: 0.01, censored: 'below' })).toEqual({
      low: -0.01,
      high: 0.01,
      open: 'both',
    })
    expect(reportedBounds('autoclave-expansion', { value: -0.01, censored: 'below' })).toEqual({
      low: -20,
      high: -0.01,
      open: 'high',
    })
  })
})

describe('extentOf and boundsOf', () => {
  it('are one point for a value that is known, and turn back into the same bounds', () => {
    expect(boundsOf(extentOf(at(3)))).toBeUndefined()
    expect(boundsOf(extentOf(below(3)))).toEqual({ low: 0, high: 3, open: 'high' })
  })
  it('know no lower end of a value that is only less than a number', () => {
    expect(boundsOf(extentOf({ value: 3, censored: 'below' }))).toEqual({ low: null, high: 3, open: 'both' })
  })
  it('tell whether a value is known only within bounds', () => {
    expect([isBounded({}), isBounded({ censored: 'below' }), isBounded(below(1))]).toEqual([
      false,
      true,
      true,
    ])
  })
})

describe('boundsOfSum', () => {
  // 52.1 + 44.5 = 96.6; with 0.5 it is 97.1.
  it('adds the ends: 52.1 + 44.5 + < 0.5', () => {
    const terms = [at(52.1), at(44.5), below(0.5)].map((of) => ({ factor: 1, of }))
    expect(boundsOfSum(terms)).toEqual({ low: 96.6, high: 97.1, open: 'high' })
  })
  it('takes the other end for a negative factor: 100 less than < 1', () => {
    expect(boundsOfSum([{ factor: -1, of: below(1) }], 100)).toEqual({ low: 99, high: 100, open: 'low' })
  })
  it('is open at both ends where each has an open one among its parts', () => {
    const difference = [
      { factor: 1, of: below(2) },
      { factor: -1, of: below(3) },
    ]
    expect(boundsOfSum(difference)).toEqual({ low: -3, high: 2, open: 'both' })
  })
  it('says nothing of values that are known', () => {
    expect(boundsOfSum([{ factor: 1, of: at(2) }])).toBeUndefined()
  })
})

describe('boundsOfProduct and boundsOfQuotient', () => {
  it('multiply the ends, and reach nothing where one of the values may be nothing', () => {
    expect(boundsOfProduct(below(0.5), at(20))).toEqual({ low: 0, high: 10, open: 'high' })
    expect(boundsOfProduct({ value: 3, bounds: { low: 2, high: 3, open: 'both' } }, at(20))).toEqual({
      low: 40,
      high: 60,
      open: 'both',
    })
    expect(boundsOfProduct(at(2), at(20))).toBeUndefined()
  })
  it('divide the ends, without a bound where the divisor may be nothing', () => {
    expect(boundsOfQuotient(below(1), at(20))).toEqual({ low: 0, high: 0.05, open: 'high' })
    expect(boundsOfQuotient(at(20), below(10))).toEqual({ low: 2, high: null, open: 'low' })
    expect(
      boundsOfQuotient({ value: 0, bounds: { low: -4, high: 8 } }, { value: 2, bounds: { low: 2, high: 4 } }),
    ).toEqual({
      low: -2,
      high: 4,
    })
    expect(boundsOfQuotient(at(1), at(20))).toBeUndefined()
  })
})
