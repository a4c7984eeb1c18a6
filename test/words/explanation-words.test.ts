import { describe, expect, it } from 'vitest'
import type { Explanation } from '../../src/core/resistivity/resistivity-explained.ts'
import { explanationCells, explanationWords } from '../../src/words/explanation-words.ts'

const explanation: Explanation = {
  ratio: 4.463,
  poreSolution: { low: 1.24, high: 3.06 },
  poreStructure: { low: 1.46, high: 3.61 },
  testFormation: { low: 201.4, high: 640.6 },
  controlFormation: { low: 99.5, high: 301 },
  testPore: { low: 0.274, high: 0.871 },
  controlPore: { low: 0.131, high: 0.396 },
}

describe('explanationWords', () => {
  it('names both factors as ranges and their product, with one decimal and two', () => {
    expect(explanationWords(explanation)).toBe(
      'the pore solution may account for a factor of 1.2 to 3.1 and the pore structure for a factor of 1.5 to 3.6; under each set of assumptions their product is the index, 4.46 times the control',
    )
  })
})

describe('explanationCells', () => {
  it('gives test, control and factor of the solution, then of the structure', () => {
    expect(explanationCells(explanation)).toEqual([
      '0.27 to 0.87',
      '0.13 to 0.40',
      '1.2 to 3.1',
      '201 to 641',
      '100 to 301',
      '1.5 to 3.6',
    ])
  })
})
