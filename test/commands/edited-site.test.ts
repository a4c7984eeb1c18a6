/** A site is built again after each edit of its records: torture goes on from here. */
import { readdirSync, readFileSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { beforeAll, describe, expect, it, vi } from 'vitest'
import type { BuiltSite } from '../../src/commands/build-site.ts'
import { builtAgain, differences, EDITS, type EditedSite, newSite } from '../torture/edited-site.ts'

/** Sources of which a lot was judged. */
const judged = vi.hoisted(() => new Set<string>())

vi.mock('../../src/edition/certificate/lot-entry.ts', async (original) => {
  const { lotEntry } = await original<typeof import('../../src/edition/certificate/lot-entry.ts')>()
  return {
    lotEntry: (...given: Parameters<typeof lotEntry>) => {
      judged.add(given[1].state.id)
      return lotEntry(...given)
    },
  }
})

let site: EditedSite
let latest: BuiltSite

/** The newest lot, the last page. */
const last = (count: number) => count - 1

async function build(): Promise<void> {
  latest = await builtAgain(site)
}

/** What was drawn and made after edits. */
async function anewAfter(...edits: readonly string[]): Promise<Pick<BuiltSite, 'drawn' | 'made'>> {
  for (const edit of edits) site = EDITS[edit]?.(site, last) ?? site
  judged.clear()
  await build()
  return latest
}

const ofLots = (paths: readonly string[]) => paths.filter((path) => path.startsWith('lots/')).sort()
const all = (folder: string, is: RegExp) =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((path) => is.test(path))

beforeAll(async () => {
  site = await newSite()
  await build()
  expect(latest.drawn).toHaveLength(latest.pages)
  const { lots } = latest.edition
  expect(ofLots(latest.drawn)).toHaveLength(34)
  expect([...lots.values()].filter(({ awaited }) => awaited.length > 0)).toHaveLength(2)
})

/** Each case goes on where the one before ended. */
describe('a build in the place of the site before', { timeout: 600_000 }, () => {
  it('makes nothing where nothing has changed, and says so', async () => {
    expect(await anewAfter('nothing')).toMatchObject({ drawn: [], made: [] })
    expect(latest.drawnLines).toEqual([
      `${latest.pages} pages: 0 drawn, ${latest.pages} unchanged`,
      expect.stringMatching(/^(\d+) data files: 0 made, \1 unchanged$/),
    ])
    expect(await differences(site)).toEqual([])
  })

  it('makes what a reading changes, of its lot and its source, and gives the bytes of a site drawn anew', async () => {
    const { drawn, made } = await anewAfter('a reading')
    const [lot = '', working] = ofLots(drawn)
    expect(working).toBe(lot.replace('index.html', 'working/index.html'))
    expect(ofLots(drawn)).toHaveLength(2)
    const [, source = ''] = lot.split('/')
    const others = [...latest.edition.sources.keys()].filter((id) => id !== source)
    expect(drawn).toContain(`sources/${source}/index.html`)
    expect([...judged]).toEqual([source])
    for (const other of others)
      expect([...drawn, ...made].filter((path) => path.includes(`/${other}/report/`))).toEqual([])
    expect(made.filter((path) => path.startsWith('data/lots/'))).toEqual([
      lot.replace('lots', 'data/lots').replace('/index.html', '.json'),
    ])
    expect(drawn).not.toContain('diagnostics/index.html')
    expect(await differences(site)).toEqual([])
  })

  it('makes what a control changes', async () => {
    const { drawn } = await anewAfter('a control')
    expect(drawn.filter((path) => /^laboratories\/.+/.test(path))).not.toEqual([])
    expect(drawn).not.toContain('methods/index.html')
    expect(await differences(site)).toEqual([])
  })

  it('draws what was done to pages, and what a day more changes, which of lots is what awaits something', async () => {
    const edits = ['a published page altered by hand', 'a published page closed to others', 'a day later']
    // The certificates and workings of the two lots that await results, and the one that was altered and closed.
    expect(ofLots((await anewAfter(...edits)).drawn)).toHaveLength(4 + 1)
    expect(latest.drawnLines.at(-1)).toMatch(
      /^Files made anew because of a change in .*the day of the records \(\d+\)/,
    )
    expect(await differences(site)).toEqual([])
  })

  it('makes a data file anew that was altered by hand, and keeps the size and the time', async () => {
    const path = join(site.out, 'data/criteria.json')
    const { atime, mtime } = statSync(path)
    writeFileSync(path, readFileSync(path, 'utf8').replace('"', "'"))
    utimesSync(path, atime, mtime)
    expect((await anewAfter()).made).toEqual(['data/criteria.json'])
    expect(await differences(site)).toEqual([])
  })

  it('makes what another lot among them changes, and what a set of criteria does', async () => {
    expect(ofLots((await anewAfter('a lot taken out')).drawn).length).toBeLessThan(34)
    expect(await differences(site)).toEqual([])
    const { drawn } = await anewAfter('a lot among earlier ones')
    const [source = '', ...others] = judged
    expect(others).toEqual([])
    const shipped = drawn.filter((path) => path.startsWith('shipments/'))
    expect(shipped.filter((path) => !path.startsWith(`shipments/${source}/`))).toEqual([
      'shipments/index.html',
    ])
    expect(await differences(site)).toEqual([])
    await anewAfter('the limit of a set')
    expect(await differences(site)).toEqual([])
  })

  it('makes every page where all of them print something else', async () => {
    expect((await anewAfter('the notice of the site')).drawn).toHaveLength(latest.pages)
  })

  it('is none the worse for what somebody does to the spare site', async () => {
    const spoilt = Object.keys(EDITS).filter((edit) => edit.includes('spare site')) as (keyof typeof EDITS)[]
    expect(spoilt.length).toBeGreaterThan(2)
    for (const edit of spoilt) {
      expect((await anewAfter(edit)).drawn, edit).toEqual([])
      expect(await differences(site), edit).toEqual([])
    }
  })

  it('makes everything where its list is gone or spoiled', async () => {
    expect((await anewAfter('a list of pages that was cut short')).drawn).toHaveLength(latest.pages)
    rmSync(join(dirname(site.out), '.puteoli'), { recursive: true })
    const { drawn, made } = await anewAfter('nothing')
    expect(drawn).toHaveLength(latest.pages)
    expect(made.length).toBeGreaterThan(all(join(site.out, 'data'), /\.(json|csv|parquet)$/).length)
  })
})
