import { q } from '../readings/fixture.ts'
import { describe, expect, it } from 'vitest'
import { readCriterion } from '../../../src/core/criteria/read-criterion.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { setOf } from '../judging/fixture.ts'

const index = { property: 'strength-activity-index', condition: 'c311' } as const
const premise = { ...index, age: readAge('7 d'), above: '70 %' }

/** A set that has an age wherever one can stand. */
const base = setOf(
  [
    {
      clause: 'either',
      'any-of': [
        { clause: 'early', ...index, age: readAge('7 d'), 'at-least': '75 %', when: [premise] },
        { clause: 'late', ...index, age: readAge('28 d'), 'at-least': '75 %', 'deemed-by': [premise] },
      ],
    },
    {
      clause: 'bands',
      ...index,
      age: readAge('28 d'),
      band: [{ title: 'high', above: '100 %', and: [premise] }],
    },
    { clause: 'known', fact: 'fuel', is: ['coal-only'] },
    { clause: 'paper', document: 'letter', 'void-on': ['outage'] },
    {
      clause: 'class',
      'allowed-classes': ['F'],
      'accepted-as': [{ class: 'C', as: 'F', when: [premise] }],
    },
    { clause: 'often', sampling: { properties: ['SO3'], every: q('2000 t', 'lot-mass') } },
  ],
  {
    id: 'base',
    classes: ['F', 'C'],
    release: [{ clause: 'either', with: { age: readAge('7 d'), 'at-least': '80 %' } }],
    confirmed: { by: 'M. Okafor', date: readMoment('2026-01-05'), edition: '1' },
  },
)
const supplement = setOf(
  [
    { clause: 'late', change: 'relax', 'at-least': '70 %' },
    { clause: 'bands', change: 'remove' },
  ],
  {
    id: 'agency',
    extends: { set: 'base' },
    bases: { base },
  },
)
const derived = setOf([{ clause: 'so3', property: 'SO3', 'at-most': { F: '5.0 %' } }], {
  id: 'derived',
  classes: ['F'],
  'class-from': [{ class: 'F', when: [premise] }],
})

describe('readCriterion', () => {
  it.each([
    ['a base', base],
    ['a supplement with what it changed and took out', supplement],
    ['a set whose class follows from the material', derived],
  ])('gives back %s after a way through JSON', (_, set) => {
    expect(readCriterion(JSON.parse(JSON.stringify(set)))).toEqual(set)
  })
  it('refuses a text that is no age', () => {
    const file = JSON.parse(JSON.stringify(base).replaceAll('"28 d"', '"28 days"'))
    expect(() => readCriterion(file)).toThrow(RangeError)
  })
})
