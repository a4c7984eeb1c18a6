/** What the printer makes of the pages: how many sheets, what stands on each, and what is never left alone. */
import type { Page } from 'playwright-core'
import { beforeAll, describe, expect, it } from 'vitest'
import type { Moment } from '../../src/core/measure/moment.ts'
import { paths } from '../../src/edition/shape/addresses.ts'
import type { Edition } from '../../src/edition/shape/edition.ts'
import { date } from '../../src/words/dates.ts'
import { plainSpaces } from '../../src/words/sentences.ts'
import { textOf } from './built-site.ts'
import { kindsOfPage } from './kinds-of-page.ts'
import { placesIn, sheetsOf } from './pdf-text.ts'
import { eachPage, siteInBrowser } from './site-in-browser.ts'

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

/** A page of another kind as it comes out of the printer, on one size of paper. */
interface Printed {
  readonly path: string
  readonly format: (typeof FORMATS)[number]
  /** The words on each sheet. */
  readonly sheets: readonly string[]
  /** The sheet of each marked element. */
  readonly sheetOf: (place: number) => number | undefined
  readonly marks: number
  readonly headings: readonly { readonly text: string; readonly place: number }[]
}

/** Matter of which a page consists: rows, paragraphs, items, drawings; the register draws its rows anew for the printer. */
const MATTER = 'main :is(tbody > tr, p, li, dd, figure, svg.fluid):not(#filter-result *)'

/** Opens a page once and prints it on each size of paper, with its headings and matter marked. */
async function printedPage(path: string): Promise<Printed[]> {
  const page = await demo.open(path)
  await page.emulateMedia({ media: 'print' })
  const headings = 'main :is(h1, h2, h3, h4, caption:not(.hidden-text)):not(#filter-result *)'
  const marks = await mark(page, `${headings}, ${MATTER}`)
  const seen = await page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('[id^="mark-"]')]
      .filter((one) => one.matches('h1, h2, h3, h4, caption'))
      .map((one) => ({ text: one.textContent, place: Number(one.id.slice(5)) })),
  )
  const printed: Printed[] = []
  for (const format of FORMATS) {
    const pdf = await page.pdf({ format })
    const places = placesIn(pdf)
    const sheetOf = (place: number) => places.get(`mark-${place}`)?.sheet
    printed.push({ path, format, sheets: sheetsOf(pdf), sheetOf, marks, headings: seen })
  }
  await page.context().close()
  return printed
}

describe('a certificate in print', () => {
  it('takes two pages at most on A4 and Letter without the annex, for the thirty longest', async () => {
    const tooLong = await eachPage(longestCertificates().slice(0, 30), async (id) => {
      const page = await demo.open(`lots/${id}/`)
      const found: string[] = []
      for (const format of FORMATS) {
        const { length } = sheetsOf(await page.pdf({ format }))
        if (2 < length || length === 0) found.push(`${id} ${format}: ${length} pages`)
      }
      await page.context().close()
      return found
    })
    expect(tooLong.flat()).toEqual([])
  }, 180_000)

  it('leaves neither signature nor address alone on a sheet, with the annex of readings and without', async () => {
    const ids = longestCertificates().filter((_, place) => place % 20 === 0)
    const alone = await eachPage(ids, async (id) => {
      const found: string[] = []
      for (const annex of [false, true]) {
        const page = await demo.open(`lots/${id}/`)
        if (annex) await page.check('#print-readings')
        await page.emulateMedia({ media: 'print' })
        const rest = await mark(page, 'article :is(tbody tr tr, .facts, .mortars p, .closing), .permanent')
        for (const format of FORMATS) {
          const places = placesIn(await page.pdf({ format }))
          const sheetOf = (place: number) => places.get(`mark-${place}`)?.sheet
          const [address, signature] = [sheetOf(rest - 1), sheetOf(rest - 2)]
          expect(signature).toBeGreaterThan(0)
          if (address !== signature || sheetOf(rest - 4) !== signature)
            found.push(`${id} ${format}, ${annex ? 'with' : 'without'} annex`)
        }
        await page.context().close()
      }
      return found
    })
    expect(alone.flat()).toEqual([])
  }, 180_000)
})

/** The working of a lot, and a page of one year, state the day of the records only where something of their lots is awaited. */
function isDated(edition: Edition, path: string): boolean {
  const lots = lotsOn(edition, path)
  return lots === undefined || lots.some((id) => (edition.lots.get(id)?.awaited.length ?? 0) > 0)
}

/** Lots that a page of one lot, or of one year, is about; undefined for any other page. */
function lotsOn(edition: Edition, path: string): string[] | undefined {
  const own = [...edition.lots.keys()].find((id) => path.startsWith(paths.certificate(id)))
  if (own !== undefined) return [own]
  const [, kind, source = '', year = ''] = /^(register|shipments)\/([^/]+)\/(\d{4})\/$/.exec(path) ?? []
  const isOf = ({ text }: Moment) => text.startsWith(year)
  if (kind === 'register')
    return edition.lotsOf(source).flatMap(({ id, sampled }) => (isOf(sampled) ? [id] : []))
  if (kind === 'shipments')
    return edition.shipmentsOf(source).flatMap((shipment) => (isOf(shipment.date) ? shipment.lots : []))
  return undefined
}

describe('a page of another kind in print', () => {
  const printed: Printed[] = []
  beforeAll(async () => {
    printed.push(...(await eachPage(otherKinds(), printedPage)).flat())
  }, 240_000)

  it('says on every sheet whose it is, of which day where that matters, where it is found, which it is, and who decides', () => {
    const { edition, url } = demo.site
    const asOf = plainSpaces(`Records as of ${date(edition.asOf)}`)
    for (const { path, format, sheets } of printed)
      for (const [place, sheet] of sheets.entries()) {
        const wanted = [
          edition.site.title,
          ...(isDated(edition, path) ? [asOf] : []),
          `page ${place + 1} of ${sheets.length}`,
          'a licensed engineer',
          new URL(path, url).pathname,
        ]
        const missing = wanted.filter((text) => !sheet.includes(text))
        expect({ path, format, place, missing }).toEqual({ path, format, place, missing: [] })
        expect([path, sheet.includes('Records as of')]).toEqual([path, isDated(edition, path)])
      }
    expect(printed.length).toBeGreaterThan(50)
  })

  it('parts no heading from what follows it, on A4 and Letter', () => {
    const parted: string[] = []
    for (const { path, format, sheetOf, marks, headings } of printed) {
      expect(sheetOf(0)).toBe(1)
      for (const { text, place } of headings)
        if (place + 1 < marks && sheetOf(place + 1) !== sheetOf(place))
          parted.push(`${path} ${format}: ${text.trim()}`)
    }
    expect(parted).toEqual([])
  })

  it('has nothing wider than the sheet', async () => {
    // 14 mm at each side of 210 mm, at 96 points an inch; Letter is wider.
    const viewport = { width: 688, height: 900 }
    const kinds = kindsOfPage(demo.site.edition)
    const widths = await eachPage(kinds, async (path) => {
      const page = await demo.open(path, { viewport })
      await page.emulateMedia({ media: 'print' })
      const width = await page.evaluate(() => document.documentElement.scrollWidth)
      await page.context().close()
      return { path, width }
    })
    expect(widths).toEqual(kinds.map((path) => ({ path, width: 688 })))
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

describe('a row of dots', () => {
  it('stands beside its name, on screen and on paper', async () => {
    const { studies, study: entry } = demo.site.edition
    const study = [...studies.values()].find(({ id, kind }) => kind === 'screening' && 0 < entry(id).readings)
    const page = await demo.open(`studies/${study?.id}/`)
    for (const media of ['screen', 'print'] as const) {
      await page.emulateMedia({ media })
      const off = await page.evaluate(() =>
        [...document.querySelectorAll('.dot-rows')].flatMap((chart) => {
          const top = chart.querySelector('svg.fluid')?.getBoundingClientRect().top ?? 0
          // Reactive materials lie in the upper of three lanes of 12 px, so that a row's middle is a lane below.
          const reactive = [...chart.querySelectorAll('use[href="#dot-disc"], use[href="#dot-up"]')]
          const middles = reactive.map((dot) => top + Number(dot.parentElement?.getAttribute('y')) + 12)
          const rows = [...new Set(middles)].sort((a, b) => a - b)
          return [...(chart.querySelector('.dot-names')?.children ?? [])].map((name, place) => {
            const { top: from, bottom } = name.getBoundingClientRect()
            return Math.abs((from + bottom) / 2 - (rows[place] ?? 0))
          })
        }),
      )
      expect(off.length).toBeGreaterThan(10)
      expect(Math.max(...off), media).toBeLessThan(6)
    }
    await page.context().close()
  })
})
