import { describe, expect, it } from 'vitest'
import { differentFields } from '../../../src/records/form/compare-records.ts'
import { placeWords } from '../../../src/records/form/place-words.ts'
import { writtenLot } from '../../../src/records/form/written-lot.ts'

const LOT = {
  quantity: '900 t',
  samples: [{ id: 'C', kind: 'composite', increments: 18 }],
  tests: [
    {
      sample: 'C',
      condition: 'c311',
      cast: '2024-07-03',
      strength: [{ age: '7 d', specimens: { a: '59.3 kN' } }],
    },
  ],
  shipments: [
    { bill: 'B-1', mass: '25.3 t' },
    { bill: 'B-2', mass: '26.0 t' },
  ],
}

describe('differentFields', () => {
  it('finds nothing between a record and itself', () => {
    expect(differentFields(LOT, structuredClone(LOT))).toEqual([])
  })

  it('finds a value with other digits, one that is missing and one that is more, with their places', () => {
    const own = structuredClone(LOT)
    const [test] = own.tests
    Object.assign(test?.strength[0]?.specimens ?? {}, { a: '59.30 kN', b: '60 kN' })
    Object.assign(own.samples[0] ?? {}, { increments: undefined })
    expect(differentFields(own, LOT)).toEqual([
      { path: ['samples', 0, 'increments'], own: null, published: '18' },
      { path: ['tests', 0, 'strength', 0, 'specimens', 'a'], own: '59.30 kN', published: '59.3 kN' },
      { path: ['tests', 0, 'strength', 0, 'specimens', 'b'], own: '60 kN', published: null },
    ])
  })

  it('holds a shipment against the one of its bill, wherever that stands', () => {
    const own = { ...LOT, shipments: [{ bill: 'B-0', mass: '24 t' }, ...LOT.shipments] }
    expect(differentFields(own, LOT).map(({ path, own: here }) => [path.join('/'), here])).toEqual([
      ['shipments/0/bill', 'B-0'],
      ['shipments/0/mass', '24 t'],
    ])
  })
})

describe('placeWords', () => {
  it('says a place as the form does', () => {
    expect(placeWords(['tests', 0, 'strength', 0, 'specimens', 'a'], LOT)).toBe(
      'Mortar C, c311, Strength 7 d, Specimens, A',
    )
    expect(placeWords(['quantity'], LOT)).toBe('Quantity')
    expect(placeWords(['shipments', 1, 'mass'], LOT)).toMatch(/^Shipment B-2, Mass$/)
  })
})

describe('writtenLot', () => {
  it('writes the keys of a record in the order of the schema', () => {
    const text = writtenLot({ samples: [{ kind: 'grab', id: 'G' }], quantity: '1 t', unknown: 'x' })
    expect(text).toBe('quantity: 1 t\nsamples:\n  - { id: G, kind: grab }\nunknown: x\n')
  })
})
