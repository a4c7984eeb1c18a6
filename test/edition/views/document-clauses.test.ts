import { describe, expect, it } from 'vitest'
import {
  governingClauses,
  judgements,
  needsNoResult,
  recordClauses,
} from '../../../src/edition/views/document-clauses.ts'
import { certificate, clause, result, verdict } from './certificate-fixture.ts'

const fuel = clause({ id: 'fuel', property: undefined as never, kind: 'fact', title: 'Fuel' })

describe('recordClauses', () => {
  it('takes clauses on the record out of their groups, and no neutral one', () => {
    const group = clause({ id: 'g', kind: 'group', clauses: [fuel, clause()] })
    const unasked = { ...fuel, id: 'unasked', outcome: 'not-invoked' as const }
    expect(recordClauses(certificate({ verdicts: [verdict([group, unasked])] })).map(({ id }) => id)).toEqual(
      ['fuel'],
    )
  })
})

describe('governingClauses', () => {
  it('are those of the first verdict, none without one', () => {
    expect(governingClauses(certificate())).toHaveLength(1)
    expect(governingClauses({ verdicts: [] })).toEqual([])
  })
})

describe('needsNoResult', () => {
  it('holds where a condition is false or nobody asked, not for what is reported', () => {
    expect(needsNoResult({ outcome: 'not-applicable' })).toBe(true)
    expect(needsNoResult({ outcome: 'not-invoked' })).toBe(true)
    expect(needsNoResult({ outcome: 'reported' })).toBe(false)
  })
})

describe('judgements', () => {
  it('give every set’s outcome on a result, with the doubt and what it rests on', () => {
    const doubtful = clause({ doubt: '7.9 points clear', uncertainty: { u: 0.25, basis: 'as stated' } })
    const document = certificate({ verdicts: [verdict([doubtful])] })
    expect(judgements(document, result())).toEqual([
      {
        label: 'VALE 1, edition 1',
        text: '2.1 % (2.14 before rounding) meets the limit, at most 10.0 %.',
        outcome: 'meets',
        note: '7.9 points clear; standard uncertainty 0.3: as stated.',
      },
    ])
  })
  it('are none for a result that no clause judges, or only a neutral one', () => {
    expect(judgements(certificate(), { key: 'other' })).toEqual([])
    const neutral = certificate({ verdicts: [verdict([clause({ outcome: 'reported' })])] })
    expect(judgements(neutral, result())).toEqual([])
  })
})
