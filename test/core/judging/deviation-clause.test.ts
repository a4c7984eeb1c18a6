import { readAge } from '../../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import type { Evidence } from '../../../src/core/evidence/evidence.ts'
import { judge } from '../../../src/core/judging/verdict.ts'
import type { Result } from '../../../src/core/result/result.ts'
import type { WrittenClause } from '../../../src/records/criteria/written-criterion.ts'
import { clauseOf, evidenceOf, history, index, setOf, statedUncertainty } from './fixture.ts'

const clause: WrittenClause = {
  clause: 'c',
  property: 'strength-activity-index',
  condition: 'c311',
  age: readAge('28 d'),
  'deviation-from': { preceding: 10 },
  'magnitude-at-most': '5 percentage points',
}
function judged(
  written: WrittenClause,
  value: number,
  evidence: Partial<Evidence> = {},
  own: Partial<Result> = {},
) {
  const uncertaintyOf = () => statedUncertainty(2)
  const found = evidenceOf([index('28 d', value, own)], { uncertaintyOf, ...evidence })
  return clauseOf(judge(setOf([written]), found), 'c')
}
const preceded = (...values: number[]) => ({ preceding: history('strength-activity-index', values) })

describe('a clause on a deviation', () => {
  it('judge takes it from the unrounded mean of preceding results, on either side', () => {
    const found = judged(clause, 85, preceded(78, 81, 81))
    expect(found).toMatchObject({
      value: 5,
      outcome: 'meets',
      against: { mean: 80, n: 3, lots: ['s/L1', 's/L2', 's/L3'] },
    })
    expect(found.reasons[1]).toEqual({
      code: 'deviation-reference',
      params: { from: 'preceding', n: 3, reference: { value: 80, decimals: 2, unit: '%' } },
    })
    expect([judged(clause, 75, preceded(80)).outcome, judged(clause, 74.9, preceded(80)).outcome]).toEqual([
      'meets',
      'does-not-meet',
    ])
  })

  it('judge keeps the limit to come where there is nothing yet to deviate from', () => {
    expect(judged(clause, 85)).toMatchObject({
      outcome: 'insufficient-history',
      value: null,
      limit: { operator: 'magnitude-at-most', values: [5], unit: 'percentage points' },
    })
  })

  it('judge adds the doubt of the reference: √(1 + 1/n) of a mean, √2 of a control, none of a declared value', () => {
    const control: WrittenClause = { ...clause, 'deviation-from': { control: 'yes' } }
    const declared: WrittenClause = { ...clause, 'deviation-from': { declared: 'yes' } }
    expect(judged(clause, 80, preceded(80, 80, 80)).uncertainty?.u).toBeCloseTo(2 * Math.sqrt(4 / 3), 12)
    expect(judged(control, 80, {}, { controlValue: 80 }).uncertainty?.u).toBeCloseTo(2 * Math.SQRT2, 12)
    expect(judged(declared, 80, { declared: { 'strength-activity-index': '80 %' } }).uncertainty?.u).toBe(2)
  })

  it('judge takes a relative deviation and its doubt in per cent of the reference', () => {
    const relative: WrittenClause = { ...clause, relative: 'yes', 'magnitude-at-most': '5 %' }
    // From 50: 5 % is 2.5, and u of 2 × √2 becomes 100 × 2.828 / 50.
    const found = judged(relative, 52.5, preceded(50))
    expect([found.value, found.outcome]).toEqual([5, 'meets'])
    expect(found.uncertainty?.u).toBeCloseTo(4 * Math.SQRT2, 12)
    expect(judged(relative, 52.5, preceded(0))).toMatchObject({
      outcome: 'not-reported',
      reasons: [{ code: 'no-deviation-from-zero' }],
      result: expect.stringContaining('strength-activity-index'),
    })
  })

  it.each<[string, WrittenClause, string]>([
    ['preceding', clause, 'insufficient-history'],
    ['declared', { ...clause, 'deviation-from': { declared: 'yes' } }, 'not-reported'],
    ['control', { ...clause, 'deviation-from': { control: 'yes' } }, 'not-reported'],
  ])('judge has no deviation without its reference: %s', (_, written, outcome) => {
    expect(judged(written, 80).outcome).toBe(outcome)
  })

  it('judge holds a result within bounds against its reference by both of them', () => {
    const within = (low: number, high: number) =>
      judged(clause, high, preceded(80), { bounds: { low, high } })
    expect(within(78, 79)).toMatchObject({ bounds: { low: -2, high: -1 }, value: -1 })
    expect(within(78, 79).outcome).toBe('meets')
    expect(within(60, 61).outcome).toBe('does-not-meet')
    expect(within(60, 79)).toMatchObject({
      outcome: 'not-reported',
      reasons: [{ code: 'bounds-with-limit', params: { answer: 'cannot-decide' } }, {}],
    })
  })
})
