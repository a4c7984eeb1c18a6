import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import { judge } from '../../../src/core/judging/verdict.ts'
import type { WrittenClause } from '../../../src/records/criteria/written-criterion.ts'
import { clauseOf, evidenceOf, index, plannedIndex, setOf } from './fixture.ts'

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
