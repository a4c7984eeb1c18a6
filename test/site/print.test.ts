/** What the printer makes of the pages: how many sheets, what stands on each, and what is never left alone. */
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { date } from '../../src/words/dates.ts'
import { plainSpaces } from '../../src/words/sentences.ts'
import { textOf } from './built-site.ts'
import { kindsOfPage } from './kinds-of-page.ts'
import { placesIn, sheetsOf } from './pdf-text.ts'
import { siteInBrowser } from './site-in-browser.ts'

const demo = siteInBrowser('networkidle')

const FORMATS = ['A4', 'Letter'] as const

/** Lots whose certificates say most, the longest first. */
function longestCertificates(): string[] {
  return [...demo.site.edition.lots.keys()]
    .map((id) => ({ id, length: textOf(demo.site.folder, `lots/${id}/index.html`).length }))
    .sort((a, b) => b.length - a.length)
    .map(({ id }) => id)
}

/** Pages that are no certificate: those have a head of their own. */
function otherKinds(): string[] {
  return kindsOfPage(demo.site.edition).filter(
    (path) => path !== '404.html' && !/^lots\/[^/]+\/[^/]+\/(revision|$)/.test(path),
  )
}

/** Elements that print, named "mark-0" and so on in the order of the page, so that a PDF tells where each lies. */
async function mark(page: Page, selector: string): Promise<number> {
  return page.evaluate((wanted) => {
    const links = document.createElement('div')
    links.hidden = true
    const seen = [...document.querySelectorAll<HTMLElement>(wanted)].filter(
      (one) => one.getClientRects().length > 0,
    )
    for (const [place, one] of seen.entries()) {
      one.id = `mark-${place}`
      const link = document.createElement('a')
      link.href = `#mark-${place}`
      links.append(link)
    }
    document.body.append(links)
    return seen.length
  }, selector)
}

/** Matter of which a page consists: rows, paragraphs, items, drawings; the register draws its rows anew for the printer. */
const MATTER = 'main :is(tbody > tr, p, li, dd, figure, svg.fluid):not(#filter-result *)'

describe('a certificate in print', () => {
  it('takes two pages at most on A4 and Letter without the annex, for the thirty longest', async () => {
    const page = await demo.open('')
    const tooLong: string[] = []
    for (const id of longestCertificates().slice(0, 30)) {
      await page.goto(`${demo.site.url}lots/${id}/`)
      for (const format of FORMATS) {
        const { length } = sheetsOf(await page.pdf({ format }))
        if (2 < length || length === 0) tooLong.push(`${id} ${format}: ${length} pages`)
      }
    }
    expect(tooLong).toEqual([])
  }, 180_000)

  it('leaves neither signature nor address alone on a sheet, with the annex of readings and without', async () => {
    const page = await demo.open('')
    const alone: string[] = []
    for (const id of longestCertificates().filter((_, place) => place % 20 === 0)) {
      for (const annex of [false, true]) {
        await page.emulateMedia({ media: 'screen' })
        await page.goto(`${demo.site.url}lots/${id}/`)
        if (annex) await page.check('#print-readings')
        await page.emulateMedia({ media: 'print' })
        const rest = await mark(page, 'article :is(tbody tr tr, .facts, .mortars p, .closing), .permanent')
        for (const format of FORMATS) {
          const places = placesIn(await page.pdf({ format }))
          const sheetOf = (place: number) => places.get(`mark-${place}`)?.sheet
          const [address, signature] = [sheetOf(rest - 1), sheetOf(rest - 2)]
          expect(signature).toBeGreaterThan(0)
          if (address !== signature || sheetOf(rest - 4) !== signature)
            alone.push(`${id} ${format}, ${annex ? 'with' : 'without'} annex`)
        }
      }
    }
    expect(alone).toEqual([])
  }, 180_000)
})

describe('a page of another kind in print', () => {
  it('says on every sheet whose it is, of which day, where it is found, which it is, and who decides', async () => {
    const { edition, url } = demo.site
    const asOf = plainSpaces(`Records as of ${date(edition.asOf)}`)
    for (const path of otherKinds()) {
      const page = await demo.open(path)
      const sheets = sheetsOf(await page.pdf({ format: 'A4' }))
      for (const [place, sheet] of sheets.entries()) {
        const wanted = [
          edition.site.title,
          asOf,
          `page ${place + 1} of ${sheets.length}`,
          'a licensed engineer',
          new URL(path, url).pathname,
        ]
        expect({ path, place, missing: wanted.filter((text) => !sheet.includes(text)) }).toEqual({
          path,
          place,
          missing: [],
        })
      }
      await page.context().close()
    }
  }, 120_000)

  it('parts no heading from what follows it, on A4 and Letter', async () => {
    const parted: string[] = []
    for (const path of otherKinds()) {
      const page = await demo.open(path)
      await page.emulateMedia({ media: 'print' })
      const marks = await mark(
        page,
        `main :is(h1, h2, h3, h4, caption:not(.hidden-text)):not(#filter-result *), ${MATTER}`,
      )
      const headings = await page.evaluate(() =>
        [...document.querySelectorAll<HTMLElement>('[id^="mark-"]')]
          .filter((one) => one.matches('h1, h2, h3, h4, caption'))
          .map((one) => ({ text: one.textContent, place: Number(one.id.slice(5)) })),
      )
      for (const format of FORMATS) {
        const places = placesIn(await page.pdf({ format }))
        const sheetOf = (place: number) => places.get(`mark-${place}`)?.sheet
        expect(sheetOf(0)).toBe(1)
        for (const { text, place } of headings)
          if (place + 1 < marks && sheetOf(place + 1) !== sheetOf(place))
            parted.push(`${path} ${format}: ${text.trim()}`)
      }
      await page.context().close()
    }
    expect(parted).toEqual([])
  }, 180_000)

  it('has nothing wider than the sheet', async () => {
    const { browser, site } = demo
    const page = await (await browser.newContext({ viewport: { width: 688, height: 900 } })).newPage()
    await page.emulateMedia({ media: 'print' })
    for (const path of kindsOfPage(site.edition)) {
      await page.goto(site.url + path, { waitUntil: 'networkidle' })
      // 14 mm at each side of 210 mm, at 96 points an inch; Letter is wider.
      const width = await page.evaluate(() => document.documentElement.scrollWidth)
      expect({ path, width }).toEqual({ path, width: 688 })
    }
  }, 120_000)

  it('prints every lot that the register found, not the hundred that its screen shows', async () => {
    const page = await demo.open('register/')
    const rows = () => page.locator('#filter-result tbody tr').count()
    expect(await rows()).toBe(100)
    await page.evaluate(() => dispatchEvent(new Event('beforeprint')))
    expect(await rows()).toBe(demo.site.edition.lots.size)
    await page.evaluate(() => dispatchEvent(new Event('afterprint')))
    expect(await rows()).toBe(100)
    const text = sheetsOf(await page.pdf({ format: 'Letter' })).join(' ')
    const missing = [...demo.site.edition.lots.values()].filter(({ number }) => !text.includes(number))
    expect(missing).toEqual([])
  }, 60_000)
})
