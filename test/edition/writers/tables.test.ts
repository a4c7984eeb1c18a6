import { describe, expect, it } from 'vitest'
import { lotsTable, resultsTable, shipmentsTable } from '../../../src/edition/writers/tables.ts'
import { revision, shipment, tinyEdition, tinyLot, tinySource, verdict } from '../tiny-edition.ts'

const edition = tinyEdition(
  [tinySource('ash')],
  [
    tinyLot('ash/1', {
      number: '=1+1',
      state: 'complete',
      revisions: [revision(2, '2026-04-02')],
      verdicts: [verdict('a', 'does-not-meet', { class: 'F', decidedBy: ['loi', 'fineness'] })],
      shipments: [{ ...shipment('ash/1', 'BL-1', '2026-03-12'), project: 'Bridge, north' }],
    }),
    tinyLot('ash/2'),
  ],
)

describe('lotsTable', () => {
  it('has a line for each verdict, none for a lot without, and no cell that a spreadsheet computes', () => {
    const [head, ...lines] = [...lotsTable(edition)].join('').split('\n')
    expect(head).toMatch(/^lot,number,source,class,/)
    expect(lines).toEqual([
      "ash/1,'=1+1,ash,,2026-03-01,2026-03-05,2026-03-05,1000,complete,2,2026-04-02,a,1,F,does-not-meet,loi fineness,Does not meet,,,1000 t",
      '',
    ])
  })

  it('gives a piece for each lot, so that no text of them all is ever made', () => {
    expect([...lotsTable(edition)]).toHaveLength(3)
  })
})

describe('resultsTable', () => {
  it('is its head alone without results', () => {
    expect([...resultsTable(edition)].join('')).toBe(
      'lot,role,property,condition,age,method,laboratory,sample,tested,censored,value,unit,written,n,valid,reasons,low,high,printed\n',
    )
  })
})

describe('shipmentsTable', () => {
  it('quotes a cell with a comma', () => {
    expect([...shipmentsTable(edition)].join('').split('\n')[1]).toBe(
      'BL-1,2026-03-12,ash/1,25,25 t,,"Bridge, north",,complete,Does not meet,25.0 t,,',
    )
  })
})
