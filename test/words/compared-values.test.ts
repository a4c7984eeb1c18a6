import { describe, expect, it } from 'vitest'
import { comparedFigure } from '../../src/words/compared-values.ts'
import { fixedDigits } from '../../src/words/numbers.ts'

const limitOf = (...values: number[]) => ({ values })
const texts = (judged: Parameters<typeof comparedFigure>[0], reported: number) => {
  const { value, decimals, unrounded } = comparedFigure(judged, reported)
  return [
    fixedDigits(value, decimals),
    ...(unrounded === undefined ? [] : [fixedDigits(unrounded.value, unrounded.decimals)]),
  ]
}

describe('comparedFigure', () => {
  it('prints 74.45 as 74.4 beside a limit of 74.5, as half to even compared it', () => {
    expect(texts({ value: 74.45, compared: 74.4, decimals: 1, limit: limitOf(74.5) }, 1)).toEqual(['74.4'])
  })
  it('prints 74.6 as 75 beside a limit of 75, with the value before rounding', () => {
    expect(texts({ value: 74.6, compared: 75, decimals: 0, limit: limitOf(75) }, 1)).toEqual(['75', '74.6'])
  })
  it('says a value once where what is reported of it reads alike', () => {
    expect(texts({ value: 75.04, compared: 75, decimals: 0, limit: limitOf(75) }, 1)).toEqual(['75'])
    expect(texts({ value: 84, compared: 84, decimals: 0, limit: limitOf(75) }, 1)).toEqual(['84'])
  })
  it('gives a value that was not rounded the digits that tell it from its limit', () => {
    const judged = { value: 74.46, compared: 74.46, decimals: 2, limit: limitOf(74.5) }
    expect(texts(judged, 1)).toEqual(['74.46'])
    expect(texts({ ...judged, value: 74.4997, compared: 74.4997, decimals: 4 }, 1)).toEqual(['74.4997'])
    expect(texts({ ...judged, value: 80.1234, compared: 80.1234, decimals: 4 }, 1)).toEqual(['80.1'])
  })
  it('prints a value on its limit with the digits it is reported with', () => {
    expect(texts({ value: 74.5, compared: 74.5, decimals: 1, limit: limitOf(74.5) }, 1)).toEqual(['74.5'])
  })
  it('tells a value from both ends of a range', () => {
    expect(texts({ value: 20.04, compared: 20.04, decimals: 2, limit: limitOf(10, 20) }, 1)).toEqual([
      '20.04',
    ])
  })
})
