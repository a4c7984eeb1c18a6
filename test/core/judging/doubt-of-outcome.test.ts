import { readAge } from '../../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import { batchesToDecide, doubtOfOutcome, nearestEnd } from '../../../src/core/judging/doubt-of-outcome.ts'
import { quantile } from '../../../src/core/statistics/distributions.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { clauseOf, evidenceOf, index, judgeInWords, result, setOf, statedUncertainty } from './fixture.ts'

const end = (at: number, step = 0) => ({ at, step })
const atLeast = { low: end(75) }
/** Standard uncertainties with 95 % below them: 1.645 (any table of the normal distribution). */
const Z = quantile(0.95)

describe('nearestEnd', () => {
  const marginOf = (value: number, ends: Parameters<typeof nearestEnd>[1]) => nearestEnd(value, ends).margin

  it('nearestEnd is above zero inside, below it beyond, and counts from the nearer end', () => {
    expect([marginOf(83, atLeast), marginOf(74.4, atLeast), marginOf(75, atLeast)]).toEqual([8, -0.6, 0])
    const range = { low: end(15), high: end(35) }
    expect([
      marginOf(20, range),
      marginOf(36, range),
      marginOf(-0.5, { low: end(-0.8), high: end(0.8) }),
    ]).toEqual([5, -1, 0.3])
    expect([
      nearestEnd(20, range).side,
      nearestEnd(30, range).side,
      nearestEnd(9, { high: end(8) }).side,
    ]).toEqual(['low', 'high', 'high'])
  })

  it('nearestEnd throws without an end', () => {
    expect(() => nearestEnd(1, {})).toThrow(RangeError)
  })
})

describe('batchesToDecide', () => {
  it('batchesToDecide asks for (1.645 u / margin)² batches, rounded up', () => {
    // u 2.8, margin 1.4: (1.6449 × 2)² = 10.82; margin 0.6: (1.6449 × 4.6667)² = 58.9; margin 8: 0.33, one is
    // enough.
    expect([1.4, -0.6, 8].map((margin) => batchesToDecide(margin, { u: 2.8 }, Z))).toEqual([11, 59, 1])
  })

  it('batchesToDecide has no answer on the limit itself', () => {
    expect(batchesToDecide(0, { u: 2.8 }, Z)).toBeNull()
  })

  it('batchesToDecide starts from one batch, of a mean of four too', () => {
    expect(batchesToDecide(1.4, { u: 1.4, ofBatch: 2.8 }, Z)).toBe(11)
  })

  it('batchesToDecide leaves the doubt of the reference as it is', () => {
    // z² u² / (margin² − z² r²) = (1.6449 × 2)² / (2² − (1.6449 × 0.6)²) = 10.822 / 3.026 = 3.58; at r 1.3 the
    // reference alone leaves more doubt than the margin: 1.6449 × 1.3 = 2.14.
    expect(batchesToDecide(2, { u: 2.09, ofBatch: 2, ofReference: 0.6 }, Z)).toBe(4)
    expect(batchesToDecide(2, { u: 2.39, ofBatch: 2, ofReference: 1.3 }, Z)).toBeNull()
  })
})

describe('doubtOfOutcome', () => {
  const doubt = (value: number, u: number) => doubtOfOutcome(value, atLeast, { u })

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

  it('doubtOfOutcome takes the factor of few degrees of freedom, and of the rule that decides', () => {
    // Student's t of 3 degrees of freedom: 2.353 at 95 %, 3.31 at the 97.72 % of k 2 (JCGM 100:2008, table G.2,
    // prints 3.31 for the 95.45 % two-sided of k 2).
    const clear = (value: number, rule?: Parameters<typeof doubtOfOutcome>[3]) =>
      doubtOfOutcome(value, atLeast, { u: 1, df: 3 }, rule).clear
    expect([clear(77.34), clear(77.36)]).toEqual([false, true])
    const guarded = { rule: 'guarded', k: 2, agreedIn: 'contract 7' } as const
    expect([clear(78.3, guarded), clear(78.32, guarded)]).toEqual([false, true])
    expect(clear(77.9, { rule: 'probability', p: 0.975 })).toBe(false)
  })

  it('doubtOfOutcome of a value on the limit is decided by no number of batches', () => {
    expect(doubt(75, 2)).toEqual({
      margin: 0,
      end: 75,
      step: 0,
      side: 'low',
      u: 2,
      clear: false,
      batches: null,
    })
  })

  it('doubtOfOutcome of a value without uncertainty is clear, but for the limit itself', () => {
    expect([doubt(75.1, 0).clear, doubt(75, 0).clear]).toEqual([true, false])
  })
})

describe('judge', () => {
  const activity = {
    clause: 'c',
    property: 'strength-activity-index',
    condition: 'c311',
    age: readAge('28 d'),
    'at-least': '75 %',
  } as const
  const set = setOf([activity])

  it('judge as specified prints the doubt of an index and decides without it', () => {
    const clause = clauseOf(
      judgeInWords(set, evidenceOf([index('28 d', 75.2)], { uncertaintyOf: () => statedUncertainty(2.8) })),
      'c',
    )
    expect(clause).toMatchObject({ outcome: 'meets', uncertainty: { u: 2.8 } })
    expect(clause.doubt).toBe(
      '0.7 points above 74.5 % (the limit before rounding), less than its uncertainty of 2.8 points; more batches than can be made would be needed to decide',
    )
    expect(clause.inDoubt).toBe(true)
  })

  it('judge never calls a value that meets by rounding beyond the limit', () => {
    const doubts = [74.6, 74.5, 74.4].map((value) => {
      const evidence = evidenceOf([index('28 d', value)], { uncertaintyOf: () => statedUncertainty(0.5) })
      const clause = clauseOf(judgeInWords(set, evidence), 'c')
      return [clause.outcome, clause.doubt?.split(' (')[0]]
    })
    expect(doubts).toEqual([
      ['meets', '0.1 points above 74.5 %'],
      ['does-not-meet', 'on 74.5 %'],
      ['does-not-meet', '0.1 points below 74.5 %'],
    ])
  })

  it('judge takes the margin from the limit itself under a rule that rounds nothing', () => {
    const agreed = setOf([{ ...activity, 'decision-rule': { guarded: 2, 'agreed-in': 'contract 7' } }])
    const evidence = evidenceOf([index('28 d', 79)], { uncertaintyOf: () => statedUncertainty(2, 3) })
    expect(clauseOf(judgeInWords(agreed, evidence), 'c')).toMatchObject({
      outcome: 'inconclusive',
      // Student's t of 3 degrees of freedom at the risk of k 2 is 3.307: 3.307 × 2 = 6.6; (6.61 / 4)² = 2.7.
      reason:
        '79 % with a standard uncertainty of 2.0 points neither meets nor fails the limit, at least 75 %, under the guard band of 2 standard uncertainties agreed in contract 7; guard 6.6 points, 3.307 standard uncertainties with 3 degrees of freedom',
      doubt:
        '4.0 points above the limit, 2.0 standard uncertainties; the mean of 3 batches, each with its own control, would decide',
    })
  })

  it('judge says which probability of conformity a value reaches', () => {
    const agreed = setOf([{ ...activity, 'decision-rule': { probability: 0.95, 'agreed-in': 'contract 7' } }])
    const reason = (value: number, df?: number) =>
      clauseOf(
        judgeInWords(
          agreed,
          evidenceOf([index('28 d', value)], { uncertaintyOf: () => statedUncertainty(2, df) }),
        ),
        'c',
      ).reason.split('; ')[1]
    // Φ(1) = 0.8413; Student's t of one degree of freedom: 1/2 + arctan(1)/π = 0.75.
    expect([reason(77), reason(77, 1), reason(95)]).toEqual([
      'probability of conformity 0.841',
      'probability of conformity 0.750 with 1 degree of freedom',
      'probability of conformity above 0.999',
    ])
  })

  it('judge states no doubt about the plain limit where an approval lets the value pass', () => {
    const approved = setOf([
      {
        clause: 'c',
        property: 'loss-on-ignition',
        'at-most': '6.0 %',
        approval: { 'at-most': '12.0 %', evidence: 'service' },
      },
    ])
    const evidence = evidenceOf([result('loss-on-ignition', 7)], {
      uncertaintyOf: () => statedUncertainty(0.5),
      approvals: [{ from: readMoment('2025-01-01'), by: 'agency', scope: 'all', set: 'trial', clause: 'c' }],
    })
    expect(clauseOf(judgeInWords(approved, evidence), 'c').outcome).toBe('meets-by-approval')
    expect(clauseOf(judgeInWords(approved, evidence), 'c').doubt).toBeUndefined()
  })

  it('judge prints none where the laboratory states none', () => {
    expect(clauseOf(judgeInWords(set, evidenceOf([index('28 d', 75.2)])), 'c').doubt).toBeUndefined()
  })
})
