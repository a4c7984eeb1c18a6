import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { cpSync, mkdirSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { scenarioFiles } from '../../../src/demo/scenario-files.ts'
import { computeEdition } from '../../../src/edition/compute.ts'
import type { Edition } from '../../../src/edition/shape/edition.ts'
import { listedLot, listedSource } from '../../../src/edition/shape/listing.ts'
import { loadRecords } from '../../../src/records/load.ts'
import { finding, plannedTest, revision, tinyEdition, tinyLot, tinySource, verdict } from '../tiny-edition.ts'

/** Of a lot's row as JSON: what makes the rows of a hundred thousand lots fit in memory. */
const LARGEST = 2048

function largestRow(edition: Edition): number {
  return Math.max(...[...edition.lots.values()].map((row) => Buffer.byteLength(JSON.stringify(row))))
}

/** Records of as many lots as asked, not issued. */
function generated(lots: number): string {
  const folder = join(mkdtempSync(join(tmpdir(), 'rows-')), 'content')
  for (const kind of ['conditions', 'criteria', 'methods'])
    cpSync(join('content', kind), join(folder, kind), { recursive: true })
  for (const { path, text } of scenarioFiles({ lots }, () => undefined)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true })
    writeFileSync(join(folder, path), text)
  }
  cpSync('content/site.yaml', join(folder, 'site.yaml'))
  return folder
}

describe('a lot’s row', () => {
  it('says of a lot revised twice what it is, where it stands, and no more', () => {
    const lot = tinyLot('ash/A-1', {
      class: 'F',
      state: 'complete',
      formerly: ['ash/1'],
      verdicts: [
        verdict('governing', 'meets', { reasons: [{ code: 'all-met', params: { count: 3 } }] }),
        verdict('other', 'pending'),
      ],
      revisions: [revision(0, '2026-03-10'), revision(1, '2026-03-20'), revision(3, '2026-04-02')],
      findings: [finding('ash/A-1'), finding('ash/A-1', 'blocks')],
    })
    expect(listedLot(lot)).toEqual({
      id: 'ash/A-1',
      source: 'ash',
      lot: 'A-1',
      number: 'A-1',
      formerly: ['ash/1'],
      class: 'F',
      sampled: readMoment('2026-03-05'),
      state: 'complete',
      tonnes: 1000,
      outcomes: [
        { criterion: 'governing', outcome: 'meets' },
        { criterion: 'other', outcome: 'pending' },
      ],
      awaited: [],
      issued: { number: 3, date: readMoment('2026-04-02') },
      earlier: [0, 1],
      findingCount: 2,
    })
  })

  it('names what it awaits, but nothing of a withdrawn lot', () => {
    const planned = [plannedTest('2026-04-04')]
    expect(listedLot(tinyLot('ash/A-1', { planned })).awaited).toEqual([
      {
        property: 'strength-activity-index',
        condition: 'hot',
        age: readAge('28 d'),
        unread: 'both',
        due: readMoment('2026-04-04'),
      },
    ])
    expect(listedLot(tinyLot('ash/A-1', { planned, state: 'withdrawn' })).awaited).toEqual([])
  })

  it('has neither class, withdrawal nor revision where the lot has none', () => {
    const row = listedLot(tinyLot('ash/A-1'))
    expect([row.issued, row.earlier, 'class' in row, 'withdrawn' in row]).toEqual([null, [], false, false])
  })

  it('takes less than 2 KB, in the demonstration and on generated lots', () => {
    const demo = computeEdition(loadRecords('content').records, { program: 'test' })
    const more = computeEdition(loadRecords(generated(300)).records, { program: 'test' })
    expect([demo.lots.size, more.lots.size]).toEqual([300, 300])
    expect(largestRow(demo)).toBeLessThan(LARGEST)
    expect(largestRow(more)).toBeLessThan(LARGEST)
  })
})

describe('a source’s row', () => {
  it('names it without its lots', () => {
    expect(listedSource(tinySource('ash', { criteria: ['governing'], findings: [finding('ash')] }))).toEqual({
      id: 'ash',
      name: 'Ash of ash',
      producer: 'works',
      kind: 'coal-fly-ash',
      criteria: ['governing'],
      findingCount: 1,
    })
  })
})

describe('lotsOf', () => {
  it('gives each source its own rows in order, and none for a source without lots or unknown', () => {
    const edition = tinyEdition(
      [tinySource('ash'), tinySource('slag'), tinySource('tuff')],
      [tinyLot('ash/2'), tinyLot('ash/1'), tinyLot('tuff/1')],
    )
    expect(['ash', 'slag', 'tuff', 'nowhere'].map((id) => edition.lotsOf(id).map((lot) => lot.id))).toEqual([
      ['ash/2', 'ash/1'],
      [],
      ['tuff/1'],
      [],
    ])
  })
})
