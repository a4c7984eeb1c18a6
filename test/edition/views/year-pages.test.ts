/** What the pages of one source and year are drawn from: another day and another year change none of the past. */
import { describe, expect, it } from 'vitest'
import type { Criterion } from '../../../src/core/criteria/criterion.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { computeEdition } from '../../../src/edition/compute.ts'
import { forAudience } from '../../../src/edition/publishing.ts'
import type { PageFromView } from '../../../src/edition/shape/drawing.ts'
import type { Edition } from '../../../src/edition/shape/edition.ts'
import {
  findingYearPages,
  registerYearPages,
  shipmentYearPages,
  sourceUnderPages,
} from '../../../src/edition/views/year-pages.ts'
import { loadRecords } from '../../../src/records/load.ts'
import { setOf } from '../../core/judging/fixture.ts'
import { finding, plannedTest, shipment, tinyEdition, tinyLot, tinySource, verdict } from '../tiny-edition.ts'
import { lostInJson } from './lost-in-json.ts'

const PAGES = {
  register: registerYearPages,
  findings: findingYearPages,
  shipments: shipmentYearPages,
  sources: sourceUnderPages,
}

function pagesOf(edition: Edition): Map<string, PageFromView<unknown>['view']> {
  return new Map(
    Object.entries(PAGES).flatMap(([name, pages]) =>
      pages(() => edition).map((page: PageFromView<unknown>) => [
        [name, ...Object.values(page.params)].join('/'),
        page.view,
      ]),
    ),
  )
}

const textsOf = (edition: Edition) =>
  new Map([...pagesOf(edition)].map(([path, view]) => [path, JSON.stringify(view())]))

function changed(before: Edition, now: Edition): string[] {
  const texts = textsOf(before)
  return [...textsOf(now)].filter(([path, text]) => texts.get(path) !== text).map(([path]) => path)
}

describe('pages of years, of the demonstration', () => {
  const { records } = loadRecords('content')
  const on = (asOf: string) =>
    forAudience(computeEdition(records, { program: 'test', asOf: readMoment(asOf) }), 'public')
  const edition = on('2026-04-10')

  it('are drawn from nothing that JSON would lose', () => {
    const pages = [...pagesOf(edition)]
    expect(pages.flatMap(([path, view]) => lostInJson(view(), path))).toEqual([])
    expect(new Set(pages.map(([path]) => path.split('/')[0]))).toEqual(
      new Set(['register', 'shipments', 'sources']),
    )
  })

  it('say the same a day later of years in which nothing is awaited', () => {
    const awaiting = new Set(
      [...edition.lots.values()].flatMap(({ source, sampled, awaited }) =>
        awaited.length === 0 ? [] : [`register/${source}/${sampled.text.slice(0, 4)}`],
      ),
    )
    const now = changed(edition, on('2026-04-11')).filter((path) => path.startsWith('register/'))
    expect(new Set(now)).toEqual(awaiting)
    expect(awaiting.size).toBeLessThan(registerYearPages(() => edition).length / 2)
  })
})

const plain: Criterion = setOf(
  [{ clause: 'loi', title: 'loss on ignition', property: 'loss-on-ignition', 'at-most': '6.0 %' }],
  { id: 'plain', title: 'Plain set', edition: '2' },
)

/** A history too long for one page, with a finding and a shipment in each year. */
function longEdition(asOf: string, more: Parameters<typeof tinyEdition>[1] = []): Edition {
  const lots = Array.from({ length: 501 }, (_, place) => {
    const [id, year] = [`ash/${place}`, place < 100 ? '2025' : '2026']
    return tinyLot(id, {
      sampled: readMoment(`${year}-03-05`),
      verdicts: [verdict('plain', 'not-reported')],
      findings: [finding(id)],
      shipments: [shipment(id, `BL-${place}`, `${year}-03-12`)],
      ...(place === 500 ? { planned: [plannedTest('2026-04-20')] } : {}),
    })
  })
  return tinyEdition([tinySource('ash', { criteria: ['plain'] })], [...lots, ...more], {
    asOf: readMoment(asOf),
    criteria: new Map([['plain', plain]]),
    site: { ...tinyEdition([], []).site, publish: ['findings'] },
  })
}

const OF_2026 = ['register/ash/2026', 'findings/ash/2026', 'shipments/ash/2026', 'sources/ash/plain/2026']

describe('pages of years, of a long history', () => {
  it('state the day of the records in the year in which something is awaited, and on the page of all years', () => {
    expect(changed(longEdition('2026-04-10'), longEdition('2026-04-11')).sort()).toEqual(
      [...OF_2026, 'sources/ash/plain'].sort(),
    )
  })

  it('change with a further lot in its own year alone, and on the page of all years', () => {
    const further = tinyLot('ash/501', {
      sampled: readMoment('2026-04-01'),
      findings: [finding('ash/501')],
      shipments: [shipment('ash/501', 'BL-501', '2026-04-02')],
    })
    expect(changed(longEdition('2026-04-10'), longEdition('2026-04-10', [further])).sort()).toEqual(
      [...OF_2026, 'sources/ash/plain'].sort(),
    )
  })
})
