import { readAge } from '../../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import type { QuantityFault } from '../../../src/core/measure/units.ts'
import { converterOf } from '../../../src/records/schema/convert.ts'

/** A clause on a mean over a period, within as many groups as asked for. */
function within(groups: number, period: string): object {
  const clause = {
    property: 'SO3',
    statistic: { attributes: { period, acceptance: [{ from: 1, allow: 0 }] } },
  }
  return groups === 0 ? clause : { [groups % 2 === 0 ? 'any-of' : 'all-of']: [within(groups - 1, period)] }
}

function converted(clause: object): { record: unknown; faults: [string, QuantityFault['fault']][] } {
  const faults: [string, QuantityFault['fault']][] = []
  const record = converterOf('criterion')({ clauses: [clause] }, (pointer, { fault }) => {
    faults.push([pointer, fault])
  })
  return { record, faults }
}

describe('converterOf', () => {
  it.each([0, 1, 2, 3])('reads the quantities of a clause within %s groups', (groups) => {
    const { record, faults } = converted(within(groups, '30 d'))
    expect(faults).toEqual([])
    expect(JSON.stringify(record)).toContain('"period":{"kind":"duration","value":720,')
  })
  it('reports a text that is no quantity where it stands, groups above it included', () => {
    expect(converted(within(2, '30 pounds')).faults).toEqual([
      ['/clauses/0/any-of/0/all-of/0/statistic/attributes/period', 'unknown-unit'],
    ])
  })
  it('leaves a record of a kind without quantities as it is', () => {
    const record = { name: 'Hill' }
    expect(converterOf('producer')(record, () => {})).toBe(record)
  })
  it('keeps what is no quantity: members, order, items', () => {
    const record = { note: 'x', ages: [{ within: '3 h', age: '7 d' }] }
    expect(converterOf('condition')(record, () => {})).toMatchObject({
      note: 'x',
      ages: [{ within: { value: 3, written: '3 h' }, age: readAge('7 d') }],
    })
  })
})
