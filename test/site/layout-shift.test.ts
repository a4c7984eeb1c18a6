/** Nothing that a reader looks at moves once it is drawn: scripts and fonts find their room kept. */
import { describe, expect, it } from 'vitest'
import { siteInBrowser } from './site-in-browser.ts'

const demo = siteInBrowser('load')

interface Shift extends PerformanceEntry {
  readonly value: number
}

/** Long enough for the fetched column files and a first judging. */
const SETTLED = 1500

describe('a page with scripts', () => {
  it.each([390, 1440])(
    'shifts nothing of its layout, %d px wide, on the pages that scripts fill',
    async (width) => {
      const [shipment] = demo.site.edition.shipments
      const [laboratory] = demo.site.edition.laboratories.keys()
      const paths = [
        'comparison/',
        `look-up/?q=${shipment?.bill}`,
        `laboratories/${laboratory}/`,
        'register/',
        '',
        'sources/skarnmere-ash/',
      ]
      for (const path of paths) {
        const context = await demo.browser.newContext({ viewport: { width, height: 900 } })
        const page = await context.newPage()
        await page.addInitScript(() => {
          const shifts: number[] = []
          Object.assign(globalThis, { shifts })
          new PerformanceObserver((list) => {
            for (const entry of list.getEntries()) shifts.push((entry as Shift).value)
          }).observe({ type: 'layout-shift', buffered: true })
        })
        await page.goto(demo.site.url + path)
        await page.waitForTimeout(SETTLED)
        const shifts = await page.evaluate(() => (globalThis as unknown as { shifts: number[] }).shifts)
        // A thousandth is a letter of a stand-in font that gives way; 0.1 is what a reader notices.
        expect({
          path,
          shift: Math.round(100 * shifts.reduce((sum, value) => sum + value, 0)) / 100,
        }).toEqual({
          path,
          shift: 0,
        })
        await context.close()
      }
    },
    120_000,
  )
})
