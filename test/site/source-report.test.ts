import { describe, expect, it } from 'vitest'
import { textOf } from './built-site.ts'
import { siteInBrowser } from './site-in-browser.ts'

const demo = siteInBrowser('load')

const pagesIn = (pdf: Buffer) => (pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g) ?? []).length

describe('the report on a source', () => {
  it('prints on A4 and Letter with nothing wider than the paper', async () => {
    const [source = ''] = demo.site.edition.sources.keys()
    const page = await demo.open(`sources/${source}/report/`)
    for (const [format, width] of [
      ['A4', 695],
      ['Letter', 717],
    ] as const) {
      expect(pagesIn(await page.pdf({ format })), format).toBeGreaterThan(1)
      await page.emulateMedia({ media: 'print' })
      await page.setViewportSize({ width, height: 900 })
      // 13 mm at each side of 210 and 215.9 mm, at 96 points an inch.
      expect(await page.evaluate(() => document.documentElement.scrollWidth), format).toBeLessThanOrEqual(
        width,
      )
    }
  }, 60_000)

  it('has lines to sign on, what it is not, and nothing folded', async () => {
    for (const [id] of demo.site.edition.sources) {
      const html = textOf(demo.site.folder, `sources/${id}/report/index.html`)
      expect(html).toContain('<dt>Signature</dt><dd></dd>')
      expect(html).toContain('Acceptance is the agency’s')
      // The rows behind a chart stay folded: the table of lots has them all.
      expect(html.replaceAll('<details class="panel-rows"', '')).not.toContain('<details')
      expect(html).toContain(`/sources/${id}/print.css`)
    }
  })

  it('says in the margins whose pages they are, and of which date', async () => {
    const [[id, { name }] = ['', { name: '' }]] = demo.site.edition.sources
    const page = await demo.open(`sources/${id}/report/`)
    const margins = await page.evaluate(() =>
      [...document.styleSheets]
        .flatMap((sheet) => [...sheet.cssRules].map((rule) => rule.cssText))
        .join('\n'),
    )
    expect(margins).toContain(name)
    expect(margins).toContain('Compares records; decides nothing.')
  })
})
