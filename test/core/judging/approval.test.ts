import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import type { Evidence, KnownApproval } from '../../../src/core/evidence/evidence.ts'
import { judge } from '../../../src/core/judging/verdict.ts'
import type { WrittenClause } from '../../../src/records/criteria/written-criterion.ts'
import { clauseOf, evidenceOf, result, setOf } from './fixture.ts'

const loi: WrittenClause = {
  clause: 'loi',
  property: 'loss-on-ignition',
  'at-most': '6.0 %',
  approval: { 'at-most': '12.0 %', classes: ['F'], evidence: 'performance records' },
}
const granted: KnownApproval = {
  from: readMoment('2026-01-01'),
  to: readMoment('2026-04-01'),
  by: 'the agency',
  scope: 'paving',
  set: 'trial',
  clause: 'loi',
}

function judged(value: number, evidence: Partial<Evidence> = {}, clause = loi) {
  const set = setOf([clause], { classes: ['F', 'C'] })
  const own = result('loss-on-ignition', value)
  const { outcome, reasons } = clauseOf(judge(set, evidenceOf([own], { class: 'F', ...evidence })), 'loi')
  return [outcome, ...reasons.slice(1).map(({ code }) => code)]
}

describe('an outer limit by approval', () => {
  it('judge meets by approval between the limits, the outer one included', () => {
    const approvals = [granted]
    expect([6, 6.1, 12, 12.1].map((value) => judged(value, { approvals }))).toEqual([
      ['meets'],
      ['meets-by-approval', 'approval-granted'],
      ['meets-by-approval', 'approval-granted'],
      ['does-not-meet'],
    ])
  })

  it.each([
    ['of another clause', { clause: 'so3' }],
    ['of another set', { set: 'other' }],
    ['that has ended', { to: readMoment('2026-03-31') }],
    ['that begins later', { from: readMoment('2026-04-02'), to: readMoment('2027-01-01') }],
  ])('judge finds an approval %s lacking', (_, other) => {
    expect(judged(9, { approvals: [{ ...granted, ...other }] })).toEqual([
      'does-not-meet',
      'approval-lacking',
    ])
  })

  it('judge names the evidence of the approval, else its scope', () => {
    const reasons = (approval: KnownApproval) =>
      clauseOf(
        judge(
          setOf([loi], { classes: ['F'] }),
          evidenceOf([result('loss-on-ignition', 9)], { class: 'F', approvals: [approval] }),
        ),
        'loi',
      ).reasons[1]
    const limit = { operator: 'at-most', written: ['12.0 %'] }
    expect(reasons(granted)).toEqual({
      code: 'approval-granted',
      params: { limit, by: 'the agency', from: '2026-01-01', evidence: 'paving' },
    })
    expect(reasons({ ...granted, evidence: 'report 3' })).toMatchObject({ params: { evidence: 'report 3' } })
  })

  it('judge takes an approval under the set itself or under a layer below it', () => {
    const base = setOf([loi], { id: 'base', classes: ['F'] })
    const set = setOf([], { bases: { base }, extends: { set: 'base' } })
    const outcome = (under: string) =>
      judge(
        set,
        evidenceOf([result('loss-on-ignition', 9)], {
          class: 'F',
          approvals: [{ ...granted, set: under }],
        }),
      ).outcome
    expect(['base', 'trial', 'other'].map(outcome)).toEqual([
      'meets-by-approval',
      'meets-by-approval',
      'does-not-meet',
    ])
  })

  it.each(['between', 'magnitude-at-most'])('setOf refuses an outer limit on two sides: %s', (operator) => {
    const approval = { [operator]: ['0.0 %', '12.0 %'], evidence: 'records' }
    expect(() => setOf([{ ...loi, approval }])).toThrow('the approval states no outer limit')
  })

  it('judge has no outer limit for another class, nor without one', () => {
    expect([
      judged(9, { class: 'C', approvals: [granted] }),
      judged(9, { class: null, approvals: [granted] }),
    ]).toEqual([['does-not-meet'], ['does-not-meet']])
  })
})

describe('an outer limit by declaration', () => {
  const declaring: WrittenClause = {
    ...loi,
    approval: { 'at-most': '12.0 %', evidence: 'declared value', by: 'declaration' },
  }
  const under = (declared: string | undefined, value: number) =>
    judged(value, declared === undefined ? {} : { declared: { 'loss-on-ignition': declared } }, declaring)

  it('judge meets by the declared value where it lies within the outer limit, the value on it included', () => {
    expect([under('9.0 %', 9), under('12.0 %', 12), under('9.0 %', 9.1)]).toEqual([
      ['meets-by-approval', 'declaration-covers'],
      ['meets-by-approval', 'declaration-covers'],
      ['does-not-meet', 'declaration-exceeded'],
    ])
  })

  it('judge counts no declared value beyond the outer limit, and none where there is none', () => {
    expect([under('12.1 %', 9), under(undefined, 9)]).toEqual([
      ['does-not-meet', 'declaration-exceeded'],
      ['does-not-meet', 'declaration-lacking'],
    ])
  })
})
