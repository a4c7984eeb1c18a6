import { describe, expect, it } from 'vitest'
import { governingClauses, needsNoResult, recordClauses } from '../../../src/edition/printed/clauses.ts'
import { certificate, clause, verdict } from '../certificate-fixture.ts'

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
