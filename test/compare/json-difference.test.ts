import { describe, expect, it } from 'vitest'
import { jsonDifferences } from './json-difference.ts'

const clause = { id: 'loss-on-ignition', outcome: 'meets', compared: 4.1 }
const lot = {
  id: 'tuff/TL-1',
  state: 'complete',
  verdicts: [{ criterion: 'c618', outcome: 'meets', clauses: [clause] }],
}
const differences = (was: unknown, is: unknown) => jsonDifferences('check:demo', was, is).differences
const report = (...lots: unknown[]) => ({ lots })

describe('jsonDifferences', () => {
  it('finds nothing between equal reports and counts their values', () => {
    expect(jsonDifferences('check:demo', report(lot), structuredClone(report(lot)))).toMatchObject({
      differences: [],
      values: 7,
    })
  })

  it('points to a changed verdict by the ids of lot and criterion', () => {
    const changed = { ...lot, verdicts: [{ ...lot.verdicts[0], outcome: 'pending' }] }
    expect(differences(report(lot), report(changed))).toEqual([
      {
        where: 'check:demo:/lots/tuff~1TL-1/verdicts/c618/outcome',
        pattern: 'check:*:/lots/*/verdicts/*/outcome',
        was: '"meets"',
        is: '"pending"',
      },
    ])
  })

  it('points to a changed digit of a clause', () => {
    const changed = { ...lot, verdicts: [{ ...lot.verdicts[0], clauses: [{ ...clause, compared: 4.2 }] }] }
    expect(differences(report(lot), report(changed))[0]?.where).toBe(
      'check:demo:/lots/tuff~1TL-1/verdicts/c618/clauses/loss-on-ignition/compared',
    )
  })

  it('sees a member that was added, and one that is gone', () => {
    expect(differences({ a: 1 }, { a: 1, reasonCodes: [] })).toMatchObject([
      { where: 'check:demo:/reasonCodes', was: null, is: '[]' },
    ])
    expect(differences({ a: 1, b: null }, { a: 1 })).toMatchObject([
      { where: 'check:demo:/b', was: 'null', is: null },
    ])
  })

  it('tells a lot added in front from a change of all lots after it', () => {
    const other = { ...lot, id: 'tuff/TL-0' }
    expect(differences(report(lot), report(other, lot)).map(({ where }) => where)).toEqual([
      'check:demo:/lots/tuff~1TL-0',
    ])
  })

  it('reports another order of named elements once', () => {
    const other = { ...lot, id: 'tuff/TL-2' }
    expect(differences(report(lot, other), report(other, lot))).toMatchObject([
      { where: 'check:demo:/lots/(order)', was: 'tuff/TL-1, tuff/TL-2', is: 'tuff/TL-2, tuff/TL-1' },
    ])
  })

  it('keeps apart elements of the same name', () => {
    const was = [
      { key: 'density', value: 1 },
      { key: 'density', value: 2 },
    ]
    expect(differences(was, [was[0], { key: 'density', value: 3 }])).toMatchObject([
      { where: 'check:demo:/density#2/value' },
    ])
  })

  it('names a history by property, condition and age', () => {
    const history = (unit: string) => [
      { property: 'density', condition: null, age: null, unit: '1' },
      { property: 'strength', condition: 'c311', age: '7 d', unit },
    ]
    expect(differences(history('%'), history('MPa'))[0]?.where).toBe('check:demo:/strength|c311|7 d/unit')
  })

  it.each([
    [null, 0],
    [0, '0'],
    [[], {}],
    [false, null],
    [[1], [1, 2]],
    [{}, null],
  ])('tells %j from %j', (was, is) => {
    expect(differences(was, is)).toHaveLength(1)
  })
})
