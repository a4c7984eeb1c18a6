/** A set with classes, approvals and a group, and a supplement that changes it, compiled from written clauses. */
import { readAge } from '../../../src/core/measure/age.ts'
import type { Criterion } from '../../../src/core/criteria/criterion.ts'
import { setOf } from '../../core/judging/fixture.ts'

export const base: Criterion = setOf(
  [
    {
      clause: 'loi',
      property: 'loss-on-ignition',
      'at-most': '6.0 %',
      approval: { 'at-most': '12.0 %', classes: ['F'], evidence: 'performance records' },
      basis: { read: 'S1' },
    },
    { clause: 'sum', property: 'oxide-sum', 'at-least': { F: '70.0 %' }, 'set-by': { user: 'the owner' } },
    { clause: 'dense', property: 'density', 'at-least': '1.95 g/cm3', classes: ['C'], optional: 'yes' },
    {
      clause: 'activity',
      'any-of': [
        {
          clause: 'sai-7',
          property: 'strength-activity-index',
          condition: 'c311',
          age: readAge('7 d'),
          'at-least': '75 %',
        },
        {
          clause: 'sai-28',
          title: 'Index at 28 d',
          property: 'strength-activity-index',
          condition: 'c311',
          age: readAge('28 d'),
          'at-least': '75 %',
          information: 'yes',
        },
      ],
    },
  ],
  { id: 'base', designation: 'VALE 1', classes: ['F', 'C'], sources: { S1: 'abstract with tables' } },
)

/** Relaxes the loss on ignition of the base. */
export const supplement: Criterion = setOf([{ clause: 'loi', change: 'relax', 'at-most': '8.0 %' }], {
  id: 'agency',
  title: 'Agency rules',
  extends: { set: 'base' },
  bases: { base },
})

export const conditionTitle = (id: string) => (id === 'c311' ? '20 %, 23 °C' : id)
