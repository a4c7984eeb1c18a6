import { readAge } from '../../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import { jointRisk, riskAtLimit, riskOfSet } from '../../../src/core/criteria/rule-risk.ts'
import type { WrittenDecisionRule } from '../../../src/records/criteria/written-criterion.ts'
import { judge } from '../../../src/core/judging/verdict.ts'
import { evidenceOf, index, setOf, statedUncertainty } from '../judging/fixture.ts'

const agreed = { 'agreed-in': 'special provision 7' }
const activity = {
  property: 'strength-activity-index',
  condition: 'c311',
  age: readAge('28 d'),
  'at-least': '75 %',
} as const
const loss = { property: 'loss-on-ignition', 'at-most': '6.0 %' } as const

describe('rule risk', () => {
  it('riskAtLimit as specified grows with the rounding step, and is not known without an uncertainty', () => {
    const specified = { rule: 'as-specified' } as const
    expect(riskAtLimit(specified)).toBeNull()
    // Φ(0.25) and Φ(1), of any table of the normal distribution.
    expect(riskAtLimit(specified, { u: 2, step: 1 })).toBeCloseTo(0.5987, 4)
    expect(riskAtLimit(specified, { u: 0.5, step: 1 })).toBeCloseTo(0.8413, 4)
    expect(riskAtLimit(specified, { u: 2, step: 0 })).toBe(0.5)
    expect(riskAtLimit(specified, { u: 0, step: 1 })).toBe(1)
  })

  it('riskAtLimit is what an agreed rule leaves, whatever is known of the value', () => {
    expect(riskAtLimit({ rule: 'guarded', k: 2, agreedIn: 'x' }, { u: 2, step: 1 })).toBeCloseTo(0.02275, 5)
    expect(riskAtLimit({ rule: 'guarded', k: 1.645 })).toBeNull()
    expect(riskAtLimit({ rule: 'guarded', k: 1.645, agreedIn: 'x' })).toBeCloseTo(0.05, 4)
    expect(riskAtLimit({ rule: 'guarded', k: 2, agreedIn: 'x' })).toBeCloseTo(0.02275, 5)
    expect(riskAtLimit({ rule: 'probability', p: 0.9, agreedIn: 'x' })).toBeCloseTo(0.1, 12)
  })

  it('jointRisk of two routes at 5 % is 9.75 %, of one is its own', () => {
    expect(jointRisk([0.05, 0.05])).toBeCloseTo(0.0975, 12)
    expect(jointRisk([0.05])).toBeCloseTo(0.05, 12)
    expect(jointRisk([0.5, 0.5])).toBeCloseTo(0.75, 12)
    expect([jointRisk([0.5, null]), jointRisk([])]).toEqual([null, 0])
  })
})

describe('riskOfSet', () => {
  const under = (rule: WrittenDecisionRule | undefined, ...members: Parameters<typeof setOf>[0]) =>
    riskOfSet(setOf(members, rule === undefined ? {} : { 'decision-rule': rule }))

  it('riskOfSet of a plain set is that of its rule alone', () => {
    expect(under(undefined, { clause: 'c', ...loss })).toEqual({ own: null, clauses: [], groups: [] })
  })

  it('riskOfSet gathers clauses with a rule of their own by their risk, members of groups too', () => {
    const rule = { probability: 0.75, ...agreed }
    const found = under(
      { probability: 0.75, ...agreed },
      { clause: 'a', ...loss, 'decision-rule': { probability: 0.5, ...agreed } },
      { clause: 'b', ...activity },
      { clause: 'g', 'all-of': [{ clause: 'd', ...loss, 'decision-rule': { probability: 0.5, ...agreed } }] },
    )
    expect(found).toEqual({
      own: 1 - rule.probability,
      clauses: [{ risk: 0.5, by: 'rule', clauses: ['a', 'd'] }],
      groups: [],
    })
  })

  it('riskOfSet joins the routes of a group, each by its own rule, else the group’s, else the set’s', () => {
    // One route lets one half through, the other one quarter: 1 − (1 − 1/2)(1 − 1/4) = 5/8.
    const found = under(
      { probability: 0.75, ...agreed },
      {
        clause: 'either',
        'any-of': [{ ...activity, 'decision-rule': { probability: 0.5, ...agreed } }, loss],
      },
    )
    expect(found.groups).toEqual([{ group: 'either', routes: 2, risk: 0.625 }])
  })

  it('riskOfSet leaves members for information and groups of one route out', () => {
    const member = { ...loss, information: 'yes' } as const
    expect(under(undefined, { clause: 'e', 'any-of': [activity, member] }).groups).toEqual([])
    expect(under(undefined, { clause: 'e', 'any-of': [activity, loss, member] }).groups).toEqual([
      { group: 'e', routes: 2, risk: null },
    ])
  })

  it('riskOfSet joins no demands that must all hold', () => {
    expect(under(undefined, { clause: 'e', 'all-of': [activity, loss] }).groups).toEqual([])
  })

  it('riskOfSet lists the members of a group with a rule of its own, not the group beside them', () => {
    const group = {
      clause: 'g',
      'all-of': [{ clause: 'd', ...loss }],
      'decision-rule': { probability: 0.75, ...agreed },
    }
    expect(under(undefined, group).clauses).toEqual([{ risk: 0.25, by: 'rule', clauses: ['d'] }])
  })

  it('riskOfSet of a verdict computes what is judged as specified from the uncertainties known', () => {
    const set = setOf([
      { clause: 'c', ...loss },
      {
        clause: 'either',
        'any-of': [
          { clause: 'early', ...activity, age: readAge('7 d') },
          { clause: 'late', ...activity },
        ],
      },
    ])
    const evidence = evidenceOf([index('7 d', 76), index('28 d', 76)], {
      uncertaintyOf: ({ property }) => (property === 'loss-on-ignition' ? undefined : statedUncertainty(2)),
    })
    const found = riskOfSet(set, judge(set, evidence).clauses)
    // Φ(1 / 4) = 0.5987, and 1 − (1 − 0.5987)² = 0.8390.
    expect(found).toEqual({
      own: null,
      clauses: [{ risk: expect.closeTo(0.5987, 4), by: 'uncertainty', clauses: ['early', 'late'] }],
      groups: [{ group: 'either', routes: 2, risk: expect.closeTo(0.839, 4) }],
    })
  })
})
