import { describe, expect, it } from 'vitest'

import type { ListedLot } from '../../src/edition/shape/edition.ts'
import { siteInBrowser, SLOW_MS } from './site-in-browser.ts'

const demo = siteInBrowser('networkidle')

const failed = ({ outcomes: [governing] }: ListedLot) => governing?.outcome === 'does-not-meet'

function firstSource() {
  const source = [...demo.site.edition.sources.values()].find((candidate) =>
    demo.site.edition.lotsOf(candidate.id).some(failed),
  )
  if (source === undefined) throw new RangeError('the demo needs a source with a lot that does not meet')
  return source
}

describe('the register', () => {
  it('shows no filter without JavaScript, and leads to every year by links', async () => {
    const page = await demo.open('register/', { javaScriptEnabled: false })
    expect(await page.locator('#filter').isVisible()).toBe(false)
    expect(await page.locator('#filter-pages').isVisible()).toBe(false)
    const years = new Set(
      [...demo.site.edition.lots.values()].map((lot) => `${lot.source}/${lot.sampled.text.slice(0, 4)}`),
    )
    for (const year of years)
      expect(await page.locator(`a[href="/a/b/register/${year}/"]`).count(), year).toBe(1)
    await page.context().close()
  })

  it('filters by source and outcome, counts what it found and keeps the filter in the address', async () => {
    const source = firstSource()
    const lots = demo.site.edition.lotsOf(source.id)
    const failing = lots.filter(failed)
    const page = await demo.open('register/')
    await page.selectOption('select[name="source"]', source.id)
    await page.selectOption('select[name="criterion"]', lots.at(-1)?.outcomes[0]?.criterion ?? '')
    await page.selectOption('select[name="outcome"]', 'does-not-meet')
    // The form can be used before the columns have been read: the table follows when they have.
    const rowsFound = () => page.locator('#filter-result tbody tr').count()
    await expect.poll(rowsFound, { timeout: SLOW_MS }).toBe(failing.length)
    expect(await page.locator('#filter-count').textContent()).toBe(
      failing.length === 1 ? '1 lot found' : `${failing.length} lots found`,
    )
    await page.reload({ waitUntil: 'networkidle' })
    await expect.poll(rowsFound, { timeout: SLOW_MS }).toBe(failing.length)
    await page.context().close()
  })

  it('sorts by a column at a press of its heading and says so to a screen reader', async () => {
    const page = await demo.open('register/')
    await page.locator('#filter-result tbody tr').first().waitFor()
    const heading = page.locator('#filter-result thead th').first()
    await heading.locator('button').press('Enter')
    // The table is drawn anew once the columns have been read.
    await expect.poll(() => heading.getAttribute('aria-sort'), { timeout: SLOW_MS }).toBe('ascending')
    const numbers = await page.locator('#filter-result tbody th').allTextContents()
    expect(numbers).toHaveLength(100)
    expect(numbers).toEqual([...numbers].sort((a, b) => (a < b ? -1 : 1)))
    await page.context().close()
  })

  it('turns to the next hundred rows and back no further than the first', async () => {
    const page = await demo.open('register/')
    await page.locator('#filter-pages button').last().click()
    expect(await page.locator('#filter-result tbody tr').count()).toBe(
      Math.min(100, demo.site.edition.lots.size - 100),
    )
    await page.locator('#filter-pages button').last().click()
    expect(await page.locator('#filter-result tbody tr').count()).toBe(demo.site.edition.lots.size - 200)
    expect(await page.locator('#filter-pages button').last().isDisabled()).toBe(true)
    await page.context().close()
  })
})

/** A laboratory with charts of its control batches. */
const LABORATORY = 'laboratories/north-quay/'

describe("a laboratory's chart", () => {
  it('tells the newest batch at a key', async () => {
    const page = await demo.open(LABORATORY)
    const panel = page.locator('.panel[id]').first()
    await panel.locator('svg[data-places]').press('End')
    const newest = (await panel.locator('.chart-table tbody tr th').first().textContent())?.trim()
    expect(newest).toMatch(/^NQ-2026-/)
    expect(await panel.locator('.reading').textContent()).toContain(newest)
    expect(await panel.locator('.chosen').count()).toBe(1)
    await page.context().close()
  })

  it('has a name, a description and a table of its results, without JavaScript too', async () => {
    const page = await demo.open(LABORATORY, { javaScriptEnabled: false })
    const panel = page.locator('.panel[id]').first()
    expect(await panel.locator('svg[role="img"]').getAttribute('aria-label')).toMatch(
      /^Compressive strength, 7\sd: \d+\scontrol batches/,
    )
    expect(await panel.locator('.chart-table tbody tr').count()).toBeGreaterThan(10)
    await page.context().close()
  })
})
