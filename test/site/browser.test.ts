/** What only a browser sees of one page of each kind: requests, complaints, width. */
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { ROOT } from '../../src/commands/program.ts'
import { filesOf } from './built-site.ts'
import { filledPages, kindsOfPage } from './kinds-of-page.ts'
import { eachPage, SLOW_MS, siteInBrowser } from './site-in-browser.ts'
import { allShipments } from '../edition/all-shipments.ts'

const demo = siteInBrowser('load')

/** What a page asks of other origins, and what the browser complains about. */
async function oddities(path: string): Promise<{ path: string; foreign: string[]; complaints: string[] }> {
  const page = await (await demo.browser.newContext()).newPage()
  page.setDefaultTimeout(SLOW_MS)
  const foreign: string[] = []
  const complaints: string[] = []
  page.on('request', (request) => {
    if (!request.url().startsWith(demo.site.url) && !request.url().startsWith('data:'))
      foreign.push(request.url())
  })
  page.on('console', (message) => {
    if (message.type() === 'error' && !(path === '404.html')) complaints.push(message.text())
  })
  page.on('pageerror', (error) => complaints.push(String(error)))
  await page.goto(demo.site.url + path, { waitUntil: 'networkidle' })
  await page.context().close()
  return { path, foreign, complaints }
}

/** Pixels by which a page is wider than its window, by the window's width. */
async function overflows(path: string): Promise<Record<number, number>> {
  const page = await demo.open(path)
  const overflow: Record<number, number> = {}
  for (const width of [390, 320, 768]) {
    await page.setViewportSize({ width, height: 844 })
    overflow[width] = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    )
  }
  await page.context().close()
  return overflow
}

describe('the built site', () => {
  it('asks nothing of another origin and breaks no policy, on one page of each kind', async () => {
    const { edition } = demo.site
    for (const { path, foreign, complaints } of await eachPage(
      [...kindsOfPage(edition), ...filledPages(edition)],
      oddities,
    ))
      expect({ path, foreign, complaints }).toEqual({ path, foreign: [], complaints: [] })
  }, 240_000)

  it('does not scroll sideways on a phone, nor at the 320 px of WCAG 2.2, 1.4.10, nor on a tablet, on one page of each kind', async () => {
    const paths = kindsOfPage(demo.site.edition)
    const wide = await eachPage(paths, async (path) => ({ path, ...(await overflows(path)) }))
    expect(wide).toEqual(paths.map((path) => ({ path, 390: 0, 320: 0, 768: 0 })))
  })

  it('has each kind of page among those that stand for it here', () => {
    const pages = join(ROOT, 'src/pages')
    const kinds = filesOf(pages)
      .filter((name) => name.endsWith('.astro'))
      .map((name) => name.replace(/(?:index)?\.astro$/, ''))
    const pattern = (kind: string) =>
      new RegExp(
        `^${kind.replaceAll(/\[\.\.\.[a-z]+\]\//g, '(?:[^/]+/)?').replaceAll(/\[[a-z]+\]/g, '[^/]+')}(?:\\.html)?$`,
      )
    const paths = kindsOfPage(demo.site.edition)
    expect(kinds.length).toBeGreaterThan(25)
    const missing = kinds.filter((kind) => !paths.some((path) => pattern(kind).test(path)))
    expect(missing).toEqual(OF_LONG_HISTORIES)
  })
})

/** Pages that only a site with more findings than the demonstration has: it lists them on one page. */
const OF_LONG_HISTORIES = ['findings/[source]/[year]/']

describe('the look-up', () => {
  it('leads from a bill of lading to its certificate', async () => {
    const shipment = allShipments(demo.site.edition).at(-1)
    const page = await demo.open(`look-up/?q=${shipment?.bill}`)
    await page.waitForSelector(`a[href="/a/b/lots/${shipment?.lots[0]}/"]`)
    expect(await page.locator(`a[href="/a/b/lots/${shipment?.lots[0]}/"]`).count()).toBeGreaterThan(0)
  })
  it('leads from a lot number to its certificate', async () => {
    const lot = [...demo.site.edition.lots.values()][0]
    const page = await demo.open(`look-up/?q=${encodeURIComponent(lot?.number ?? '')}`)
    await page.waitForSelector(`a[href="/a/b/lots/${lot?.id}/"]`)
    expect(await page.locator(`a[href="/a/b/lots/${lot?.id}/"]`).count()).toBeGreaterThan(0)
  })
})
