import { describe, expect, it } from 'vitest'
import { comparisonsFor } from '../../../src/core/criteria/comparisons-for.ts'
import { setOf } from '../judging/fixture.ts'

describe('comparisonsFor', () => {
  const { clauses } = setOf(
    [
      { clause: 'all', property: 'SO3', 'at-most': '5 %' },
      { clause: 'class-n', property: 'SO3', 'at-most': '4 %', classes: ['N'] },
      { clause: 'slag', property: 'SO3', 'at-most': '3 %', kinds: ['slag'] },
      {
        clause: 'either',
        classes: ['F'],
        'any-of': [
          { clause: 'seven', property: 'density', 'at-least': '2 g/cm3' },
          { clause: 'eight', property: 'density', 'at-most': '3 g/cm3' },
        ],
      },
    ],
    { classes: ['F', 'N'], kinds: ['coal-fly-ash', 'slag'] },
  )
  const ids = (lotClass: string | null, kind: 'slag' | 'coal-fly-ash' = 'coal-fly-ash') =>
    comparisonsFor(clauses, { class: lotClass, kind }).map(({ id }) => id)

  it('are those of the class, members of groups with their group', () => {
    expect(ids('F')).toEqual(['all', 'seven', 'eight'])
    expect(ids('N')).toEqual(['all', 'class-n'])
  })

  it('of no class leave out every clause for named ones', () => expect(ids(null)).toEqual(['all']))

  it('are those of the kind', () => expect(ids('N', 'slag')).toEqual(['all', 'class-n', 'slag']))
})
