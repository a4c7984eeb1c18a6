/** Views of the demonstration content, held against its records. */
import { describe, expect, it } from 'vitest'
import { computeEdition } from '../../../src/edition/compute.ts'
import { controlsOfLot } from '../../../src/edition/views/controls-of-lot.ts'
import { laboratoryLines } from '../../../src/edition/views/laboratories.ts'
import { laboratoryPageView } from '../../../src/edition/views/laboratory-page.ts'
import { explainedResistivities } from '../../../src/edition/views/resistivity-of-lot.ts'
import { routeGroups, routesOfLot } from '../../../src/edition/views/routes.ts'
import { lotAxisView, shipmentAxisView } from '../../../src/edition/views/source-axis-page.ts'
import type { SourceCharts } from '../../../src/edition/views/source-panels.ts'
import { sourcePageView, type SourcePageView } from '../../../src/edition/views/source-page.ts'
import { saidText } from '../../../src/words/said.ts'
import { plainSpaces } from '../../../src/words/sentences.ts'
import { loadRecords } from '../../../src/records/load.ts'

function lineOf({ strip }: Pick<SourcePageView, 'strip'>, label: string): string {
  return saidText(strip.find((line) => line.label === label)?.says ?? [])
}

const { records } = loadRecords('content')
const edition = computeEdition(records, { program: 'test' })
const LOT = edition.lot('skarnmere-ash/SA-2026-001')

describe('laboratoryLines', () => {
  it('counts the control batches that each laboratory has on record', () => {
    for (const { id, batches } of laboratoryLines(edition))
      expect(batches, id).toBe(
        [...records.controls.values()].filter(({ laboratory }) => laboratory === id).length,
      )
  })
})

describe('laboratoryPageView', () => {
  it('lists the newest sixty batches of all, newest first', () => {
    const { batches, batchCount } = laboratoryPageView(edition, 'north-quay')
    expect([batches.length, 60 < batchCount]).toEqual([60, true])
    const cast = batches.map((batch) => batch.cast.text)
    expect(cast).toEqual(cast.toSorted().reverse())
  })

  it('refuses a laboratory that is not on record', () => {
    expect(() => laboratoryPageView(edition, 'nowhere')).toThrow('needs a laboratory on record, got nowhere')
  })
})

describe('sourcePageView', () => {
  const view = sourcePageView(edition, 'skarnmere-ash')

  it('draws each series once, what governs first and its control after it', () => {
    const charts = [...(view.charts?.panels ?? []), ...(view.charts?.more ?? [])]
    expect(new Set(charts.map(({ id }) => id)).size).toBe(charts.length)
    // The control has a panel of its own.
    expect(charts.length).toBe(edition.source('skarnmere-ash').series.length + 1)
    expect(view.charts?.panels.slice(0, 2).map(({ title }) => title)).toEqual([
      'Strength activity index, 7\u00a0d',
      'Control: compressive strength, 7\u00a0d',
    ])
  })

  it('gives the results of each panel as a table, the latest first', () => {
    const series = edition
      .source('skarnmere-ash')
      .series.find(({ property, age }) => property === 'strength-activity-index' && age?.text === '7 d')
    const rows = view.charts?.panels[0]?.table.rows ?? []
    expect(rows.map(({ lot }) => lot)).toEqual(
      series?.points
        .slice(-40)
        .map(({ lot }) => lot)
        .reverse(),
    )
    const [value, state] = [2, 3]
    expect(rows.every(({ cells }) => (cells[value] === '') === cells[state]?.startsWith('awaited'))).toBe(
      true,
    )
  })

  it('has words for each point drawn, and the same points whether by date or by lot', () => {
    const byLot = lotAxisView(edition, 'skarnmere-ash').charts
    expect(byLot?.panels.map(({ id }) => id)).toEqual(view.charts?.panels.map(({ id }) => id))
    for (const [place, panel] of (byLot?.panels ?? []).entries()) {
      const words = panel.model.readings.map((reading) => reading.words)
      // By lot, a batch that no lot rests on has no place.
      const dated = (view.charts?.panels[place]?.model.readings ?? [])
        .map((reading) => reading.words)
        .filter((text) => !text.endsWith('no lot of this source rests on it'))
      expect(words.toSorted()).toEqual(dated.toSorted())
      expect(panel.table.rows.length).toBeGreaterThan(0)
    }
  })

  it('breaks the line by lot where it breaks by date: at each laboratory and each control cement without a bridge', () => {
    const runs = (charts: SourceCharts | null) =>
      charts?.panels.map(({ model }) => model.lines.match(/M/g)?.length)
    expect(runs(lotAxisView(edition, 'skarnmere-ash').charts)).toEqual(runs(view.charts))
    expect(runs(view.charts)?.[0]).toBeGreaterThan(1)
  })

  it('has a step for each lot shipped, and computes nothing over trucks', () => {
    const { charts } = shipmentAxisView(edition, 'skarnmere-ash')
    const shipped = edition.shipmentsOf('skarnmere-ash')
    const single = shipped.filter(({ lots: own }) => own.length === 1)
    const lots = new Set(single.map(({ lots: [lot] }) => lot))
    const [first] = charts?.panels ?? []
    expect(first?.model.readings.length).toBe(lots.size)
    expect(first?.model.known.match(/M/g)?.length).toBe(single.length - (first?.model.before.length ?? 0))
    expect(JSON.stringify(charts)).not.toMatch(/mean|band/)
  })

  it('counts a withdrawal in the year in which it was made, whenever the lot was sampled', () => {
    const tuff = sourcePageView(edition, 'tarn-hollow-tuff')
    const recent = [...edition.lots.values()].filter(
      ({ source, withdrawn }) =>
        source === 'tarn-hollow-tuff' && withdrawn !== undefined && edition.asOf.day - 365 < withdrawn.day,
    )
    expect(recent.length).toBe(1)
    expect(lineOf(tuff, 'Last 12 months')).toContain(
      '13 lots sampled, 0 failed, 1 withdrawn (sampled earlier),',
    )
  })

  it('names what was diverted apart from the lots, with its results', () => {
    const said = plainSpaces(lineOf(sourcePageView(edition, 'orrinmoss-ash'), 'Last 12 months'))
    // The ledger's 12 entries of 300 t; the least and the greatest of their results are 69.7 and 74.9 %.
    expect(said).toContain(
      '; besides these, 12 diversions of 3600 t, strength activity index, 7 d 69.7 to 74.9 %',
    )
  })

  it('measures the distance to a limit from where the outcome changes, before rounding', () => {
    // By numpy, from the unrounded 7 d indices of the last 12 months and 74.5 %: 1.285 standard deviations.
    const { strip } = sourcePageView(edition, 'orrinmoss-ash')
    const rest = saidText(strip.find(({ label }) => label === 'Closest to its limit')?.rest ?? [])
    expect(plainSpaces(rest)).toMatch(
      /^Their mean lies 1\.3 standard deviations inside 74\.5 %, where rounding changes the outcome, /,
    )
  })

  it('says of a source without a slope that none can be told, and of one with a slope that none is shown', () => {
    expect(lineOf(view, 'Trend')).toBe('cannot be said yet')
    expect(lineOf(sourcePageView(edition, 'hollenby-ash'), 'Trend')).toBe('none shown')
  })

  it('states ten lines in their order, the head being the first', () => {
    expect(view.strip.map(({ label }) => label)).toEqual([
      'Latest lot',
      'Last 12 months',
      'Closest to its limit',
      'Trend',
      'Uniformity',
      'Agency',
      'Late',
      'Shipped',
      'Open questions',
    ])
  })

  it('counts the lots of twelve months as their standings say', () => {
    const from = edition.asOf.day - 365
    const lots = edition.lotsOf('skarnmere-ash').filter(({ sampled }) => from < sampled.day)
    const failed = lots.filter(
      ({ state, outcomes }) => state !== 'withdrawn' && outcomes[0]?.outcome === 'does-not-meet',
    )
    const [, year] = view.strip
    expect(saidText(year?.says ?? [])).toContain(`${lots.length} lots sampled, ${failed.length} failed`)
  })

  it('gives each failed lot its clause with value, limit and margin', () => {
    const lot = view.failed.lots.find(({ number }) => number === 'SA-2025-014')
    expect(lot?.missed[0]).toBe('loss on ignition 6.4\u00a0% against ≤\u00a06.0\u00a0%, by 0.4\u00a0points')
  })

  it('lists the last lot first and leads to every year of lots and shipments', () => {
    expect(view.lots.rows[0]?.id).toBe(edition.lotsOf('skarnmere-ash').at(-1)?.id)
    expect(view.years).toEqual(['2026', '2025', '2024', '2023'])
    expect(view.shipmentYears[0]).toBe('2026')
  })
})

describe('controlsOfLot', () => {
  it('ends each drawing with the lot’s own control and names the laboratory', () => {
    const { charts, laboratories } = controlsOfLot(edition, LOT)
    expect(charts.every(({ label }) => label.endsWith('the last one this lot’s'))).toBe(true)
    expect(laboratories.map(({ id }) => id)).toEqual(['north-quay'])
  })
})

describe('explainedResistivities', () => {
  it('has three rows of test, control and factor, the first of them as read, and a field for each input', () => {
    const [first] = explainedResistivities(edition, LOT)
    expect(first?.explained?.rows.map(({ modelled }) => modelled)).toEqual([false, true, true])
    expect(first?.explained?.fields.map(({ name }) => name)).toEqual([
      'cementAlkalis',
      'materialAlkalis',
      'waterToCementitious',
      'cementReaction-0',
      'cementReaction-1',
      'materialReaction-0',
      'materialReaction-1',
      'bound-0',
      'bound-1',
    ])
  })
})

describe('routeGroups', () => {
  it('counts where each route has one limit, and says why it does not elsewhere', () => {
    const [modified, standard] = routeGroups(edition)
    expect(modified?.counted).toMatchObject({
      strength: 'at least 70\u00a0%',
      resistivity: 'at least 250\u00a0%',
    })
    expect(standard?.counted).toEqual({
      missing: 'No specification in force has a limit for the resistivity index here, so nothing is counted.',
    })
  })
})

describe('routesOfLot', () => {
  // 77.2 % and 483 % of the control, as in the test of pairedOfLot.
  it('says where the lot lies, and lists it among the rows of its picture', () => {
    const [route] = routesOfLot(edition, LOT)
    expect(route?.sentence.replaceAll('\u00a0', ' ')).toBe(
      'Strength 77.2 %, resistivity 483 % of the control: meets both limits (at least 70 %, at least 250 %).',
    )
    expect(route?.chart.rows.some(({ number }) => number === LOT.number)).toBe(true)
  })
})
