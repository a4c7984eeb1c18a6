import { describe, expect, it } from 'vitest'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { reportVariability, variabilityOf } from '../../../src/core/judging/variability.ts'
import { comparisonCase, history, result } from './fixture.ts'

describe('variabilityOf', () => {
  it('variabilityOf takes the testing error of duplicates out of the whole scatter', () => {
    // By hand: 1, 5, 6, 7, 8, 9 have the mean 6 and the squares 25 + 1 + 0 + 1 + 4 + 9 = 40 about it: s² =
    // 40/5 = 8; the last five have the mean 7.
    // Differences of pairs 1, −2, 0, 1 have the mean magnitude 1, over d2 = 1.128379167 (2/√π).
    const found = variabilityOf([1, 5, 6, 7, 8, 9], [1, -2, 0, 1])
    expect(found.movingAverage).toBeCloseTo(7, 12)
    expect(found.standardDeviation).toBeCloseTo(Math.sqrt(8), 12)
    expect(found.testing?.error).toBeCloseTo(1 / 1.128379167, 8)
    expect(found.testing?.corrected).toBeCloseTo(Math.sqrt(8 - Math.PI / 4), 12)
  })

  it('variabilityOf never takes out more than there is', () => {
    expect(variabilityOf([1, 1], [5])).toMatchObject({
      standardDeviation: 0,
      testing: { corrected: 0 },
      movingAverage: null,
    })
    expect(variabilityOf([1, 3], [])).toMatchObject({
      testing: null,
    })
  })

  it('variabilityOf has a moving average from five results on', () => {
    expect([
      variabilityOf([1, 2, 3, 4], []).movingAverage,
      variabilityOf([1, 2, 3, 4, 5], []).movingAverage,
      variabilityOf([9, 1, 2, 3, 4, 5], []).movingAverage,
    ]).toEqual([null, 3, 3])
  })

  it('variabilityOf needs two results', () => {
    expect(() => variabilityOf([1], [])).toThrow(RangeError)
  })
})

describe('reportVariability', () => {
  it('reportVariability reports from two results on, the lot’s own value beside it', () => {
    const of = (...preceding: number[]) =>
      reportVariability(
        comparisonCase(
          { property: 'density', statistic: { variability: { results: 10 } } },
          { preceding: history('density', preceding) },
        ),
        { of: 'variability', count: 10 },
        result('density', 2.4),
      )
    // 2.2 and 2.4: deviations of 0.1 on either side, s = √(0.02 / 1) = 0.1414.
    expect(of(2.2)).toMatchObject({
      outcome: 'reported',
      value: 2.4,
      result: null,
      reasons: [
        {
          code: 'variability',
          params: { n: 2, standardDeviation: expect.closeTo(0.141421, 6), decimals: 3, unit: 'g/cm3' },
        },
      ],
    })
    expect(of().reasons).toEqual([{ code: 'too-few-results', params: { n: 1, atLeast: 2 } }])
  })

  it('reportVariability counts the lot’s own duplicates, and takes the first of each pair for its lot', () => {
    const own = [
      result('density', 2.4, { tested: readMoment('2026-03-10') }),
      result('density', 2.6, { tested: readMoment('2026-03-12') }),
    ]
    const other = { lot: 's/L1', sampled: readMoment('2026-02-01'), value: 2.3 }
    const preceding = () => [{ ...other, duplicates: { first: 2.2, difference: 0.1 } }]
    const clause = comparisonCase(
      { property: 'density', statistic: { variability: { results: 10 } } },
      { preceding, results: own },
    )
    const found = reportVariability(clause, { of: 'variability', count: 10 }, own[1] ?? result('density', 0))
    // First results 2.2 and 2.4: s² = 0.02. Differences 0.1 and 0.2: mean 0.15, times √π/2 = 0.1329; s² less its
    // square = 0.02 − 0.01767 = 0.00233.
    expect(found.reasons[0]).toMatchObject({
      code: 'variability',
      params: {
        n: 2,
        standardDeviation: expect.closeTo(Math.sqrt(0.02), 10),
        testing: {
          pairs: 2,
          error: expect.closeTo(0.15 * 0.886226925, 8),
          corrected: expect.closeTo(Math.sqrt(0.02 - (0.0225 * Math.PI) / 4), 8),
        },
      },
    })
  })
})
