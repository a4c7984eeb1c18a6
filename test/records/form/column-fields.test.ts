import { describe, expect, it } from 'vitest'
import { fieldsForColumn } from '../../../src/records/form/column-fields.ts'
import { fieldsOf } from '../../../src/records/form/form-parts.ts'
import { lotForm } from '../../../src/records/form/lot-form.ts'
import { nextKey } from '../../../src/records/form/next-key.ts'
import { unitsFor } from '../../../src/records/form/units-for.ts'

const TEXT = `analyses:
  - { laboratory: quay, sample: C, tested: 2026-03-10, results: { SiO2: 54 %, CaO: 5 %, SO3: 1 % } }
tests:
  - { sample: C, condition: c311, control: K, laboratory: quay, cast: 2026-03-11, strength: [{ age: 7 d, specimens: { a: 1 kN } }] }
`

function targets(last: string, count: number): string[] {
  const form = lotForm(TEXT)
  const fields = 'sections' in form ? fieldsOf(form.sections) : []
  const first = fields.find(({ path }) => path.at(-1) === last)
  return first === undefined ? [] : fieldsForColumn(first, fields, count).map(({ path }) => path.join('/'))
}

describe('fieldsForColumn', () => {
  it('goes on through the results after the first, and no further than there are', () => {
    expect(targets('CaO', 5)).toEqual(['analyses/0/results/CaO', 'analyses/0/results/SO3'])
  })

  it('makes specimens that the sheet has not yet', () => {
    expect(targets('b', 4).map((path) => path.split('/').at(-1))).toEqual(['b', 'c', 'd', 'e'])
  })
})

describe('nextKey', () => {
  it('goes on after the last letter, takes one that is free, then counts', () => {
    const all = 'abcdefghijklmnopqrstuvwxyz'.split('')
    expect([nextKey([]), nextKey(['d', 'e', 'f']), nextKey(['z']), nextKey(all)]).toEqual([
      'a',
      'g',
      'a',
      '27',
    ])
  })
})

describe('unitsFor', () => {
  it('names the units of a place, the usual one first', () => {
    const specimen = ['tests', 0, 'strength', 0, 'specimens', 'a']
    expect(unitsFor(specimen).slice(0, 3)).toEqual(['kN', 'N', 'lbf'])
    expect(unitsFor(['silo'])).toEqual([])
  })
})
