import { describe, expect, it } from 'vitest'
import { textOf } from './built-site.ts'
import { placesIn, sheetsOf } from './pdf-text.ts'
import { siteInBrowser } from './site-in-browser.ts'

const demo = siteInBrowser('load')

describe('the report on a source', () => {
  it('prints forty lots on nine sheets at most, and the lines to sign on below something else', async () => {
    const sources = [...demo.site.edition.sources.keys()]
    const [largest = ''] = sources.sort(
      (a, b) => demo.site.edition.lotsOf(b).length - demo.site.edition.lotsOf(a).length,
    )
    const page = await demo.open(`sources/${largest}/report/`)
    await page.evaluate(() => {
      const links = ['actions', 'signature'].map((id) => {
        const link = document.createElement('a')
        link.href = `#${id}`
        return link
      })
      document.body.append(...links)
    })
    for (const format of ['A4', 'Letter'] as const) {
      const pdf = await page.pdf({ format })
      expect(sheetsOf(pdf).length, format).toBeLessThanOrEqual(9)
      const places = placesIn(pdf)
      expect(places.get('signature')?.sheet, format).toBeGreaterThan(1)
      expect(places.get('actions')?.sheet, format).toBe(places.get('signature')?.sheet)
    }
  }, 60_000)

  it('has lines to sign on, what it is not, and nothing folded', async () => {
    for (const [id] of demo.site.edition.sources) {
      const html = textOf(demo.site.folder, `sources/${id}/report/index.html`)
      for (const line of ['Name', 'Licence number', 'Signature', 'Date'])
        expect(html).toContain(`<dt>${line}</dt><dd></dd>`)
      expect(html).toContain('Acceptance is the agency’s')
      // The rows behind a chart stay folded: the table of lots has them all.
      expect(html.replaceAll('<details class="chart-table"', '')).not.toContain('<details')
    }
  })

  it('lists its lots without scrolling sideways at 1440 px', async () => {
    for (const [id] of demo.site.edition.sources) {
      const page = await demo.open(`sources/${id}/report/`, { viewport: { width: 1440, height: 900 } })
      // On a busy machine its fonts come too late for a first visit, which is set in others then.
      const ready = () => page.evaluate(() => document.fonts.ready.then(() => undefined))
      await ready()
      await page.reload()
      await ready()
      const over = await page.evaluate(() =>
        [...document.querySelectorAll('.table-wrap')]
          .filter((one) => one.clientWidth < one.scrollWidth)
          .map((one) => one.getAttribute('aria-label')),
      )
      expect({ id, over }).toEqual({ id, over: [] })
      await page.context().close()
    }
  }, 60_000)
})
