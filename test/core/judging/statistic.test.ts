/** Edges of the statistics beside what the clause kinds ask; numbers are worked in clause-kinds-history. */
import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import type { Evidence } from '../../../src/core/evidence/evidence.ts'
import { judgeStatistic } from '../../../src/core/judging/statistic.ts'
import { judge } from '../../../src/core/judging/verdict.ts'
import { isFault, type QuantityKind, readQuantity } from '../../../src/core/measure/units.ts'
import type { WrittenClause } from '../../../src/records/criteria/written-criterion.ts'
import { clauseOf, comparisonCase, evidenceOf, history, result, setOf } from './fixture.ts'

function q(text: string, kind: QuantityKind) {
  const read = readQuantity(text, kind)
  if (isFault(read)) throw new Error(`${text}: ${read.fault}`)
  return read
}
function judged(written: Omit<WrittenClause, 'clause' | 'property'>, value: number, more: Partial<Evidence>) {
  const set = setOf([{ clause: 'c', property: 'SO3', ...written }])
  return clauseOf(judge(set, evidenceOf([result('SO3', value)], more)), 'c')
}
const preceded = (...values: number[]) => ({ preceding: history('SO3', values) })

describe('the mean of the last results', () => {
  const rolling = { 'at-most': '3.0 %', statistic: { 'rolling-mean': 3 } } as const

  it('judge holds the mean to the limit, the very limit included, and asks for every result of it', () => {
    // (2.9 + 3.0 + 3.1) / 3 = 3.0; 3.4 in place of 3.1 gives 3.1.
    expect(judged(rolling, 3.1, preceded(9, 2.9, 3))).toMatchObject({
      outcome: 'meets',
      value: 3,
      result: expect.stringContaining('SO3'),
      against: { n: 3, lots: ['s/L2', 's/L3'] },
    })
    expect(judged(rolling, 3.4, preceded(2.9, 3)).outcome).toBe('does-not-meet')
    expect(judged(rolling, 3, preceded(3))).toMatchObject({
      outcome: 'insufficient-history',
      reasons: [{ code: 'too-few-results', params: { n: 2, atLeast: 3 } }],
    })
  })
})

describe('conformity by variables', () => {
  const statistic = {
    variables: {
      period: q('365 d', 'duration'),
      'at-least': 2,
      share: q('90 %', 'fraction'),
      confidence: q('95 %', 'fraction'),
    },
  }
  /** Results without scatter: the estimate is their mean on either side. */
  const same = (value: number, limit: Omit<WrittenClause, 'clause'>) =>
    judged({ ...limit, statistic }, value, {
      period: () => [{ lot: 's/a', sampled: readMoment('2026-01-01'), value }],
    })

  it('judge holds a strict limit as one that an estimate on it meets', () => {
    expect([same(3, { below: '3.0 %' }).outcome, same(3, { above: '3.0 %' }).outcome]).toEqual([
      'meets',
      'meets',
    ])
  })

  it('judge holds each side of a range and of a magnitude, and shows the side that fails', () => {
    const range = { between: ['2.0 %', '4.0 %'] } as const
    expect([2, 4, 1.9, 4.1].map((value) => same(value, range).limit?.operator)).toEqual([
      'at-least',
      'at-least',
      'at-least',
      'at-most',
    ])
    expect([2, 4, 1.9, 4.1].map((value) => same(value, range).outcome)).toEqual([
      'meets',
      'meets',
      'does-not-meet',
      'does-not-meet',
    ])
    const magnitude = { 'magnitude-at-most': '0.8 %' } as const
    expect([0.8, -0.8, 0.9, -0.9].map((value) => same(value, magnitude).outcome)).toEqual([
      'meets',
      'meets',
      'does-not-meet',
      'does-not-meet',
    ])
    expect(same(-0.9, magnitude).limit).toMatchObject({
      operator: 'at-least',
      values: [-0.8],
      written: ['−0.8 %'],
    })
  })

  it('judge needs two results whatever the clause asks', () => {
    expect(judged({ 'at-most': '3.0 %', statistic }, 2, { period: () => [] }).outcome).toBe(
      'insufficient-history',
    )
  })
})

describe('a share within limits', () => {
  const share = (value: number, ...others: number[]) =>
    judged(
      {
        'at-most': '3.0 %',
        statistic: { tolerance: { results: 10, 'at-least': 2, share: q('50 %', 'fraction') } },
      },
      value,
      preceded(...others),
    )

  it('judge meets on the very share: half of a normal distribution lies below its mean', () => {
    expect(share(4, 2)).toMatchObject({
      outcome: 'meets',
      value: 50,
      limit: { values: [50], written: ['50 %'] },
    })
    expect(share(4.2, 2).outcome).toBe('does-not-meet')
  })

  it('judge has no share of one result', () => {
    expect(share(2).outcome).toBe('insufficient-history')
  })
})

describe('judgeStatistic', () => {
  it('judgeStatistic needs a statistic over results', () => {
    const comparison = comparisonCase({ property: 'SO3', 'at-most': '3.0 %' })
    expect(() => judgeStatistic(comparison, result('SO3', 2), 'key')).toThrow(
      new RangeError('judgeStatistic needs a statistic over results, got undefined in clause c'),
    )
  })
})
