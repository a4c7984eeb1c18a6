import { describe, expect, it } from 'vitest'
import type { Clause } from '../../../src/core/criteria/criterion.ts'
import { clauseOutcome, judgement, withReason } from '../../../src/core/judging/judged-clause.ts'
import type { WrittenClause } from '../../../src/records/criteria/written-criterion.ts'
import { setOf } from './fixture.ts'

const unreported = judgement('not-reported', { code: 'no-result', params: {} })
const outcome = (written: WrittenClause, more: Partial<Clause> = {}) =>
  clauseOutcome({ ...(setOf([written]).clauses[0] as Clause), ...more } as Clause, unreported)

describe('clauseOutcome', () => {
  it.each<[string, WrittenClause]>([
    ['value', { property: 'SO3', 'at-most': '5.0 %' }],
    [
      'deviation',
      { property: 'SO3', 'deviation-from': { declared: 'yes' }, 'magnitude-at-most': '1 percentage points' },
    ],
    ['statistic', { property: 'SO3', 'at-most': '5.0 %', statistic: { 'rolling-mean': 3 } }],
    ['value', { property: 'SO3', 'at-most': '5.0 %', statistic: { declared: 'yes' } }],
    ['group', { 'any-of': [{ property: 'SO3', 'at-most': '5.0 %' }] }],
    ['fact', { fact: 'use', is: ['marine'] }],
  ])('clauseOutcome says what kind of clause it is: %s', (kind, written) => {
    expect(outcome({ clause: 'c', ...written }).kind).toBe(kind)
  })

  it('clauseOutcome has no value, limit or result unless the judgement has', () => {
    expect(outcome({ clause: 'c', property: 'SO3', 'at-most': '5.0 %' })).toEqual({
      id: 'c',
      decides: false,
      information: false,
      kind: 'value',
      property: 'SO3',
      value: null,
      compared: null,
      unit: null,
      decimals: null,
      limit: null,
      result: null,
      ...unreported,
    })
  })

  it('clauseOutcome remembers the last relaxation alone, with the clause as it stood', () => {
    const written: WrittenClause = { clause: 'c', property: 'SO3', 'at-most': '5.0 %' }
    const former = setOf([written]).clauses[0] as Clause
    const change = (layer: string, kind: 'relax' | 'tighten') => ({ layer, change: kind, former })
    expect(
      outcome(written, { changes: [change('a', 'relax'), change('b', 'relax'), change('c', 'tighten')] })
        .relaxed,
    ).toEqual({ by: 'b', former })
    expect(outcome(written, { changes: [change('c', 'tighten')] }).relaxed).toBeUndefined()
  })
})

describe('withReason', () => {
  it('withReason adds behind what is there, and changes nothing it was given', () => {
    const once = withReason(unreported, { code: 'mean-of-several', params: { n: 2 } })
    const twice = withReason(once, { code: 'rolling-mean', params: { n: 3 } })
    expect(twice.reasons.map(({ code }) => code)).toEqual(['no-result', 'mean-of-several', 'rolling-mean'])
    expect(once.reasons).toHaveLength(2)
    expect(unreported.reasons).toHaveLength(1)
  })
})
