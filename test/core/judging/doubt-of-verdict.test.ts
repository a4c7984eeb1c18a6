import { describe, expect, it } from 'vitest'
import { admitted } from '../../../src/core/criteria/decision-rule.ts'
import { batchesToDecide, doubtWords, marginOf } from '../../../src/core/judging/doubt-of-verdict.ts'
import { judge } from '../../../src/core/judging/verdict.ts'
import { clauseOf, evidenceOf, index, setOf } from './fixture.ts'

const percent = { unit: '%', decimals: 1 }
const atLeast = admitted('at-least', [75])
const u = (value: number) => ({ u: value, basis: 'stated' })

describe('marginOf', () => {
  it('is above zero inside, below it beyond, and counts from the nearer end', () => {
    expect([marginOf(83, atLeast), marginOf(74.4, atLeast), marginOf(75, atLeast)]).toEqual([8, -0.6, 0])
    expect([
      marginOf(20, admitted('between', [15, 35])),
      marginOf(36, admitted('between', [15, 35])),
      marginOf(-0.5, admitted('magnitude-at-most', [0.8])),
    ]).toEqual([5, -1, 0.3])
  })
})

describe('batchesToDecide', () => {
  it('asks for (1.645 u / margin)² batches, rounded up', () => {
    // u 2.8, margin 1.4: (1.6449 × 2)² = 10.82; margin 0.6: (1.6449 × 4.6667)² = 58.9; margin 8: 0.33, one is
    // enough.
    expect([batchesToDecide(1.4, u(2.8)), batchesToDecide(-0.6, u(2.8)), batchesToDecide(8, u(2.8))]).toEqual(
      [11, 59, 1],
    )
  })

  it('has no answer on the limit itself', () => {
    expect(batchesToDecide(0, u(2.8))).toBeNull()
  })
})

describe('doubtWords', () => {
  it('says how far clear a value is, in points and in its own uncertainty', () => {
    expect(doubtWords(83, atLeast, u(2.8), percent)).toBe(
      '8.0 points clear of the limit, 2.9 standard uncertainties',
    )
    expect(doubtWords(65, atLeast, u(2.8), percent)).toBe(
      '10.0 points beyond the limit, 3.6 standard uncertainties',
    )
  })

  it('says when the uncertainty is larger than the distance, and what would decide', () => {
    expect(doubtWords(76.4, atLeast, u(2.8), percent)).toBe(
      '1.4 points clear of the limit, less than its uncertainty of 2.8 points; the mean of 11 batches would decide',
    )
    expect(doubtWords(74.4, atLeast, u(2.8), percent)).toBe(
      '0.6 points beyond the limit, less than its uncertainty of 2.8 points; the mean of 59 batches would decide',
    )
  })

  it('says that nothing decides a value on the limit', () => {
    expect(doubtWords(75, atLeast, u(2.8), percent)).toBe(
      '0.0 points clear of the limit, less than its uncertainty of 2.8 points; no number of batches decides',
    )
  })

  it('between one and 1.645 uncertainties still names the batches', () => {
    expect(doubtWords(78, atLeast, u(2.5), percent)).toBe(
      '3.0 points clear of the limit, 1.2 standard uncertainties; the mean of 2 batches would decide',
    )
  })
})

describe('judge', () => {
  const set = setOf([
    { clause: 'c', property: 'strength-activity-index', condition: 'c311', age: '28 d', 'at-least': '75 %' },
  ])

  it('judge as specified prints the doubt of an index and decides without it', () => {
    const clause = clauseOf(
      judge(set, evidenceOf([index('28 d', 75.2)], { uncertaintyOf: () => u(2.8) })),
      'c',
    )
    expect(clause).toMatchObject({ outcome: 'meets', uncertainty: { u: 2.8 } })
    expect(clause.doubt).toContain('0.2 points clear of the limit, less than its uncertainty of 2.8 points')
  })

  it('judge prints none where the laboratory states none', () => {
    expect(clauseOf(judge(set, evidenceOf([index('28 d', 75.2)])), 'c').doubt).toBeUndefined()
  })
})
