import { describe, expect, it } from 'vitest'
import {
  type Clause,
  type Comparison,
  type Criterion,
  EVERY_CLASS,
} from '../../../src/core/criteria/criterion.ts'
import { trendContext } from '../../../src/edition/views/trends.ts'

function atLeast(id: string, value: number, more: Partial<Comparison> = {}): Comparison {
  const limits = [
    {
      operator: 'at-least' as const,
      byClass: {
        [EVERY_CLASS]: [{ kind: 'fraction' as const, value, unit: '%', written: `${value} %`, decimals: 0 }],
      },
    },
  ]
  return {
    id,
    layer: 'set',
    form: 'comparison',
    property: 'oxide-sum',
    limits,
    several: 'worst',
    optional: false,
    information: false,
    ...more,
  }
}

function set(clauses: readonly Clause[]): Criterion {
  return {
    id: 'set',
    title: 'Set',
    edition: '1',
    kinds: ['coal-fly-ash', 'raw-natural-pozzolan'],
    classes: ['F', 'N'],
    classTitles: {},
    clauses,
    release: [],
    bestFirst: false,
    decisionRule: { rule: 'as-specified' },
    layers: [{ id: 'set', title: 'Set', edition: '1', sources: {} }],
    removed: [],
    lacks: [],
  }
}

const oxideSum = { property: 'oxide-sum' } as const
const ash = { class: 'F', kind: 'coal-fly-ash' } as const
const tuff = { class: 'N', kind: 'raw-natural-pozzolan' } as const
const values = (clauses: readonly Clause[], scope: Parameters<typeof trendContext>[2]) =>
  trendContext(oxideSum, [set(clauses)], scope).limits.map((limit) => limit.value)

describe('trendContext', () => {
  it('draws no limit of a clause for another class', () => {
    const clauses = [atLeast('ash', 50, { classes: ['F'] }), atLeast('natural', 70, { classes: ['N'] })]
    expect(values(clauses, ash)).toEqual([50])
    expect(values(clauses, tuff)).toEqual([70])
    expect(values(clauses, { ...ash, class: null })).toEqual([])
  })
  it('draws equal limits of several sets once, and names the sets', () => {
    const other = { ...set([atLeast('ash', 50), atLeast('more', 55)]), designation: 'X 1' }
    expect(
      trendContext(oxideSum, [set([atLeast('ash', 50)]), other], ash).limits.map(({ value, sets }) => [
        value,
        sets,
      ]),
    ).toEqual([
      [50, ['Set, edition 1', 'X 1, edition 1']],
      [55, ['X 1, edition 1']],
    ])
  })
  it('draws no limit of a clause for another kind of material', () => {
    expect(values([atLeast('natural', 70, { kinds: ['raw-natural-pozzolan'] })], ash)).toEqual([])
  })
  it('leaves the members out with their group when that is for another class', () => {
    const group: Clause = {
      id: 'either',
      layer: 'set',
      form: 'group',
      combine: 'any-of',
      classes: ['N'],
      optional: false,
      information: false,
      members: [atLeast('member', 70)],
    }
    expect(values([group], ash)).toEqual([])
    expect(values([group], tuff)).toEqual([70])
  })
})
