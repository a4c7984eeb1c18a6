import { expect, it } from 'vitest'
import { reportedValue } from '../../../src/core/judging/reported-value.ts'

it('reportedValue gives the value unrounded, with the unit and decimals of its property', () => {
  expect(reportedValue({ property: 'density' }, { value: 2.4567 }, 'key')).toEqual({
    value: 2.4567,
    compared: 2.4567,
    unit: 'g/cm3',
    decimals: 2,
    result: 'key',
  })
  expect(reportedValue({ property: 'residue-45um' }, { value: 20 }, null)).toMatchObject({
    unit: '%',
    decimals: 1,
    result: null,
  })
})
