import { describe, expect, it } from 'vitest'
import { shipmentsView, shipmentYears, shipmentYearView } from '../../../src/edition/views/shipments.ts'
import { shipment, tinyEdition, tinyLot, tinySource } from '../tiny-edition.ts'

const edition = tinyEdition(
  [tinySource('ash'), tinySource('tuff')],
  [
    tinyLot('ash/1', {
      state: 'withdrawn',
      shipments: [
        shipment('ash/1', 'BL-1', '2025-12-31'),
        shipment('ash/1', 'BL-2', '2026-01-02'),
        { ...shipment('ash/1', 'BL-3', '2026-01-03'), project: 'Bridge' },
      ],
    }),
  ],
)

describe('shipmentsView', () => {
  it('counts shipments by source and year', () => {
    expect(shipmentsView(edition)).toEqual({
      years: ['2026', '2025'],
      sources: [
        { id: 'ash', name: 'Ash of ash', counts: [2, 1] },
        { id: 'tuff', name: 'Ash of tuff', counts: [0, 0] },
      ],
    })
  })

  it('has no year without a shipment', () => {
    expect(shipmentsView(tinyEdition([tinySource('ash')], [])).years).toEqual([])
  })
})

describe('shipmentYearView', () => {
  it('lists the year newest first, with how the lot stands and the columns that are filled', () => {
    const [first, second] = shipmentYears(edition)
    expect([first?.year, second?.year]).toEqual(['2025', '2026'])
    if (second === undefined) throw new RangeError('the fixture needs two years')
    const { name, shipments, has } = shipmentYearView(edition, second)
    expect(name).toBe('Ash of ash')
    expect(shipments.map(({ bill, standing }) => [bill, standing?.text])).toEqual([
      ['BL-3', 'Withdrawn; was: not judged'],
      ['BL-2', 'Withdrawn; was: not judged'],
    ])
    expect(has).toEqual({ onShipping: true, place: false, consignee: false, project: true, seal: false })
  })
})
