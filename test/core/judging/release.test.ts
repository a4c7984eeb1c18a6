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
})
