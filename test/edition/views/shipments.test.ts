import { describe, expect, it } from 'vitest'
import { readMoment } from '../../../src/core/measure/moment.ts'
import {
  shipmentStandings,
  shipmentsView,
  shipmentYears,
  shipmentYearView,
} from '../../../src/edition/views/shipments.ts'
import type { Source } from '../../../src/records/schema/loaded-records.ts'
import { plainSpaces } from '../../../src/words/sentences.ts'
import { shipment, tinyEdition, tinyLot, tinySource, verdict } from '../tiny-edition.ts'

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

describe('shipmentStandings', () => {
  it('names a withdrawn lot among the possible ones, though another is worse', () => {
    const [withdrawn, failing] = [
      tinyLot('ash/1', { state: 'withdrawn', verdicts: [verdict('plain', 'meets')] }),
      tinyLot('ash/2', { state: 'complete', verdicts: [verdict('plain', 'does-not-meet')] }),
    ]
    const shared = { ...shipment('ash/1', 'BL-9', '2026-01-03'), lots: ['ash/1', 'ash/2'] }
    const standing = shipmentStandings(tinyEdition([tinySource('ash')], [withdrawn, failing]))(shared)
    expect(standing.standing?.text).toBe('Does not meet')
    expect(standing.notOne).toBe(
      'not resolvable to one lot; the worst of 2 possible lots is shown; 1 is withdrawn',
    )
  })

  it('says that the source was suspended on the day, and nothing once it was reinstated', () => {
    const listing = [
      { date: readMoment('2025-01-01'), by: 'Vale Roads', action: 'listed' as const },
      { date: readMoment('2025-07-07'), by: 'Vale Roads', action: 'suspended' as const },
      { date: readMoment('2025-08-05'), by: 'Vale Roads', action: 'reinstated' as const },
    ]
    const record = { name: 'Ash', producer: 'works', kind: 'coal-fly-ash', listing } as unknown as Source
    const lots = [tinyLot('ash/1', { state: 'complete' })]
    const on = shipmentStandings(tinyEdition([tinySource('ash', { record })], lots))
    // The fixture's lot has no certificate on any day.
    const said = (date: string) => {
      const [lot, ...source] = on(shipment('ash/1', 'BL-1', date)).onShipping
      expect(lot).toBe('Without a certificate')
      return source.map(plainSpaces)
    }
    expect(said('2025-07-06')).toEqual([])
    expect(said('2025-07-07')).toEqual(['While the source was suspended by Vale Roads, since 7 July 2025'])
    expect(said('2025-08-04')).toEqual(['While the source was suspended by Vale Roads, since 7 July 2025'])
    expect(said('2025-08-05')).toEqual([])
    // Nothing says that a source has to be listed before it sells.
    expect(said('2024-12-31')).toEqual([])
  })
})

describe('shipmentYearView', () => {
  it('lists the year newest first, with how the lot stands and the columns that are filled', () => {
    const [second, first] = shipmentYears(edition)
    expect([first?.year, second?.year]).toEqual(['2025', '2026'])
    if (second === undefined) throw new RangeError('the fixture needs two years')
    const { name, shipments, has } = shipmentYearView(edition, second)
    expect(name).toBe('Ash of ash')
    expect(shipments.map(({ bill, standing }) => [bill, standing?.text])).toEqual([
      ['BL-3', 'Withdrawn; was: not judged'],
      ['BL-2', 'Withdrawn; was: not judged'],
    ])
    expect(has).toEqual({
      onShipping: true,
      place: false,
      consignee: false,
      project: true,
      purchaseOrder: false,
      seal: false,
    })
  })
})
