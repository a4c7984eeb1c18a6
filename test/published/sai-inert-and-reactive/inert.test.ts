import { describe, expect, it } from 'vitest'
import { compareWithLimit } from '../../../src/core/judging/compare-with-limit.ts'
import { type Quantity, readQuantity } from '../../../src/core/measure/units.ts'
import { onlyCase } from '../values.ts'

// Ground river sand at 20 % replacement: KMUTT Research and Development Journal, article 3382, abstract. The
// study's finding, not ours.
describe('a ground inert sand at 20 % replacement', () => {
  it('stands at 77 to 82 % of the control and so passes a limit of 75 %, whatever its fineness', () => {
    const { expected } = onlyCase('sai-inert-and-reactive')
    const indices = Object.values(expected['inert_sai_by_fineness'] as Record<string, number>)
    expect([Math.min(...indices), Math.max(...indices)]).toEqual([77, 82])
    const limit = [readQuantity('75 %', 'fraction') as Quantity]
    expect(indices.map((value) => compareWithLimit({ value }, 'at-least', limit).answer)).toEqual([
      'met',
      'met',
      'met',
    ])
    expect(compareWithLimit({ value: 74.4 }, 'at-least', limit).answer).toBe('not-met')
  })
})
