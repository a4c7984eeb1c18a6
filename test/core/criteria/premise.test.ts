import { readAge } from '../../../src/core/measure/age.ts'
import { expect, it } from 'vitest'
import { premisesForClass } from '../../../src/core/criteria/premise.ts'
import { setOf } from '../judging/fixture.ts'

it('premisesForClass keeps facts as they are, and takes the class’s limits of a property with its age', () => {
  const set = setOf(
    [
      {
        clause: 'c',
        property: 'SO3',
        'at-most': '5.0 %',
        when: [
          { fact: 'use', is: ['marine', 'road'] },
          {
            property: 'strength-activity-index',
            condition: 'c311',
            age: readAge('7 d'),
            'at-least': { F: '75 %', C: '85 %' },
          },
          { property: 'CaO', above: '1.5 %' },
        ],
      },
    ],
    { classes: ['F', 'C'] },
  )
  expect(premisesForClass(set.clauses[0]?.when ?? [], 'C')).toStrictEqual([
    { fact: 'use', is: ['marine', 'road'] },
    {
      property: 'strength-activity-index',
      age: '7 d',
      limits: [{ operator: 'at-least', written: ['85 %'] }],
    },
    { property: 'CaO', limits: [{ operator: 'above', written: ['1.5 %'] }] },
  ])
})
