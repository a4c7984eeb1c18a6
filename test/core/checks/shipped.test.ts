import { expect, it } from 'vitest'
import { billIndex } from '../../../src/core/checks/shipped.ts'

it('billIndex takes a number in full width for the same number, and another case for another', () => {
  const lots = ['BL-1', '\uff22\uff2c\uff0d\uff11', 'bl-1'].map((bill, index) => ({
    id: `tuff/T-${index}`,
    producer: 'hill',
    shipments: [{ bill, massT: 24.8, massWritten: '24.8 t' }],
  }))
  expect([...billIndex(lots).values()]).toEqual([['tuff/T-0', 'tuff/T-1'], ['tuff/T-2']])
})
