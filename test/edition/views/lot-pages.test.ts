/** What the pages of lots are drawn from, of the demonstration content. */
import { describe, expect, it } from 'vitest'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { computeEdition } from '../../../src/edition/compute.ts'
import { forAudience } from '../../../src/edition/publishing.ts'
import type { PageFromView } from '../../../src/edition/shape/drawing.ts'
import type { Edition } from '../../../src/edition/shape/edition.ts'
import { tracing } from '../../../src/edition/shape/trace.ts'
import { tracedEdition } from '../../../src/edition/shape/traced-edition.ts'
import { certificatePages, revisionPages, workingPages } from '../../../src/edition/views/lot-pages.ts'
import { loadRecords } from '../../../src/records/load.ts'
import { lostInJson } from './lost-in-json.ts'

const { records } = loadRecords('content')

function editionOf(asOf: string): Edition {
  const edition = computeEdition(records, { program: 'test', asOf: readMoment(asOf) })
  return forAudience(edition, 'public')
}

const edition = editionOf('2026-04-10')

const ofLot = ({ params: { source, lot } }: PageFromView<unknown>) => `lots/${source}/${lot}/`

function pagesOf(of: Edition): (PageFromView<unknown> & { readonly path: string })[] {
  return [
    ...certificatePages(() => of).map((page) => ({ ...page, path: ofLot(page) })),
    ...revisionPages(() => of).map((page) => ({
      ...page,
      path: `${ofLot(page)}revision/${page.params['number']}/`,
    })),
    ...workingPages(() => of).map((page) => ({ ...page, path: `${ofLot(page)}working/` })),
  ]
}

describe('certificatePages, revisionPages and workingPages', () => {
  it('hand over nothing that JSON would lose, so that a digest of it knows everything', () => {
    const pages = pagesOf(edition)
    expect(pages.flatMap(({ path, view }) => lostInJson(view(), path))).toEqual([])
    expect(pages.length).toBeGreaterThan(2 * edition.lots.size)
  })

  it('say the same a day later of each lot of which nothing is awaited', () => {
    const later = editionOf('2026-04-11')
    const before = new Map(pagesOf(edition).map(({ path, view }) => [path, JSON.stringify(view())]))
    const changed = pagesOf(later).filter(({ path, view }) => before.get(path) !== JSON.stringify(view()))
    const awaiting = [...edition.lots.values()].filter(({ awaited }) => awaited.length > 0)
    const allowed = awaiting.flatMap(({ id }) => [`lots/${id}/`, `lots/${id}/working/`])
    expect(changed.map(({ path }) => path).filter((path) => !allowed.includes(path))).toEqual([])
    expect(changed.length).toBeGreaterThan(0)
    expect(allowed.length).toBeLessThan(before.size / 4)
  })

  it('read nothing that changes with every lot of their source', () => {
    const traced = tracedEdition(edition)
    const views = pagesOf(traced)
    const read = new Set(views.flatMap(({ view }) => [...tracing(view).trace]))
    expect(
      [...read].filter((name) => /^(?:source |sources(?:\/|$)|shipments|lotsOf|lots#?$)/.test(name)),
    ).toEqual([])
    expect(read).toContain('asked named-source quellan-ash')
  })

  it('state the day of the records where something is awaited, and nowhere else', () => {
    for (const page of certificatePages(() => edition)) {
      const { id, frame, shown } = page.view()
      const awaits = (edition.lots.get(id)?.awaited.length ?? 0) > 0
      const days = [frame.asOf?.text, shown?.today.asOf?.text]
      expect(days, ofLot(page)).toEqual(awaits ? ['2026-04-10', '2026-04-10'] : [undefined, undefined])
    }
  })
})
