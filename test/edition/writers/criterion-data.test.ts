import { expect, it } from 'vitest'
import { criterionData } from '../../../src/edition/writers/criterion-data.ts'
import { setOf } from '../../core/judging/fixture.ts'

it('criterionData gives the former demand of a change in words and as data, in groups too', () => {
  const so3 = { clause: 'so3', property: 'SO3', 'at-most': '5.0 %' } as const
  const base = setOf(
    [
      { clause: 'g', 'all-of': [so3] },
      { clause: 'moist', property: 'moisture', 'at-most': '3.0 %' },
    ],
    {
      id: 'base',
    },
  )
  const set = setOf(
    [
      { clause: 'so3', change: 'tighten', 'at-most': '4.0 %' },
      { clause: 'moist', change: 'remove' },
    ],
    { extends: { set: 'base' }, bases: { base } },
  )
  const former = (words: string, property: string) => ({ was: words, former: { property } })
  expect(criterionData({ criteria: new Map([['trial', set]]) })).toMatchObject({
    format: 1,
    criteria: {
      trial: {
        clauses: [{ members: [{ changes: [former('at most 5.0 %', 'SO3')] }] }],
        removed: [{ id: 'moist', ...former('at most 3.0 %', 'moisture') }],
      },
    },
  })
})
