import { describe, expect, it } from 'vitest'
import { computeEdition } from '../../../src/edition/compute.ts'
import { lotTodayView } from '../../../src/edition/views/lot-today.ts'
import { lotWorkingView } from '../../../src/edition/views/lot-working.ts'
import { laboratoryPageView } from '../../../src/edition/views/laboratory-page.ts'
import { shipmentYears, shipmentYearView } from '../../../src/edition/views/shipments.ts'
import { monthCellsOf } from '../../../src/edition/views/source-months-table.ts'
import { type SourcePageView, sourcePageView } from '../../../src/edition/views/source-page.ts'
import { resultsTable, shipmentsTable } from '../../../src/edition/writers/tables.ts'
import { loadRecords } from '../../../src/records/load.ts'
import { saidText } from '../../../src/words/said.ts'

const { records } = loadRecords('content')
const editionIn = (units: 'SI' | 'US') =>
  computeEdition({ ...records, site: { ...records.site, units } }, { program: 'test' })

/** Every text of a view, however deep; readings of a bench stay in the units that they were written in. */
function textsOf(view: unknown): string[] {
  if (typeof view === 'string') return [view]
  if (Array.isArray(view)) return view.flatMap(textsOf)
  if (typeof view !== 'object' || view === null) return []
  return Object.values(view).flatMap(textsOf)
}

/** A figure in MPa, Ω·m, kN or t that no US figure stands beside: "31.4 MPa", but not "1,598 short tons (1450 t)". */
const STORED = /(?<![(\d.,])[\d.,]+[ \u00a0](?:MPa|Ω·m|t)(?![\w·])/

const SOURCE = 'skarnmere-ash'
const LOT = `${SOURCE}/SA-2026-001`

function viewsIn(units: 'SI' | 'US'): Record<string, unknown> {
  const edition = editionIn(units)
  const lot = edition.lot(LOT)
  const [laboratory = ''] = edition.laboratories.keys()
  const [year] = shipmentYears(edition).filter(({ source }) => source === SOURCE)
  if (year === undefined) throw new RangeError('the demo needs shipments of its first source')
  const { working, controls, resistivities } = lotWorkingView(edition, lot)
  const { charts, batches } = laboratoryPageView(edition, laboratory)
  const { shipments: rows } = shipmentYearView(edition, year)
  return {
    working,
    controls,
    resistivities: resistivities.map(({ explained, summary }) => [summary, explained?.rows.slice(0, 1)]),
    laboratory: [...(charts?.panels ?? []), ...(charts?.more ?? [])].map(
      ({ description, tickLabels, table, model }) => [
        description,
        tickLabels,
        table,
        model.margin.map(({ text }) => text),
        model.readings.map(({ words }) => words),
      ],
    ),
    batches,
    source: sourceTexts(sourcePageView(edition, SOURCE)),
    today: lotTodayView(edition, lot).shipments?.summary,
    shipped: lotTodayView(edition, lot).shipments?.shown.map(({ mass }) => mass),
    shipments: rows.slice(0, 20).map(({ masses }) => masses),
    results: [...resultsTable(edition)].slice(0, 3).map((rowsOfLot) => rowsOfLot.split(',').slice(-1)),
    csv: [...shipmentsTable(edition)]
      .join('')
      .split('\n')
      .slice(1, 20)
      .map((row) => row.split(',').at(-1)),
  }
}

function sourceTexts({ strip, failed, months, lots, charts }: SourcePageView) {
  return {
    strip: strip.map(({ says, rest }) => [saidText(says), saidText(rest)]),
    // What differs from an issued certificate stands as that certificate prints it.
    failed: failed.lots.map(({ missed, bills }) => [missed, bills]),
    months: monthCellsOf(months, 'US'),
    lots,
    charts: charts?.panels.map(({ note, description, tickLabels, model }) => [
      note,
      description,
      tickLabels,
      model.margin.map(({ text }) => text),
    ]),
  }
}

const [si, us] = [viewsIn('SI'), viewsIn('US')]
const offending = (view: unknown) =>
  textsOf(view).filter((text) => STORED.test(text) && !/^\d[^/]*kN \(/.test(text))

describe('a site with US units', () => {
  it.each(Object.keys(us))('prints no figure in a stored unit: %s', (name) => {
    expect(offending(us[name])).toEqual([])
  })
  it('prints psi, kΩ·cm and short tons instead, with commas at the thousands', () => {
    const texts = textsOf(us).join('\n')
    expect(texts).toMatch(/\d,\d{3}\u00a0psi/)
    expect(texts).toContain('kΩ·cm')
    expect(texts).toMatch(/\d short\u00a0tons|\d\u00a0short\u00a0tons/)
    expect(texts).not.toContain('\u2009')
  })
  it('is told from one with SI units by the same search', () => {
    expect(offending(si.working).length + offending(si.controls).length).toBeGreaterThan(4)
    expect(offending(si.shipped).length).toBeGreaterThan(0)
  })
  it('multiplies stored values by 145.037738 psi in a MPa: a control of both systems', () => {
    const strengthsOf = (view: Record<string, unknown>) =>
      textsOf(view['batches'])
        .flatMap((text) => /^([\d,.]+)\u00a0(?:MPa|psi)/.exec(text)?.[1] ?? [])
        .map((text) => Number(text.replaceAll(',', '')))
    const [mpa, psi] = [strengthsOf(si), strengthsOf(us)]
    expect(psi).toHaveLength(mpa.length)
    // NIST SP 811 (2008), B.8; MPa are printed to 0.1, psi to 10.
    for (const [place, strength] of mpa.entries())
      expect(Math.abs((psi[place] ?? 0) - 145.037738 * strength)).toBeLessThanOrEqual(145.037738 * 0.05 + 5)
  })
})
