/** Shipments of several lots: the text that a source writes goes in; pages, tables and look-up come out. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { computeEdition } from '../../src/edition/compute.ts'
import { forAudience } from '../../src/edition/publishing.ts'
import type { Edition } from '../../src/edition/shape/edition.ts'
import { lotsBySource } from '../../src/edition/shape/listing.ts'
import { lotTodayView } from '../../src/edition/views/lot-today.ts'
import { shipmentYears, shipmentYearView } from '../../src/edition/views/shipments.ts'
import { lotColumns, shipmentColumns } from '../../src/edition/writers/columns.ts'
import { shipmentsTable } from '../../src/edition/writers/tables.ts'
import { loadRecords } from '../../src/records/load.ts'
import { readLotColumns, readShipmentColumns } from '../../src/scripts/columns.ts'
import { matches } from '../../src/scripts/match.ts'
import { allData } from '../edition/all-data.ts'
import { allShipments } from '../edition/all-shipments.ts'

const BASE = resolve(import.meta.dirname, '../diagnostics/base')
const SHIPMENTS = `
shipments:
  - { bill: BL-500, date: 2026-03-25, mass: 25.2 t, lots: [T-1, T-9], from: North terminal, to: Secret Mix, project: Secret Dam, seal: S-77 }
  - { bill: BL-501, date: 2026-03-26, mass: 20 t, lots: [T-1] }
  - { bill: BL-1, date: 2026-03-27, mass: 21 t, lots: [T-1, T-9] }
`
let folder: string
let whole: Edition

beforeAll(() => {
  folder = join(mkdtempSync(join(tmpdir(), 'several-lots-')), 'content')
  cpSync(BASE, folder, { recursive: true })
  const source = join(folder, 'sources/tuff.yaml')
  writeFileSync(source, `${readFileSync(source, 'utf8')}${SHIPMENTS}`)
  const lot = join(folder, 'lots/tuff/T-9.yaml')
  writeFileSync(lot, readFileSync(lot, 'utf8').replace(/^tests:[\s\S]*?(?=^\S|(?![\s\S]))/m, ''))
  const { records, diagnostics } = loadRecords(folder)
  expect(diagnostics).toEqual([])
  whole = computeEdition(records, { program: 'test' })
})
afterAll(() => {
  rmSync(join(folder, '..'), { recursive: true })
})

/** The public edition, drafts shown or left out. */
function shown(drafts: 'yes' | 'no', hidden: readonly string[] = []): Edition {
  const lots = new Map(
    [...whole.lots].map(([id, lot]) => [
      id,
      { ...lot, state: hidden.includes(id) ? ('draft' as const) : ('complete' as const) },
    ]),
  )
  const site = { ...whole.site, drafts }
  // Each of these editions is another one: nothing is kept of the sources of the one before.
  const ofSource: Edition['ofSource'] = (_source, _name, make) => make()
  return forAudience({ ...whole, lots, lotsOf: lotsBySource(lots), ofSource, site }, 'public')
}

const outcome = (id: string) => whole.lots.get(id)?.outcomes[0]?.outcome
const line = (edition: Edition, bill: string) => {
  const [year] = shipmentYears(edition)
  return year && shipmentYearView(edition, year).shipments.find((shipment) => shipment.bill === bill)
}

describe('a shipment of several lots', () => {
  it('takes the worst of their verdicts', () => {
    // T-1 has 78.57 % of the control's strength at 7 d and meets 60 %; T-9 has no test at all.
    expect([outcome('tuff/T-1'), outcome('tuff/T-9')]).toEqual(['meets', 'not-reported'])
    expect(line(shown('no'), 'BL-500')).toMatchObject({
      lots: ['tuff/T-1', 'tuff/T-9'],
      standing: { text: 'Required results not reported' },
      notOne: 'not resolvable to one lot; the worst of 2 possible lots is shown',
      place: 'North terminal',
    })
  })
  it('is of its lot where the source names only one', () => {
    expect(line(shown('no'), 'BL-501')).toMatchObject({
      lots: ['tuff/T-1'],
      standing: { text: 'Meets' },
      notOne: null,
    })
  })
  it('names no lot that is not published, gives no verdict then, and is left out where none is published', () => {
    const one = shown('no', ['tuff/T-9'])
    expect(line(one, 'BL-500')).toMatchObject({
      lots: ['tuff/T-1'],
      standing: undefined,
      notOne: 'not resolvable to one lot; a possible lot is not shown here, so no verdict is given',
    })
    expect(allData(one)).not.toContain('T-9')
    expect(line(shown('no', ['tuff/T-1', 'tuff/T-9']), 'BL-500')).toBeUndefined()
  })
  it('stands under each possible lot, and its mass beside what was surely drawn from it', () => {
    const today = lotTodayView(whole, whole.lot('tuff/T-1')).shipments
    // Own bill 24.8 t and 20 t that only this lot can be of; 25.2 t and 21 t that may be of the other one.
    expect(today?.summary).toMatch(
      /^2 shipments, 44.8.t \(.*\) of 1450.t \(.*\), and up to 46.2.t more, from shipments not resolvable to one lot\.$/,
    )
    expect(lotTodayView(whole, whole.lot('tuff/T-9')).shipments?.shown.map(({ bill }) => bill)).toContain(
      'BL-500',
    )
  })
  it('counts once in the list of all shipments', () => {
    expect(allShipments(whole).filter(({ bill }) => bill === 'BL-500')).toHaveLength(1)
  })
  it('is found by its bill with every possible lot', () => {
    const edition = shown('no')
    const [lots, shipments] = [lotColumns(edition), shipmentColumns(edition)].map(
      (columns) => JSON.parse(JSON.stringify(columns)) as never,
    )
    expect(
      matches('bl500', readLotColumns(lots as never), readShipmentColumns(shipments as never)),
    ).toMatchObject([{ lots: ['tuff/T-1', 'tuff/T-9'], standing: { text: 'Required results not reported' } }])
  })
  it('stands in the table with its possible lots', () => {
    expect([...shipmentsTable(shown('no'))].join('')).toMatch(
      /^BL-500,2026-03-25,,25.2,25.2 t,,,,,Required results not reported,25.2 t,tuff\/T-1 tuff\/T-9,North terminal,"T-1: Without a certificate; T-9: Without a certificate",$/m,
    )
  })
  it('gives no consignee, project or seal away that site.yaml does not publish', () => {
    const text = allData(shown('yes'))
    expect(text).toContain('BL-500')
    for (const secret of ['Secret Mix', 'Secret Dam', 'S-77']) expect(text).not.toContain(secret)
    const { record } = shown('yes').source('tuff')
    expect(JSON.stringify(record)).not.toMatch(/Secret|S-77/)
  })
  it('is asked about where its bill stands in a lot’s record too', () => {
    const codes = [whole.source('tuff'), whole.lot('tuff/T-1')].map(({ findings }) =>
      findings.filter(({ reason }) => reason.code === 'bill-twice').map(({ reason }) => reason.params),
    )
    expect(codes).toEqual([
      [{ lot: 'tuff', bill: 'BL-1', others: ['tuff/T-1'] }],
      [{ lot: 'tuff/T-1', bill: 'BL-1', others: ['tuff'] }],
    ])
  })
})
