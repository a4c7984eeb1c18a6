import { describe, expect, it } from 'vitest'
import { shipmentTotals } from '../../../src/edition/views/shipment-totals.ts'
import { shipment, tinyEdition, tinyLot, tinySource } from '../tiny-edition.ts'

const lot = (id: string, silo: string) => {
  const tiny = tinyLot(id)
  return { ...tiny, record: { ...tiny.record, silo } }
}
const edition = tinyEdition([tinySource('ash')], [lot('ash/1', 'A'), lot('ash/2', 'B')])
const shipments = [
  { ...shipment('ash/1', 'BL-1', '2026-03-12', 24.5), project: 'Bridge' },
  { ...shipment('ash/2', 'BL-2', '2026-03-30', 25) },
  { ...shipment('ash/1', 'BL-3', '2026-04-01', 20), lots: ['ash/1', 'ash/2'] },
]

describe('shipmentTotals', () => {
  it('counts each shipment once by month, silo, project and lot', () => {
    const lines = shipmentTotals(edition, shipments).map(({ by, lines: own }) => [
      by,
      ...own.map(({ name, shipments: count, mass }) => `${name}: ${count}, ${mass}`),
    ])
    expect(lines).toEqual([
      ['Month', '2026-03: 2, 49.5\u00a0t', '2026-04: 1, 20.0\u00a0t'],
      [
        'Silo or terminal',
        'A: 1, 24.5\u00a0t',
        'B: 1, 25.0\u00a0t',
        'not resolvable to one lot: 1, 20.0\u00a0t',
      ],
      ['Project', 'Bridge: 1, 24.5\u00a0t'],
      ['Lot', '1: 1, 24.5\u00a0t', '2: 1, 25.0\u00a0t', 'not resolvable to one lot: 1, 20.0\u00a0t'],
    ])
  })
  it('leaves projects out where none is told', () => {
    const withheld = shipments.map(({ project: _, ...rest }) => rest)
    expect(shipmentTotals(edition, withheld).map(({ by }) => by)).not.toContain('Project')
  })
})
