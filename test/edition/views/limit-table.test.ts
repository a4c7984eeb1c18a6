import { describe, expect, it } from 'vitest'
import { limitTable } from '../../../src/edition/views/limit-table.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { setOf } from '../../core/judging/fixture.ts'
import { base, conditionTitle, supplement } from './criterion-fixture.ts'

const rowOf = (set: typeof base, title: string) =>
  limitTable(set, conditionTitle).rows.find((row) => row.title.startsWith(title))

describe('limitTable', () => {
  it('has a column for each class, an outer limit by approval behind the plain one', () => {
    expect(limitTable(base, conditionTitle).columns).toEqual(['Class F', 'Class C'])
    expect(rowOf(base, 'Loss on ignition')?.cells).toEqual([
      '≤\u00a06.0\u00a0%; by approval ≤\u00a012.0\u00a0%',
      '≤\u00a06.0\u00a0%',
    ])
  })
  it('tells a class without a limit from one that the clause is not for', () => {
    expect(rowOf(base, 'SiO₂ + Al₂O₃')?.cells).toEqual(['≥\u00a070.0\u00a0%', 'none'])
    expect(rowOf(base, 'Density')?.cells).toEqual(['not for this class', '≥\u00a01.95\u00a0g/cm³'])
    expect(rowOf(base, 'Density')).toMatchObject({ optional: true, relaxed: false, information: false })
  })
  it('names the condition only where the title leaves it out', () => {
    expect(rowOf(base, 'Strength activity index')).toMatchObject({
      title: 'Strength activity index, 20\u00a0%, 23\u00a0°C, 7\u00a0d',
      condition: '',
    })
    expect(rowOf(base, 'Index at 28')).toMatchObject({
      condition: ', 20\u00a0%, 23\u00a0°C',
      information: true,
    })
  })
  it('marks what a supplement relaxed and what comes from below', () => {
    expect(rowOf(supplement, 'Loss on ignition')).toMatchObject({ layer: null, relaxed: true })
    expect(rowOf(supplement, 'Density')).toMatchObject({ layer: 'base', relaxed: false })
  })
  it('keeps the members of a group together, under what they have to do with each other', () => {
    const rows = limitTable(base, conditionTitle).rows.slice(-2)
    expect(rows.map(({ opens, member }) => [opens?.demand, member])).toEqual([
      ['one of these is enough', true],
      [undefined, true],
    ])
  })
  it('keeps a group for one class out of the columns of the others', () => {
    const index = { property: 'strength-activity-index' as const, condition: 'c311', 'at-least': '85 %' }
    const set = setOf(
      [
        {
          clause: 'class-c',
          classes: ['C'],
          'all-of': [{ clause: 'c-28', ...index, age: readAge('28 d') }],
        },
      ],
      { classes: ['F', 'C'] },
    )
    expect(limitTable(set, conditionTitle).rows[0]?.cells).toEqual(['not for this class', '≥\u00a085\u00a0%'])
  })
  it('has one column for a set without classes', () => {
    const plain = setOf([{ clause: 'so3', property: 'SO3', 'at-most': '5.0 %' }])
    const table = limitTable(plain, conditionTitle)
    expect([table.columns, table.rows[0]?.cells]).toEqual([['Limit'], ['≤\u00a05.0\u00a0%']])
  })
})
