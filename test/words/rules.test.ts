import { readAge } from '../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import type { WrittenDecisionRule } from '../../src/records/criteria/written-criterion.ts'
import { riskSentence, ruleWords } from '../../src/words/rules.ts'
import { judge } from '../../src/core/judging/verdict.ts'
import { evidenceOf, index, setOf, statedUncertainty } from '../core/judging/fixture.ts'

const agreed = { 'agreed-in': 'special provision 7' }
const activity = {
  property: 'strength-activity-index',
  condition: 'c311',
  age: readAge('28 d'),
  'at-least': '75 %',
} as const
const loss = { property: 'loss-on-ignition', 'at-most': '6.0 %' } as const
const range = { property: 'SO3', between: ['2.0 %', '7.0 %'] } as const

describe('rules in words', () => {
  const routes = (rule?: WrittenDecisionRule) =>
    setOf(
      [{ clause: 'either', 'any-of': [{ ...activity, age: readAge('7 d') }, activity] }],
      rule === undefined ? {} : { 'decision-rule': rule },
    )

  it('riskSentence says what the rule of the set leaves', () => {
    const words = (rule?: WrittenDecisionRule) =>
      riskSentence(setOf([{ clause: 'c', ...loss }], rule === undefined ? {} : { 'decision-rule': rule }))
    expect(words()).toBe(
      'a lot whose true value lies on a limit is accepted in half of cases or more, since values are rounded first',
    )
    expect(words({ probability: 0.95, ...agreed })).toBe(
      'a lot whose true value lies on a limit is accepted in up to 5 % of cases',
    )
    expect(words({ guarded: 1.645, ...agreed })).toMatch(/in up to about 5 % of cases$/)
    expect(words({ probability: 0.95 })).toBe(words())
  })

  it('riskSentence says that two routes of 5 % each let up to about 10 % through', () => {
    expect(riskSentence(routes({ probability: 0.95, ...agreed }))).toMatch(
      /on the limits of both routes of either in at most about 10 %/,
    )
    expect(riskSentence(routes({ guarded: 1.645, ...agreed }))).toMatch(/at most about 10 %/)
  })

  it('riskSentence joins routes judged as specified, and leaves members for information and all-of groups out', () => {
    expect(riskSentence(routes())).toMatch(
      /on the limits of both routes of either more often still, since one is enough$/,
    )
    expect(
      riskSentence(setOf([{ clause: 'either', 'any-of': [activity, { ...loss, information: 'yes' }] }])),
    ).not.toContain('routes')
    expect(riskSentence(setOf([{ clause: 'both', 'all-of': [activity, loss] }]))).not.toContain('routes')
  })

  it('riskSentence states the risk that the uncertainties of a verdict leave, by the names of its clauses', () => {
    const set = setOf([{ clause: 'cl', ...activity }])
    const uncertain = (u: number) => {
      const evidence = evidenceOf([index('28 d', 80)], { uncertaintyOf: () => statedUncertainty(u) })
      return riskSentence(set, judge(set, evidence).clauses, (id) => `clause ${id}`).split('; ')[1]
    }
    expect([uncertain(2), uncertain(0.5), uncertain(0.1)]).toEqual([
      'for clause cl in about 60 %, given its uncertainty',
      'for clause cl in about 84 %, given its uncertainty',
      'for clause cl in more than 99 %, given its uncertainty',
    ])
  })

  it('riskSentence names the clauses with a rule of their own', () => {
    const set = setOf([
      { clause: 'cl', ...loss, 'decision-rule': { probability: 0.9, ...agreed } },
      { clause: 'd', ...range },
    ])
    expect(riskSentence(set)).toMatch(/\bcl\b.* in up to 10 %/)
  })

  it('ruleWords names the rule and where it was agreed', () => {
    expect(ruleWords({ rule: 'guarded', k: 1.645, agreedIn: 'special provision 7' })).toBe(
      'guard band of 1.645 standard uncertainties, agreed in special provision 7; nothing is rounded',
    )
    expect(ruleWords({ rule: 'probability', p: 0.95 })).toBe(
      'probability of conformity of at least 0.95, not agreed in writing, so judged as specified',
    )
  })
})
