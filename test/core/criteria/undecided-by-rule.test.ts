import { describe, expect, it } from 'vitest'
import type { Comparison, DecisionRule } from '../../../src/core/criteria/criterion.ts'
import { undecidedByRule } from '../../../src/core/criteria/undecided-by-rule.ts'
import { setOf } from '../judging/fixture.ts'

const AGREED: DecisionRule = { rule: 'guarded', k: 2, agreedIn: 'contract 7' }
const known = ({ property }: Comparison) => property === 'SO3'
const ids = (clauses: Parameters<typeof setOf>[0], decisionRule = AGREED) =>
  undecidedByRule({ ...setOf(clauses), decisionRule }, known).map(({ rule, clauses: open }) => [
    rule,
    open.map(({ id }) => id),
  ])

describe('undecidedByRule', () => {
  it('names what has no uncertainty, members of groups too', () => {
    const mgo = { clause: 'mgo', property: 'MgO', 'at-most': '5.0 %' } as const
    const group = {
      clause: 'g',
      'any-of': [
        { ...mgo, clause: 'in' },
        { ...mgo, clause: 'on' },
      ],
    }
    expect(ids([{ ...mgo, clause: 'so3', property: 'SO3' }, mgo, group])).toEqual([
      [AGREED, ['mgo', 'in', 'on']],
    ])
  })
  it('leaves out what is judged as specified anyway, and what has no limit', () => {
    const mgo = { clause: 'mgo', property: 'MgO' } as const
    expect(
      ids([
        { ...mgo, clause: 'a', 'at-most': '5.0 %', statistic: { 'rolling-mean': 5 } },
        { ...mgo, clause: 'b', report: 'yes' },
        { ...mgo, clause: 'c', 'at-most': '5.0 %', 'decision-rule': { 'as-specified': 'yes' } },
      ]),
    ).toEqual([])
    expect(ids([{ ...mgo, 'at-most': '5.0 %' }], { rule: 'guarded', k: 2 } as typeof AGREED)).toEqual([])
  })
  it('tells rules apart', () => {
    const rule = { guarded: 1, 'agreed-in': 'contract 8' }
    const mgo = { clause: 'mgo', property: 'MgO', 'at-most': '5.0 %' } as const
    expect(ids([mgo, { ...mgo, clause: 'own', 'decision-rule': rule }]).map(([, open]) => open)).toEqual([
      ['mgo'],
      ['own'],
    ])
  })
})
