import { describe, expect, it } from 'vitest'
import {
  changeText,
  factorName,
  inseparableText,
  interactionSentence,
  stepText,
  togetherSentence,
} from '../../src/words/study-factors.ts'

describe('factorName', () => {
  it('joins names and leaves w/cm small', () => {
    expect([factorName(['temperature']), factorName(['w/cm', 'flow'])]).toEqual([
      'Temperature',
      'w/cm and flow',
    ])
  })
})

describe('stepText', () => {
  it('names both levels of factors that change together', () => {
    expect(stepText(['20 %', 'constant flow'], ['30 %', 'constant w/cm'])).toBe(
      '20 %, constant flow to 30 %, constant w/cm',
    )
  })
})

describe('changeText', () => {
  it('prints a change of a logarithm as a factor', () => {
    expect(changeText(Math.log(1.26), [Math.log(1.13), Math.log(1.4)])).toBe('× 1.26 (1.13 to 1.40)')
    expect(changeText(0)).toBe('× 1.00')
  })
})

describe('inseparableText', () => {
  it('says what it changes together with', () => {
    expect(inseparableText([['w/cm', 'flow'], ['age']])).toBe(
      'not separable: changes only together with w/cm and flow and age',
    )
    expect(inseparableText([])).toBe('not separable: no two conditions differ in this alone')
    expect(togetherSentence(['w/cm', 'flow'])).toBe(
      'w/cm and flow change together in all conditions, so nothing tells their effects apart.',
    )
  })
})

describe('interactionSentence', () => {
  it('holds both steps against each other, and says what they rest on', () => {
    expect(
      interactionSentence({
        ...{ from: '23 °C', to: '50 °C' },
        lower: { level: '7 d', change: Math.log(1.2) },
        upper: { level: '28 d', change: Math.log(1.8) },
        ...{ change: Math.log(1.5), interval: [Math.log(1.1), Math.log(2)] },
        ...{ settings: 2, inert: 1, reactive: 5, leftOut: ['A1', 'P2'] },
      }),
    ).toBe(
      'From 23 °C to 50 °C the reactive mean over the inert one changes by × 1.20 at 7 d and by × 1.80 at 28 d: the second over the first is 1.50 (1.10 to 2.00 at 95 %), where 1 means parallel lines. 5 reactive and 1 inert material, mean over 2 settings of the other factors; left out, above the ceiling or not measured throughout: A1 and P2.',
    )
  })
})
