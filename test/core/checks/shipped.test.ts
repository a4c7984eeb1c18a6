import { expect, it } from 'vitest'
import { billIndex, shippedFindings } from '../../../src/core/checks/shipped.ts'

function lotWith(name: string, ...bills: string[]) {
  return {
    id: `tuff/${name}`,
    producer: 'hill',
    quantityTonnes: 900,
    shipments: bills.map((bill) => ({ bill, massT: 24.8, massWritten: '24.8 t' })),
  }
}

it('billIndex takes a number for the same in full width, in another case, with blanks or hyphens, and holds none that stands once', () => {
  const bills = [
    'BL-96034',
    '\uff22\uff2c\uff0d\uff19\uff16\uff10\uff13\uff14',
    'bl 96034',
    'BL96034',
    'BL-96035',
  ]
  const index = billIndex(bills.map((bill, place) => lotWith(`T-${place}`, bill)))
  expect([...index.values()]).toEqual([['tuff/T-0', 'tuff/T-1', 'tuff/T-2', 'tuff/T-3']])
})

it('shippedFindings reports a bill that one lot lists in two ways of writing once', () => {
  const lot = lotWith('T-1', 'BL-96034', 'bl 96034')
  const twice = shippedFindings(lot, billIndex([lot])).filter(({ reason }) => reason.code === 'bill-twice')
  expect(twice.map(({ reason }) => reason.params)).toEqual([
    { lot: 'tuff/T-1', bill: 'BL-96034', others: ['tuff/T-1'] },
  ])
})
