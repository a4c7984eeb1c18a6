/** A site is built again after each edit of its records: torture goes on from here. */
import { rmSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { builtAgain, differences, EDITS, type EditedSite, newSite } from '../torture/edited-site.ts'

let site: EditedSite
/** Pages of lots: a certificate and a working each, and the earlier revisions. */
let ofLots: number

/** The newest lot, the last page. */
const last = (count: number) => count - 1

async function unchangedAfter(...edits: readonly string[]): Promise<number> {
  for (const edit of edits) site = EDITS[edit]?.(site, last) ?? site
  const { pages, unchanged } = await builtAgain(site)
  expect(pages).toBeGreaterThan(ofLots)
  return unchanged
}

beforeAll(async () => {
  site = await newSite()
  const { edition, unchanged } = await builtAgain(site)
  expect(unchanged).toBe(0)
  ofLots = [...edition.lots.values()].reduce((sum, { earlier }) => sum + 2 + earlier.length, 0)
  expect(ofLots).toBe(34)
  expect([...edition.lots.values()].filter(({ awaited }) => awaited.length > 0)).toHaveLength(2)
})

/** Each case goes on where the one before ended. */
describe('a build in the place of the site before', { timeout: 600_000 }, () => {
  it('draws no page of a lot where nothing has changed', async () => {
    expect(await unchangedAfter('nothing')).toBe(34)
  })

  it('draws the two pages that a reading changes, and gives the bytes of a site drawn anew', async () => {
    expect(await unchangedAfter('a reading')).toBe(32)
    expect(await differences(site)).toEqual([])
  })

  it('draws what was done to pages, and what a day more changes, which is what awaits something', async () => {
    const edits = ['a published page altered by hand', 'a published page closed to others', 'a day later']
    // The certificates and workings of the two lots that await results, and the one that was altered and closed.
    expect(await unchangedAfter(...edits)).toBe(34 - 4 - 1)
    expect(await differences(site)).toEqual([])
  })

  it('draws every page where all of them print something else', async () => {
    expect(await unchangedAfter('the notice of the site')).toBe(0)
  })

  it('draws every page where its list is gone or spoiled', async () => {
    expect(await unchangedAfter('a list of pages that was cut short')).toBe(0)
    rmSync(join(dirname(site.out), '.puteoli'), { recursive: true })
    expect(await unchangedAfter('nothing')).toBe(0)
  })
})
