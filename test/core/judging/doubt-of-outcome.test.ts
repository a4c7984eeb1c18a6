import { readAge } from '../../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import { admitted } from '../../../src/core/criteria/decision-rule.ts'
import { batchesToDecide, doubtOfOutcome, marginOf } from '../../../src/core/judging/doubt-of-outcome.ts'
import { clauseOf, evidenceOf, index, judgeInWords, setOf, statedUncertainty } from './fixture.ts'

const atLeast = admitted('at-least', [75])

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
    expect([
      batchesToDecide(1.4, statedUncertainty(2.8)),
      batchesToDecide(-0.6, statedUncertainty(2.8)),
      batchesToDecide(8, statedUncertainty(2.8)),
    ]).toEqual([11, 59, 1])
  })

  it('has no answer on the limit itself', () => {
    expect(batchesToDecide(0, statedUncertainty(2.8))).toBeNull()
  })
})

describe('doubtOfOutcome', () => {
  const doubt = (value: number, u: number) => doubtOfOutcome(value, atLeast, { u, unit: '%', decimals: 1 })

  it('doubtOfOutcome is clear beyond 1.645 standard uncertainties, on either side', () => {
    // u 2: 1.6449 × 2 = 3.2897.
    expect([78.3, 78.28, 75, 71.72, 71.7].map((value) => doubt(value, 2).clear)).toEqual([
      true,
      false,
      false,
      false,
      true,
    ])
  })

  it('doubtOfOutcome of a value on the limit is decided by no number of batches', () => {
    expect(doubt(75, 2)).toEqual({ margin: 0, u: 2, unit: '%', decimals: 1, clear: false, batches: null })
  })

  it('doubtOfOutcome of a value without uncertainty is clear, but for the limit itself', () => {
    expect([doubt(75.1, 0).clear, doubt(75, 0).clear]).toEqual([true, false])
  })
})

describe('judge', () => {
  const set = setOf([
    {
      clause: 'c',
      property: 'strength-activity-index',
      condition: 'c311',
      age: readAge('28 d'),
      'at-least': '75 %',
    },
  ])

  it('judge as specified prints the doubt of an index and decides without it', () => {
    const clause = clauseOf(
      judgeInWords(set, evidenceOf([index('28 d', 75.2)], { uncertaintyOf: () => statedUncertainty(2.8) })),
      'c',
    )
    expect(clause).toMatchObject({ outcome: 'meets', uncertainty: { u: 2.8 } })
    expect(clause.doubt).toContain('0.2 points clear of the limit, less than its uncertainty of 2.8 points')
  })

  it('judge prints none where the laboratory states none', () => {
    expect(clauseOf(judgeInWords(set, evidenceOf([index('28 d', 75.2)])), 'c').doubt).toBeUndefined()
  })
})
