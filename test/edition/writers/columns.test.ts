import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import { lotColumns, shipmentColumns } from '../../../src/edition/writers/columns.ts'
import {
  plannedTest,
  revision,
  shipment,
  tinyEdition,
  tinyLot,
  tinySource,
  verdict,
} from '../tiny-edition.ts'

const points = [
  { lot: 'ash/1', at: readMoment('2026-03-05'), value: 2.3456789, status: 'valid' as const },
  { lot: 'ash/2', at: readMoment('2026-03-06'), value: 2.4, status: 'not-valid' as const },
]
const AWAITED = [
  '28 d strength activity index, modified (hot) overdue since 4 April 2026',
  '28 d strength activity index, modified (warm) due 20 April 2026',
].join('; ')
const edition = tinyEdition(
  [
    tinySource('ash', { series: [{ property: 'density', unit: 'g/cm3', decimals: 2, points }] }),
    tinySource('tuff'),
  ],
  [
    tinyLot('ash/1', {
      formerly: ['ash/A'],
      state: 'complete',
      planned: [plannedTest('2026-03-28', '2026-04-04'), { ...plannedTest('2026-04-20'), condition: 'warm' }],
      verdicts: [verdict('b', 'meets'), verdict('a', 'does-not-meet')],
      revisions: [revision(0, '2026-03-10'), revision(1, '2026-04-02')],
      shipments: [shipment('ash/1', 'BL-1', '2026-03-12', 24.83000001)],
    }),
    tinyLot('ash/2', { sampled: readMoment('2026-03-06T14:30'), class: 'F' }),
    tinyLot('tuff/1', { state: 'withdrawn', verdicts: [verdict('b', 'pending')] }),
  ],
)

describe('lotColumns', () => {
  it('has one place a lot in every column; a lot that a set does not judge has no outcome under it', () => {
    expect(lotColumns(edition)).toMatchObject({
      criteria: ['a', 'b'],
      sources: ['ash', 'tuff'],
      columns: {
        lot: ['ash/1', 'ash/2', 'tuff/1'],
        source: [0, 0, 1],
        sampled: ['2026-03-05', '2026-03-06', '2026-03-05'],
        issued: ['2026-04-02', null, null],
        class: [null, 'F', null],
        // Places in the order of the design: meets 0, does-not-meet 2, pending 4.
        outcome: { a: [2, -1, -1], b: [0, -1, 4] },
        // Six digits of a valid value; one that is not valid is left out.
        state: ['complete', 'draft', 'withdrawn'],
        standing: { a: [0, 1, 2], b: [3, 1, 4] },
        governingStanding: [3, 1, 4],
        due: ['2026-04-20', null, null],
        overdueSince: ['2026-04-04', null, null],
        values: { 'density||': [2.34568, null, null] },
      },
      formerly: { 'ash/A': 0 },
      // Words that several lots share stand once.
      standings: [
        { mark: 'does-not-meet', text: `Does not meet; ${AWAITED}` },
        { mark: 'draft', text: 'Draft, never issued; not judged' },
        { mark: 'withdrawn', text: 'Withdrawn; was: not judged' },
        { mark: 'meets-so-far', text: `Meets so far; ${AWAITED}` },
        { mark: 'withdrawn', text: 'Withdrawn; was: pending' },
      ],
    })
  })
})

describe('shipmentColumns', () => {
  it('leads from a bill to the lot’s place, and nowhere for a lot that is not shown', () => {
    const further = { ash: [shipment('ash/9', 'BL-9', '2026-03-14')] }
    const shipmentsOf = (source: string) => [
      ...edition.shipmentsOf(source),
      ...(further[source as 'ash'] ?? []),
    ]
    expect(shipmentColumns({ ...edition, shipmentsOf })).toMatchObject({
      columns: { bill: ['BL-1', 'BL-9'], mass: [24.83, 25], lot: [0, -1] },
    })
  })
})
