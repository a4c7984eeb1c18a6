/** What an auditor is to find in the demo’s newer sources: figures recomputed here from the committed records. */
import { resolve } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { computeEdition } from '../../src/edition/compute.ts'
import { forAudience } from '../../src/edition/publishing.ts'
import type { Edition } from '../../src/edition/shape/edition.ts'
import { standingOfShipment } from '../../src/edition/shape/possible-lots.ts'
import { affectedLots, affectedShipments } from '../../src/edition/views/affected-shipments.ts'
import { balanceView } from '../../src/edition/views/balance.ts'
import { shipmentYears, shipmentYearView } from '../../src/edition/views/shipments.ts'
import { loadRecords } from '../../src/records/load.ts'
import { allShipments } from '../edition/all-shipments.ts'

let edition: Edition
let internal: Edition

beforeAll(() => {
  const { records, diagnostics } = loadRecords(resolve(import.meta.dirname, '../../content'))
  expect(diagnostics).toEqual([])
  internal = computeEdition(records, { program: 'test' })
  edition = forAudience(internal, 'public')
})

function indices(source: string, age = '7 d'): number[] {
  return edition.lotsOf(source).flatMap(({ id }) =>
    edition
      .lot(id)
      .results.filter((result) => result.property === 'strength-activity-index' && result.age?.text === age)
      .map(({ value }) => value ?? Number.NaN),
  )
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length

describe('the control cement of Millrace Lane', () => {
  const SOURCES = ['orrinmoss-ash', 'tansgarth-ash', 'hollenby-ash']
  it('moves all three sources down at the first change, by about the 5 % that the control is stronger', () => {
    for (const source of SOURCES.slice(1)) {
      const values = indices(source)
      expect(values).toHaveLength(20)
      const step = mean(values.slice(7)) / mean(values.slice(0, 7)) - 1
      // Standard error of such a ratio, from 13 and 7 lots that scatter by 3.5 %: 1.6 %.
      expect(step).toBeGreaterThan(-0.05 - 2 * 0.016)
      expect(step).toBeLessThan(-0.05 + 2 * 0.016)
    }
    const orrinmoss = indices('orrinmoss-ash').slice(-20)
    expect(mean(orrinmoss.slice(7))).toBeLessThan(mean(orrinmoss.slice(0, 7)))
  })
  it('is one batch a day for all three, and bridged at the second change alone', () => {
    const controls = SOURCES.map((source) =>
      edition
        .lotsOf(source)
        .slice(-20)
        .map(({ id }) => edition.lot(id).record.tests?.[0]?.control),
    )
    expect(controls[1]).toEqual(controls[0])
    expect(controls[2]).toEqual(controls[0])
    expect(edition.laboratories.get('millrace-lane')?.['cement-bridges']).toMatchObject([
      { from: 'MC-2', to: 'MC-3', pairs: [{}, {}, {}, {}] },
    ])
  })
})

describe('Orrinmoss', () => {
  it('certifies nothing below 75 % at 7 d, and its ledger holds every result below', () => {
    expect(Math.min(...indices('orrinmoss-ash'))).toBeGreaterThanOrEqual(75)
    const diverted = edition.source('orrinmoss-ash').record.diverted ?? []
    expect(diverted.length).toBeGreaterThanOrEqual(10)
    for (const { results } of diverted)
      expect(JSON.stringify(results)).toMatch(/"written":"(6\d|7[0-4])\.\d %"/)
  })
})

describe('the limit of 75 % at 7 d', () => {
  const bunched = (source: string) =>
    internal.source(source).findings.filter(({ reason }) => reason.code === 'bunched-at-limit')

  it('has results bunched above it at a source without a ledger, and at Orrinmoss, whose ledger says why', () => {
    const diverted = [...bunched('skarnmere-reclaimed'), ...bunched('orrinmoss-ash')].map(({ reason }) =>
      reason.code === 'bunched-at-limit'
        ? [reason.params.age, reason.params.refused, reason.params.diverted]
        : [],
    )
    expect(diverted).toEqual([
      ['7 d', 0, 0],
      ['7 d', 0, internal.source('orrinmoss-ash').record.diverted?.length],
    ])
    expect(internal.source('skarnmere-reclaimed').record.diverted).toBeUndefined()
  })
  it('has none bunched above it at Hollenby and Tansgarth, which certify whatever they make', () => {
    expect([...bunched('hollenby-ash'), ...bunched('tansgarth-ash')]).toEqual([])
  })
})

describe('Vexholm', () => {
  it('has a lot-to-lot correlation of 0.40 and eight lots in a row on one side of the mean', () => {
    const values = indices('vexholm-ash')
    expect(values).toHaveLength(30)
    const from = values.map((value) => value - mean(values))
    const [products, squares] = [
      from.slice(1).reduce((sum, each, place) => sum + each * (from[place] ?? 0), 0),
      from.reduce((sum, each) => sum + each * each, 0),
    ]
    expect(products / squares).toBeCloseTo(0.4, 1)
    const sides = from.map((each) => (each < 0 ? '-' : '+')).join('')
    expect(sides).toMatch(/-{8}|\+{8}/)
  })
})

describe('the terminal of Tansgarth', () => {
  it('loads a truck that may be of a lot that does not meet, which is its verdict', () => {
    const truck = allShipments(edition).find(({ bill }) => bill === 'BL-96901')
    expect(truck?.lots).toEqual(['tansgarth-ash/TG-2025-012', 'tansgarth-ash/TG-2025-013'])
    expect(truck?.lots.map((id) => edition.lots.get(id)?.outcomes[0]?.outcome)).toEqual([
      'meets',
      'does-not-meet',
    ])
    expect(truck && standingOfShipment(edition, truck)?.text).toBe('Does not meet')
  })
})

describe('a lot that came not to meet after it was shipped', () => {
  it('names what had left, under a lot whose 28 d failed after 7 d had been missed', () => {
    const lot = edition.lot('lowmark-ash/LA-2026-002')
    const known = lot.results.find(
      ({ property, age }) => property === 'strength-activity-index' && age?.text === '28 d',
    )?.tested
    expect(lot.overTime.failed?.day).toBe(known?.day)
    const affected = affectedShipments(edition, lot)
    expect(affected?.sentence).toMatch(
      /^This lot has not met its criterion since \d+.\w+.\d{4}: \d+ shipments had left before\.$/,
    )
    expect(affected?.bills.map(({ text }) => text)).toEqual(lot.shipments.map(({ bill }) => bill))
  })
  it('is not one whose low 28 d follows a pass at 7 d that was enough', () => {
    expect(affectedShipments(edition, edition.lot('lowmark-ash/LA-2025-005'))).toBeNull()
    expect(affectedLots(edition, 'lowmark-ash').map(({ lot }) => lot.text)).toEqual(['LA-2026-002'])
  })
  it('heads the truck that may be of it too, which says so', () => {
    const affected = affectedShipments(edition, edition.lot('tansgarth-ash/TG-2025-013'))
    expect(affected?.bills.find(({ text }) => text === 'BL-96901')).toMatchObject({
      href: '/pozzolans/shipments/tansgarth-ash/2025/#bill-bl96901',
      note: expect.stringContaining('not resolvable to one lot'),
    })
  })
  it('tells of each truck what was not known when it left', () => {
    const year = shipmentYears(edition).find((own) => own.source === 'tansgarth-ash' && own.year === '2025')
    const line = year && shipmentYearView(edition, year).shipments.find(({ bill }) => bill === 'BL-96901')
    // Cast on 15 October and on 5 November 2025: on 20 November 28 d were over for the first alone.
    expect(line?.onShipping).toEqual(['TG-2025-013: Before the 28 d result was known'])
  })
})

describe('the balance of Orrinmoss', () => {
  it('closes in every month but one, which is 12 t short, and shows why each bin was diverted', () => {
    const balance = balanceView(edition, 'orrinmoss-ash')
    expect(balance?.note).toBeNull()
    const differences = balance?.rows.map(({ difference }) => difference?.replace(/\u00a0.*/, '') ?? null)
    expect(differences?.[0]).toBeNull()
    expect(differences?.filter((each) => each !== null && each !== '0')).toEqual(['+12'])
    for (const { results } of balance?.diverted ?? [])
      expect(results).toEqual([expect.stringMatching(/^Strength activity index, 7 d: (?:69|7[0-4])\.\d %$/)])
  })
})
