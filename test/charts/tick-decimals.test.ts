import { describe, expect, it } from 'vitest'
import { tickDecimals } from '../../src/charts/tick-decimals.ts'

describe('tickDecimals', () => {
  it('gives none for whole numbers, as many as the finest label needs, two at most', () => {
    const of = (...values: number[]) => tickDecimals(values.map((value) => ({ value })))
    expect([of(), of(10, 20), of(2, 2.5), of(0.125, 0.25)]).toEqual([0, 0, 1, 2])
  })
})
