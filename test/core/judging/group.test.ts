import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import { verdictStanding } from '../../../src/core/criteria/verdict-standing.ts'
import { judge } from '../../../src/core/judging/verdict.ts'
import type { WrittenClause } from '../../../src/records/criteria/written-criterion.ts'
import { clauseOf, evidenceOf, index, plannedIndex, result, setOf } from './fixture.ts'

const at = (age: '7 d' | '28 d'): WrittenClause => ({
  clause: age.replace(' ', ''),
  property: 'strength-activity-index',
  condition: 'c311',
  age: readAge(age),
  'at-least': '75 %',
})
const either: WrittenClause = { clause: 'g', 'any-of': [at('7 d'), at('28 d')] }
const both: WrittenClause = { clause: 'g', 'all-of': [at('7 d'), at('28 d')] }
const group = (written: WrittenClause, ...args: Parameters<typeof evidenceOf>) =>
  clauseOf(judge(setOf([written]), evidenceOf(...args)), 'g')

describe('a group', () => {
  it('judge names the members with the outcome, and of a route used those that it made needless', () => {
    expect(group(either, [index('28 d', 75)])).toMatchObject({
      outcome: 'meets',
      reasons: [
        {
          code: 'by-members',
          params: { outcome: 'meets', members: ['28d'], others: [{ clause: '7d', outcome: 'not-reported' }] },
        },
      ],
    })
    expect(group(both, [index('7 d', 75), index('28 d', 74)]).reasons).toEqual([
      { code: 'by-members', params: { outcome: 'does-not-meet', members: ['28d'], others: [] } },
    ])
  })

  it('judge names no other member of joint demands, nor of a group that is not met', () => {
    const others = (written: WrittenClause, ...values: Parameters<typeof index>[]) => {
      const [reason] = group(
        written,
        values.map((one) => index(...one)),
      ).reasons
      return reason.code === 'by-members' ? reason.params.others : undefined
    }
    expect([others(both, ['7 d', 80], ['28 d', 80]), others(either, ['7 d', 70])]).toEqual([[], []])
  })

  it('judge says of a group not met that an overdue member can still meet it, alone and among joint demands', () => {
    const late = [plannedIndex('28 d', { overdueSince: readMoment('2026-05-06') })]
    const routes = { code: 'late-routes', params: { routes: [{ clause: '28d', since: '2026-05-06' }] } }
    const judged = (written: WrittenClause, seven: number) =>
      judge(setOf([written]), evidenceOf([index('7 d', seven)], { planned: late }))
    const verdict = judged(either, 74)
    expect(clauseOf(verdict, 'g')).toMatchObject({ outcome: 'does-not-meet', reasons: [{}, routes] })
    expect(verdict.reasons).toEqual([
      { code: 'others-met', params: { outcome: 'does-not-meet', count: 1, others: 0, soFar: 1 } },
      { code: 'decided-by', params: { clause: '7d' } },
      { code: 'late-routes-of', params: { clause: 'g', ...routes.params } },
    ])
    expect(verdictStanding(verdict)).toEqual({ soFar: true })
    expect(clauseOf(judged({ clause: 'top', 'all-of': [either] }, 74), 'top').reasons[1]).toEqual(routes)
    // Joint demands of which one failed stay as they are, and what is met needs no other route.
    expect(clauseOf(judged(both, 74), 'g').reasons).toHaveLength(1)
    expect(verdictStanding(judged(both, 74))).toEqual({})
    expect(clauseOf(judged(either, 75), 'g').reasons).toHaveLength(1)
  })

  it('judge gives no such hope where another clause fails for good', () => {
    const loss: WrittenClause = { clause: 'loi', property: 'loss-on-ignition', 'at-most': '6.0 %' }
    const planned = [plannedIndex('28 d', { overdueSince: readMoment('2026-05-06') })]
    const results = [index('7 d', 74), result('loss-on-ignition', 7)]
    const verdict = judge(setOf([either, loss]), evidenceOf(results, { planned }))
    expect(verdictStanding(verdict)).toEqual({})
    expect(verdict.reasons[0]).toEqual({
      code: 'others-met',
      params: { outcome: 'does-not-meet', count: 2, others: 0, soFar: 1 },
    })
  })

  it('judge gives a pending group the earliest due date of its pending members, and any other none', () => {
    const planned = [
      plannedIndex('28 d', { due: readMoment('2026-04-29') }),
      plannedIndex('7 d', { due: readMoment('2026-04-08') }),
    ]
    expect(group(either, [], { planned })).toMatchObject({
      outcome: 'pending',
      due: readMoment('2026-04-08'),
    })
    const later = plannedIndex('7 d', { due: readMoment('2026-05-20') })
    expect(group(either, [], { planned: [...planned.slice(0, 1), later] }).due).toEqual(
      readMoment('2026-04-29'),
    )
    expect(group(either, [index('7 d', 80)], { planned: planned.slice(0, 1) })).not.toHaveProperty('due')
  })

  it('judge leaves members for information and neutral ones out of the combination', () => {
    const information: WrittenClause = {
      ...both,
      'all-of': [at('7 d'), { ...at('28 d'), information: 'yes' }],
    }
    expect(group(information, [index('7 d', 80), index('28 d', 60)]).outcome).toBe('meets')
    const neutral: WrittenClause = { ...both, 'all-of': [{ ...at('7 d'), kinds: ['raw-natural-pozzolan'] }] }
    expect(group(neutral, [index('7 d', 60)])).toMatchObject({
      outcome: 'not-applicable',
      reasons: [{ code: 'no-member-applies', params: {} }],
    })
  })
})
