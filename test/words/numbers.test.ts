import { describe, expect, it } from 'vitest'
import { roundToStep } from '../../src/core/measure/rounding.ts'
import {
  countWords,
  fixedDigits,
  number,
  numberWords,
  shortNumber,
  unroundedWords,
} from '../../src/words/numbers.ts'

describe('number', () => {
  it('prints fixed decimals, a true minus and thin spaces from 10 000 on', () => {
    expect(number(70.892, 1)).toBe('70.9')
    expect(number(-0.4, 1)).toBe('\u22120.4')
    expect(number(1450, 0)).toBe('1450')
    expect(number(1234567.5, 1)).toBe('1\u2009234\u2009567.5')
  })
  it('prints no sign before a zero', () => {
    expect(number(-0.04, 1)).toBe('0.0')
  })
})

describe('fixedDigits', () => {
  // Each is the decimal that a reader sees written, though its binary form lies beside the half.
  it.each([
    [74.45, 1, '74.4'],
    [74.55, 1, '74.6'],
    [74.5, 0, '74'],
    [75.5, 0, '76'],
    [1.005, 2, '1.00'],
    [2.675, 2, '2.68'],
    [74.50000000000001, 0, '74'],
    [-0.25, 1, '-0.2'],
    [-0.04, 1, '0.0'],
    [34.2, 2, '34.20'],
    [1e9 + 0.5, 0, '1000000000'],
  ])('rounds %d to %d decimals half to even: %s', (value, decimals, text) => {
    expect(fixedDigits(value, decimals)).toBe(text)
  })
  it('agrees with the rounding before a comparison for every half between 0 and 100', () => {
    for (let tenths = 0; tenths < 1000; tenths++) {
      const value = (2 * tenths + 1) / 20
      expect(Number(fixedDigits(value, 1))).toBe(roundToStep(value, 0.1))
    }
  })
})

describe('shortNumber', () => {
  it('leaves trailing zeros out and has a true minus', () => {
    expect([shortNumber(23, 2), shortNumber(23.125, 2), shortNumber(-1.5, 2)]).toEqual([
      '23',
      '23.12',
      '\u22121.5',
    ])
  })
})

describe('numbers in words', () => {
  it('countWords has a plural for every number but one', () => {
    expect([0, 1, 2].map((count) => countWords(count, 'result'))).toEqual([
      '0 results',
      '1 result',
      '2 results',
    ])
  })

  it('numberWords has a true minus, and a unit where there is one', () => {
    expect([numberWords(-0.25, 2, '%'), numberWords(3, 0, '')]).toEqual(['\u22120.25 %', '3'])
  })

  it('numberWords prints units, those that only limits are written in too, and percentage points in full', () => {
    expect([
      numberWords(5000, 0, 'ohm cm'),
      numberWords(3800, 0, 'cm2/g'),
      numberWords(5, 1, 'percentage points'),
    ]).toEqual(['5000 Ω·cm', '3800 cm²/g', '5.0 percentage points'])
  })

  it('unroundedWords shows all digits of a short value, and three more than the comparison of a long one', () => {
    expect([
      unroundedWords(34.6, 0, '%'),
      unroundedWords(2 / 3, 1, ''),
      unroundedWords(0.1 + 0.2, 1, ''),
      unroundedWords(35, 1, '%'),
    ]).toEqual(['34.6 %', '0.6667', '0.3', '35 %'])
  })
})
