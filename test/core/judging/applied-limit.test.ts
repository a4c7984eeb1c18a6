import { expect, it } from 'vitest'
import { appliedLimit } from '../../../src/core/judging/applied-limit.ts'
import { quantityOf } from './fixture.ts'

it('appliedLimit gives the numbers in the stored unit, and the limit’s own digits and layer', () => {
  const [low, high] = [quantityOf('2100 kg/m3', 'density'), quantityOf('2.40 g/cm3', 'density')]
  expect(appliedLimit({ operator: 'between', quantities: [low, high] }, { layer: 'base' })).toEqual({
    operator: 'between',
    values: [2.1, 2.4],
    unit: 'g/cm3',
    written: ['2100 kg/m3', '2.40 g/cm3'],
    layer: 'base',
  })
})
