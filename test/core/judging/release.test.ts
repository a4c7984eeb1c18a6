import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import { judge } from '../../../src/core/judging/verdict.ts'
import type { WrittenClause, WrittenCriterion } from '../../../src/records/criteria/written-criterion.ts'
import { evidenceOf, index, plannedIndex, result, setOf } from './fixture.ts'

const loi: WrittenClause = { clause: 'loi', property: 'loss-on-ignition', 'at-most': '6.0 %' }
const sai: WrittenClause = {
  clause: 'sai',
  property: 'strength-activity-index',
  condition: 'c311',
  age: readAge('28 d'),
  'at-least': '75 %',
}
const planned = [plannedIndex('28 d', { due: readMoment('2026-04-29') })]
function released(list: NonNullable<WrittenCriterion['release']>, ...results: ReturnType<typeof result>[]) {
  return judge(setOf([loi, sai], { release: list }), evidenceOf(results, { planned })).release
}
const waiting = { awaits: [{ clause: 'sai', due: readMoment('2026-04-29') }] }

describe('a release on early results', () => {
  it('judge releases on the clause itself, the very limit included, and names what it waits for', () => {
    expect([
      released([{ clause: 'loi' }], result('loss-on-ignition', 6)),
      released([{ clause: 'loi' }]),
      released([], result('loss-on-ignition', 6)),
    ]).toEqual([waiting, undefined, undefined])
  })

  it('judge releases on a lesser demand at an early age, the very limit included', () => {
    const early = [{ clause: 'sai', with: { age: readAge('7 d'), 'at-least': '70 %' } }]
    const loss = result('loss-on-ignition', 2)
    expect([released(early, loss, index('7 d', 70)), released(early, loss, index('7 d', 69.4))]).toEqual([
      waiting,
      undefined,
    ])
  })

  it('judge keeps the clause’s own limit where the entry states an age alone', () => {
    const early = [{ clause: 'sai', with: { age: readAge('7 d') } }]
    const loss = result('loss-on-ignition', 2)
    expect([released(early, loss, index('7 d', 75)), released(early, loss, index('7 d', 74))]).toEqual([
      waiting,
      undefined,
    ])
  })

  it('judge needs every entry of the list', () => {
    const list = [{ clause: 'loi' }, { clause: 'sai', with: { age: readAge('7 d'), 'at-least': '70 %' } }]
    expect(released(list, result('loss-on-ignition', 2))).toBeUndefined()
    expect(released(list, result('loss-on-ignition', 2), index('7 d', 70))).toEqual(waiting)
  })

  it('judge holds the clause to the entry’s limit at its own age where the entry states a limit alone', () => {
    const stricter = [{ clause: 'loi', with: { 'at-most': '4.0 %' } }]
    expect([
      released(stricter, result('loss-on-ignition', 4)),
      released(stricter, result('loss-on-ignition', 5)),
    ]).toEqual([waiting, undefined])
  })

  it('judge releases nothing on a clause that the set does not have', () => {
    const set = setOf([loi, sai], { release: [{ clause: 'loi' }] })
    const unknown = { ...set, release: [{ clause: 'none', limits: [] }] }
    const evidence = evidenceOf([result('loss-on-ignition', 2)], { planned })
    expect([judge(set, evidence).release, judge(unknown, evidence).release]).toEqual([waiting, undefined])
  })

  it('judge releases on a clause that is met by approval', () => {
    const approved: WrittenClause = { ...loi, approval: { 'at-most': '12.0 %', evidence: 'records' } }
    const approvals = [
      { from: readMoment('2026-01-01'), by: 'the agency', scope: 'paving', set: 'trial', clause: 'loi' },
    ]
    const verdict = judge(
      setOf([approved, sai], { release: [{ clause: 'loi' }] }),
      evidenceOf([result('loss-on-ignition', 9)], { planned, approvals }),
    )
    expect(verdict.release).toEqual(waiting)
  })
})

describe('a release on a group', () => {
  const early: WrittenClause = { ...sai, clause: 'early', age: readAge('7 d') }
  const resistivity: WrittenClause = {
    clause: 'resistivity',
    property: 'resistivity-index',
    condition: 'c311',
    age: readAge('28 d'),
    'at-least': '120 %',
  }
  const ratio = (age: '7 d' | '28 d', value: number) =>
    result('resistivity-index', value, { condition: 'c311', age: readAge(age) })

  function releasedOn(
    group: Pick<WrittenClause, 'any-of' | 'all-of'>,
    more: NonNullable<WrittenCriterion['release']>[number]['with'],
    ...results: ReturnType<typeof result>[]
  ) {
    const entry = more === undefined ? { clause: 'group' } : { clause: 'group', with: more }
    const set = setOf([{ clause: 'group', ...group }, sai], { release: [entry] })
    const awaited = [...planned, plannedIndex('28 d', { property: 'resistivity-index' })]
    return judge(set, evidenceOf(results, { planned: awaited })).release !== undefined
  }

  it('judge asks for the group as it stands where the entry states neither age nor limit', () => {
    const joint = { 'all-of': [early, resistivity] }
    expect([
      releasedOn(joint, undefined, index('7 d', 75), ratio('28 d', 120)),
      releasedOn(joint, undefined, index('7 d', 75)),
    ]).toEqual([true, false])
  })

  it('judge asks for one of the comparisons at the entry’s age, held to its limit', () => {
    const either = { 'any-of': [resistivity, early] }
    const lesser = { age: readAge('7 d'), 'at-least': '70 %' }
    expect([
      releasedOn(either, lesser, index('7 d', 70)),
      releasedOn(either, lesser, index('7 d', 69)),
      releasedOn(either, lesser, ratio('7 d', 130)),
    ]).toEqual([true, false, false])
    const two = { 'any-of': [{ ...resistivity, clause: 'ratio', age: readAge('7 d') }, early, resistivity] }
    expect(releasedOn(two, lesser, ratio('7 d', 60), index('7 d', 70))).toBe(true)
  })

  it('judge asks for the first comparison at the entry’s age where the group has none of that age', () => {
    const late = { 'any-of': [resistivity, { ...sai, clause: 'late' }] }
    const lesser = { age: readAge('7 d'), 'at-least': '70 %' }
    expect([
      releasedOn(late, lesser, ratio('7 d', 70)),
      releasedOn(late, lesser, ratio('7 d', 69), index('7 d', 80)),
    ]).toEqual([true, false])
  })

  it('judge holds comparisons at their own ages to the entry’s limit, not the group to its own', () => {
    const either = { 'any-of': [resistivity, early] }
    const stricter = { 'at-least': '80 %' }
    expect([
      releasedOn(either, stricter, index('7 d', 80)),
      releasedOn(either, stricter, index('7 d', 78)),
    ]).toEqual([true, false])
  })
})
