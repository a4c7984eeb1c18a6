/** The charts of a source: on another axis in place, and read out by key. */
import { describe, expect, it } from 'vitest'
import { siteInBrowser } from './site-in-browser.ts'

const demo = siteInBrowser('networkidle')
const SOURCE = 'sources/skarnmere-ash/'

describe("the axis of a source's charts", () => {
  it("is chosen in place, kept in the address, and found again after a reload and with the browser's own way back", async () => {
    const page = await demo.open(SOURCE)
    const panels = page.locator('[data-charts] .panel[id]')
    const dated = await panels.first().getAttribute('id')
    await page.locator('.axis-switch a[data-axis="shipment"]').click()
    await page.locator('[data-charts] .panel[id^="shipped-"]').first().waitFor()
    expect(new URL(page.url()).search).toBe('?axis=shipment')
    expect(await page.locator('.axis-switch [aria-current]').textContent()).toBe('shipment')
    await page.reload({ waitUntil: 'networkidle' })
    await page.locator('[data-charts] .panel[id^="shipped-"]').first().waitFor()
    await page.goBack()
    await page.locator(`[data-charts] [id="${dated}"]`).waitFor()
    expect(new URL(page.url()).search).toBe('')
    await page.context().close()
  })

  it('leads to a page each without script', async () => {
    const page = await demo.open(SOURCE, { javaScriptEnabled: false })
    for (const axis of ['lot', 'shipment']) {
      await page.locator(`.axis-switch a[data-axis="${axis}"]`).click()
      expect(new URL(page.url()).pathname.endsWith(`by-${axis}/`)).toBe(true)
      // The address is there before the page is.
      await page.locator('[data-charts] .panel[id]').nth(3).waitFor({ state: 'attached' })
    }
    await page.locator('.axis-switch a[data-axis="date"]').click()
    expect(new URL(page.url()).pathname.endsWith(SOURCE)).toBe(true)
    await page.context().close()
  })
})

describe('a chart', () => {
  it('is read out point by point with the arrow keys, a ring at the point, in each panel that has a table', async () => {
    const page = await demo.open(SOURCE)
    const panel = page.locator('[data-charts] .panel[id]').first()
    const drawing = panel.locator('svg[data-places]')
    await drawing.focus()
    await page.keyboard.press('End')
    const rows = panel.locator('.chart-table tbody tr th')
    const last = await panel.locator('.reading').textContent()
    expect(last?.startsWith(`${await rows.first().textContent()}, `)).toBe(true)
    await page.keyboard.press('ArrowLeft')
    expect(
      (await panel.locator('.reading').textContent())?.startsWith(`${await rows.nth(1).textContent()}, `),
    ).toBe(true)
    expect(await drawing.locator('.chosen').count()).toBe(1)
    expect(await panel.locator('.reading').getAttribute('aria-live')).toBe('polite')
    expect(await drawing.evaluate((node) => getComputedStyle(node).outlineStyle)).not.toBe('none')
    await page.context().close()
  })
})

describe('the letters of every chart', () => {
  it('measure 11 px or more, and no more than 16, on a phone, a tablet and a desk', async () => {
    const laboratory = [...demo.site.edition.laboratories.keys()].find((id) =>
      [...demo.site.edition.controls.values()].some(({ record }) => record.laboratory === id),
    )
    const paths = [
      SOURCE,
      `${SOURCE}by-lot/`,
      `${SOURCE}by-shipment/`,
      `laboratories/${laboratory}/`,
      'routes/',
      'lots/skarnmere-ash/SA-2026-001/',
    ]
    for (const width of [390, 820, 1440]) {
      const page = await demo.open('', { viewport: { width, height: 900 } })
      for (const path of paths) {
        await page.goto(demo.site.url + path)
        const sizes = await page.evaluate(() =>
          [...document.querySelectorAll<SVGTextElement>('svg text')]
            .filter((text) => 0 < text.getClientRects().length)
            .map(
              (text) => Number.parseFloat(getComputedStyle(text).fontSize) * (text.getScreenCTM()?.a ?? 0),
            ),
        )
        expect(sizes.length, `${path} at ${width}`).toBeGreaterThan(0)
        // A tenth of a pixel for the rounding of column widths.
        expect(Math.min(...sizes), `${path} at ${width}`).toBeGreaterThanOrEqual(10.9)
        expect(Math.max(...sizes), `${path} at ${width}`).toBeLessThanOrEqual(16)
      }
      await page.context().close()
    }
  })
})
