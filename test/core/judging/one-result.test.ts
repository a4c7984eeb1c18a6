import { describe, expect, it } from 'vitest'
import { readAge } from '../../../src/core/measure/age.ts'
import type { Evidence } from '../../../src/core/evidence/evidence.ts'
import { judgeResult, uncertaintyFor } from '../../../src/core/judging/one-result.ts'
import type { WrittenClause, WrittenCriterion } from '../../../src/records/criteria/written-criterion.ts'
import { comparisonCase, history, index, result, statedUncertainty } from './fixture.ts'

const loss: Omit<WrittenClause, 'clause'> = { property: 'loss-on-ignition', 'at-most': '6.0 %' }
const activity: Omit<WrittenClause, 'clause'> = {
  property: 'strength-activity-index',
  condition: 'c311',
  age: readAge('28 d'),
  'at-least': '75 %',
}
const agreed = { guarded: 2, 'agreed-in': 'provision 7' }

describe('judgeResult', () => {
  const judged = (
    written: Omit<WrittenClause, 'clause'>,
    value: number,
    evidence: Partial<Evidence> = {},
    set: Partial<WrittenCriterion> = {},
  ) =>
    judgeResult(comparisonCase(written, evidence, set), result(written.property ?? 'SO3', value), {
      key: 'key',
    })

  it('judgeResult holds the result to the limit, and names it', () => {
    expect(judged(loss, 6.1)).toMatchObject({ outcome: 'does-not-meet', value: 6.1, result: 'key' })
  })

  it('judgeResult reports a value without a limit, whatever stands beside it', () => {
    const reported = {
      outcome: 'reported',
      reasons: [{ code: 'reported-without-limit', params: {} }],
      value: 6.123,
      compared: 6.123,
      unit: '%',
      decimals: 2,
      result: 'key',
    }
    expect(judged({ property: 'loss-on-ignition', report: 'yes' }, 6.123)).toEqual(reported)
    const deviating: Omit<WrittenClause, 'clause'> = {
      property: 'loss-on-ignition',
      'deviation-from': { declared: 'yes' },
      'at-most': { C: '1 percentage points' },
    }
    expect(judged(deviating, 6.123, {}, { classes: ['F', 'C'] })).toEqual(reported)
  })

  it('judgeResult classifies where the clause has bands', () => {
    const bands = { property: 'CaO', band: [{ title: 'low', 'at-most': '10.0 %' }] } as const
    expect(judged(bands, 10)).toMatchObject({ outcome: 'reported', band: 'low', result: 'key' })
  })

  it('judgeResult takes the statistic or the deviation where the clause is on one', () => {
    const preceding = history('loss-on-ignition', [4])
    expect(judged({ ...loss, statistic: { 'rolling-mean': 2 } }, 6, { preceding })).toMatchObject({
      value: 5,
      result: 'key',
    })
    const deviation: Omit<WrittenClause, 'clause'> = {
      property: 'loss-on-ignition',
      'deviation-from': { preceding: 10 },
      'magnitude-at-most': '1 percentage points',
    }
    expect(judged(deviation, 6, { preceding })).toMatchObject({ value: 2, outcome: 'does-not-meet' })
  })
})

describe('uncertaintyFor', () => {
  const known = statedUncertainty(2)
  const asked = (
    written: Omit<WrittenClause, 'clause'>,
    rule?: WrittenCriterion['decision-rule'],
    evidence: Partial<Evidence> = { uncertaintyOf: () => known },
  ) =>
    uncertaintyFor(
      comparisonCase(written, evidence, rule === undefined ? {} : { 'decision-rule': rule }),
      result('loss-on-ignition', 5),
    )

  it('uncertaintyFor an index is asked for under any rule, for any other property under one that is agreed', () => {
    expect([
      asked(activity),
      asked(activity, { guarded: 2 }),
      asked(loss, agreed),
      asked(loss),
      asked(loss, { guarded: 2 }),
    ]).toEqual([known, known, known, undefined, undefined])
  })

  it('uncertaintyFor follows the rule of the clause before that of the set', () => {
    expect([
      asked({ ...loss, 'decision-rule': agreed }),
      asked({ ...loss, 'decision-rule': { guarded: 2 } }, agreed),
    ]).toEqual([known, undefined])
  })

  it('uncertaintyFor hands the result over, and has none where the laboratory states none', () => {
    const asking: unknown[] = []
    const own = index('28 d', 80)
    const uncertaintyOf = (one: unknown) => {
      asking.push(one)
      return undefined
    }
    expect(uncertaintyFor(comparisonCase(activity, { uncertaintyOf }), own)).toBeUndefined()
    expect(asking).toEqual([own])
    expect(asked(activity, undefined, {})).toBeUndefined()
  })
})
