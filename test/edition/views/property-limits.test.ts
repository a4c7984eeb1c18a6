import { describe, expect, it } from 'vitest'
import { limitsByProperty } from '../../../src/edition/views/limits-by-property.ts'
import { propertyLimits } from '../../../src/edition/views/property-limits.ts'
import { setOf } from '../../core/judging/fixture.ts'
import { tinyEdition } from '../tiny-edition.ts'
import { base, supplement } from './criterion-fixture.ts'

const edition = tinyEdition([], [])
const on = (key: 'loss-on-ignition' | 'strength-activity-index' | 'density', ...sets: (typeof base)[]) =>
  propertyLimits(edition, limitsByProperty(sets).get(key) ?? [], 'Limits')

describe('propertyLimits', () => {
  it('gives set, demand and basis of each clause', () => {
    expect(on('loss-on-ignition', base, supplement)).toEqual({
      label: 'Limits',
      aged: false,
      lines: [
        {
          set: 'VALE 1, edition 1',
          href: '/a/criteria/base/',
          age: 'any',
          demand: 'At most 6.0\u00a0%',
          remarks: '',
          basis: 'read',
        },
        expect.objectContaining({ set: 'Agency rules, edition 1', demand: 'At most 8.0\u00a0%' }),
      ],
    })
  })
  it('shows ages where any limit has one', () => {
    const { aged, lines } = on('strength-activity-index', base)
    expect([aged, lines.map(({ age }) => age)]).toEqual([true, ['7 d', '28 d']])
  })
  it('says that either age is enough where one is', () => {
    expect(on('strength-activity-index', base).lines[0]?.remarks).toBe(
      'One of these is enough: Strength activity index, c311, 7\u00a0d; Index at 28\u00a0d',
    )
  })
  it('says for which class, and from which layer, a clause is', () => {
    expect(on('density', supplement).lines[0]?.remarks).toBe('For class C · from VALE 1, edition 1')
  })
  it('says what is judged where it is not the single result, and in per cent of what', () => {
    const deviation = setOf([
      {
        clause: 'uniform',
        property: 'density',
        'deviation-from': { preceding: 10 },
        relative: 'yes',
        'magnitude-at-most': '5 %',
        basis: { memory: 'recalled' },
      },
    ])
    expect(on('density', deviation).lines[0]).toMatchObject({
      remarks: 'Deviation from the mean of preceding results, as a percentage of it',
      basis: 'from memory, not checked',
    })
    const mean = setOf([
      { clause: 'mean', property: 'density', statistic: { 'rolling-mean': 5 }, 'at-least': '2 g/cm3' },
    ])
    expect(on('density', mean).lines[0]?.remarks).toBe('The mean of the last 5 results for density')
  })
})
