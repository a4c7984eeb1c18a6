import { describe, expect, it } from 'vitest'
import { textOf } from './built-site.ts'
import { siteInBrowser } from './site-in-browser.ts'

const demo = siteInBrowser('load')

describe('a certificate in print', () => {
  it('takes two pages at most on A4 and Letter without the annex, for the thirty longest', async () => {
    const page = await demo.open('')
    const tooLong: string[] = []
    const byLength = [...demo.site.edition.lots.values()]
      .map((lot) => ({ lot, length: textOf(demo.site.folder, `lots/${lot.id}/index.html`).length }))
      .sort((a, b) => b.length - a.length)
    for (const { lot } of byLength.slice(0, 30)) {
      await page.goto(`${demo.site.url}lots/${lot.id}/`)
      for (const format of ['A4', 'Letter'] as const) {
        const pdf = await page.pdf({ format })
        const pages = (pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g) ?? []).length
        if (2 < pages || pages === 0) tooLong.push(`${lot.id} ${format}: ${pages} pages`)
      }
    }
    expect(tooLong).toEqual([])
  }, 400_000)
})
