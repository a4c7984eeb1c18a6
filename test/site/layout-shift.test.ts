/** Nothing that a reader looks at moves once it is drawn: scripts and fonts find their room kept. */
import { describe, expect, it } from 'vitest'
import { filledPages, kindsOfPage } from './kinds-of-page.ts'
import { eachPage, SLOW_MS, siteInBrowser } from './site-in-browser.ts'

const demo = siteInBrowser('networkidle')

interface Shift extends PerformanceEntry {
  readonly value: number
}

/** After the last file has come, long enough for it to be judged and drawn. */
const DRAWN_MS = 400

/** The sum of all shifts of a page, in hundredths; 0.1 is what a reader notices. */
async function shiftOf(path: string, width: number): Promise<number> {
  const context = await demo.browser.newContext({ viewport: { width, height: 900 } })
  const page = await context.newPage()
  page.setDefaultTimeout(SLOW_MS)
  await page.addInitScript(() => {
    const shifts: number[] = []
    Object.assign(globalThis, { shifts })
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) shifts.push((entry as Shift).value)
    }).observe({ type: 'layout-shift', buffered: true })
  })
  await page.goto(demo.site.url + path, { waitUntil: 'networkidle' })
  await page.waitForTimeout(DRAWN_MS)
  const shifts = await page.evaluate(() => (globalThis as unknown as { shifts: number[] }).shifts)
  await context.close()
  // A thousandth is a letter of a stand-in font that gives way.
  return Math.round(100 * shifts.reduce((sum, value) => sum + value, 0)) / 100
}

describe('a page', () => {
  it.each([390, 1440])(
    'shifts nothing of its layout, %d px wide, on one of each kind and where scripts fill it',
    async (width) => {
      const { edition } = demo.site
      const seen = await eachPage(
        [...kindsOfPage(edition), ...filledPages(edition)],
        async (path) => `${path}: ${await shiftOf(path, width)}`,
      )
      expect(seen.filter((line) => !line.endsWith(': 0'))).toEqual([])
      expect(seen.length).toBeGreaterThan(30)
    },
    240_000,
  )
})
