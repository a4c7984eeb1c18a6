/** What only a browser sees of one page of each kind: requests, complaints, width. */
import { describe, expect, it } from 'vitest'
import { kindsOfPage } from './kinds-of-page.ts'
import { siteInBrowser } from './site-in-browser.ts'

const demo = siteInBrowser('load')

describe('the built site', () => {
  it('asks nothing of another origin and breaks no policy, on one page of each kind', async () => {
    for (const path of kindsOfPage(demo.site.edition)) {
      const context = await demo.browser.newContext()
      const page = await context.newPage()
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
      expect({ path, foreign, complaints }).toEqual({ path, foreign: [], complaints: [] })
      await context.close()
    }
  })

  it('does not scroll sideways on a phone, nor at the 320 px of WCAG 2.2, 1.4.10, nor on a tablet, on one page of each kind', async () => {
    for (const path of kindsOfPage(demo.site.edition)) {
      const page = await demo.open(path, { viewport: { width: 390, height: 844 } })
      const overflow = () =>
        page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
      expect({ path, overflow: await overflow() }).toEqual({ path, overflow: 0 })
      for (const width of [320, 768]) {
        await page.setViewportSize({ width, height: 844 })
        expect({ path, width, overflow: await overflow() }).toEqual({ path, width, overflow: 0 })
      }
      await page.context().close()
    }
  })
})

describe('the look-up', () => {
  it('leads from a bill of lading to its certificate', async () => {
    const shipment = demo.site.edition.shipments.at(-1)
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
