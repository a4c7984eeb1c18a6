import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { outcomeMark } from '../../src/charts/outcome-mark.ts'
import { buildSite } from '../../src/commands/build-site.ts'
import { loadRecords } from '../../src/records/load.ts'
import { everyMark } from '../../src/words/standing.ts'
import { served, textOf } from './built-site.ts'
import {
  DRAFT,
  FORMER,
  PENDING,
  READ_HOT,
  REVISED,
  WITHDRAWN,
  writeFixtureContent,
} from './fixture-content.ts'
import { sharedBrowser } from './site-in-browser.ts'

let folder: string
let url: string
let browser: Browser

beforeAll(async () => {
  const { records } = loadRecords(writeFixtureContent())
  const built = await buildSite(records, {
    out: join(mkdtempSync(join(tmpdir(), 'site-')), 'out'),
    audience: 'public',
  })
  folder = built.folder
  url = await served(folder)
  browser = await sharedBrowser()
})

afterAll(async () => {
  for (const context of browser?.contexts() ?? []) await context.close()
})

/** Visible text of a page with plain spaces. */
async function textOfPage(path: string): Promise<string> {
  const page = await open(path)
  // biome-ignore lint/performance/useDomNodeTextContent: the text as laid out is what a reader sees
  const text = (await page.locator('main').innerText()).replace(/[\s\u00a0\u2009]+/g, ' ')
  await page.context().close()
  return text
}

async function open(path: string): Promise<Page> {
  const context = await browser.newContext()
  const page = await context.newPage()
  await page.goto(url + path)
  return page
}

/** Number of printed pages. */
async function printed(page: Page, format: 'A4' | 'Letter'): Promise<number> {
  const pdf = await page.pdf({ format })
  return (pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g) ?? []).length
}

describe('a certificate page', () => {
  it('carries number, revision, state, dates, reason and what it replaces', async () => {
    const text = await textOfPage(`lots/${PENDING}/`)
    for (const part of [
      PENDING,
      'provisional',
      '8 April 2026',
      'revision 0 of 20 March 2026',
      '28-day results added',
      `End of certificate ${PENDING}, revision 1`,
    ])
      expect(text).toContain(part)
  })
  it('names producer, material, production, quantity, sample, laboratory and mortars', async () => {
    const text = await textOfPage(`lots/${PENDING}/`)
    for (const part of [
      'Tarn Hollow Pozzolans, Mill Lane 2',
      'raw natural pozzolan, class N of ASTM C618, edition 12a',
      '2 to 8 March 2026',
      '1450 t (1598 short tons)',
      'mill discharge to silo S2',
      '28 increments, 6 kg',
      'automatic cutter; J. Brandt',
      'North Quay laboratory',
      'L-114',
      'flow 108 % (control 104 %)',
      'cement lot PC-2026-A',
      'Excluded test specimen f (strength, 7 d): corner lost in demoulding',
    ])
      expect(text).toContain(part)
  })
  it('says "not recorded" where the record lacks a particular', async () => {
    expect(await textOfPage(`lots/${PENDING}/`)).toContain('Safety data sheet not recorded')
  })
  it('shows the due date of a pending test and marks results outside the scope', async () => {
    const text = await textOfPage(`lots/${PENDING}/`)
    expect(text).toContain('pending, due 8 Apr 2026')
    expect(text).toContain('not accredited')
  })
  it('prints an index at another condition together with that condition', async () => {
    expect(await textOfPage(`lots/${PENDING}/`)).toContain(
      'Resistivity index, modified (50 %, 50 °C, w/cm 0.485), 28 d',
    )
  })
  it('signs with a typed name and says what that is worth', async () => {
    const text = await textOfPage(`lots/${PENDING}/`)
    expect(text).toContain(
      'M. Okafor quality manager, independent of production; 8 April 2026 Typed name, not a qualified signature.',
    )
    expect(text).toContain('sha256-')
  })
  it('shows a test that is not valid with its figure and the reason', async () => {
    const text = await textOfPage(`lots/${READ_HOT}/`)
    expect(text).toContain('not valid')
    expect(text).toContain('Read at 48.5 °C, outside 23 °C ± 2 °C')
  })
  it('keeps shipments apart from the certificate, without consignees that are not published', async () => {
    const text = await textOfPage(`lots/${PENDING}/`)
    expect(text).toContain('2 shipments, 49.9 t')
    expect(text).not.toContain('Quellan Mix')
  })
  it('has an address in full and a QR code only where the site has one', () => {
    expect(textOf(folder, `lots/${PENDING}/index.html`)).toContain(
      `href="https://example.org/a/b/lots/${PENDING}/"`,
    )
    expect(textOf(folder, `lots/${PENDING}/index.html`)).toContain('QR code of this certificate')
  })
  it('holds text of records escaped, never as markup', () => {
    expect(textOf(folder, `lots/${PENDING}/index.html`)).toContain('&lt; 0.01'.replace(' ', '\u00a0'))
  })
})

describe('the states of a certificate', () => {
  it('warn over a withdrawn one and name its replacement', async () => {
    const text = await textOfPage(`lots/${WITHDRAWN}/`)
    expect(text).toContain(
      'Withdrawn on 3 April 2026. Sample mixed up in the laboratory. Replaced by TH-013.',
    )
    expect(text).toContain('This certificate is withdrawn; the verdict below no longer applies')
    expect(text).toMatch(/Withdrawn; was: meets \S+/)
  })
  it('keep an earlier revision at its address and point to the one in force', async () => {
    const text = await textOfPage(`lots/${REVISED}/revision/0/`)
    expect(text).toContain('Superseded by revision 2 of 2 April 2026.')
    expect(text).toContain(`End of certificate ${REVISED}, revision 0`)
  })
  it('lead on from an earlier id of the lot, with its revisions, and do not call that a change', async () => {
    for (const path of [`lots/${FORMER}/`, `lots/${FORMER}/revision/0/`]) {
      const page = await open(path)
      await page.waitForURL(`**/lots/${REVISED}/`)
      await page.context().close()
      expect(textOf(folder, `${path}index.html`)).toContain(`href="/a/b/lots/${REVISED}/"`)
    }
    expect(textOf(folder, 'sitemap.xml')).toContain(`/lots/${REVISED}/</loc>`)
    expect(textOf(folder, 'sitemap.xml')).not.toContain('/lots/hollow/')
    expect(textOf(folder, 'sitemap.xml')).not.toContain('/revision/')
    expect(JSON.parse(textOf(folder, 'data/index.json')).formerly).toEqual({ [FORMER]: 12 })
  })
  it('say of a draft that it was never issued', async () => {
    const text = await textOfPage(`lots/${DRAFT}/`)
    expect(text).toContain('Draft. No certificate of this lot has been issued')
    expect(text).toContain('carries no signature')
  })
})

describe('a certificate in print', () => {
  it('takes two pages without the readings and more with it, without a script', async () => {
    const context = await browser.newContext({ javaScriptEnabled: false })
    const page = await context.newPage()
    await page.goto(`${url}lots/${PENDING}/`)
    expect({ A4: await printed(page, 'A4'), Letter: await printed(page, 'Letter') }).toEqual({
      A4: 2,
      Letter: 2,
    })
    await page.locator('#print-readings').check()
    expect(await printed(page, 'A4')).toBeGreaterThan(2)
    await context.close()
  })
  it('repeats number and revision at the head of the sheet and leaves navigation and today out', async () => {
    const page = await open(`lots/${PENDING}/`)
    await page.emulateMedia({ media: 'print' })
    await expect(page.locator('.running').textContent()).resolves.toContain(
      `certificate ${PENDING}, revision 1`,
    )
    expect(await page.locator('.sheet > thead').evaluate((head) => getComputedStyle(head).display)).toBe(
      'table-header-group',
    )
    expect(await page.locator('nav').isVisible()).toBe(false)
    expect(await page.locator('.today').isVisible()).toBe(false)
    await page.context().close()
  })
})

describe('outcome marks', () => {
  it('differ in shape for every outcome and for what is no outcome in force, so that grey tells them apart', () => {
    const shapes = everyMark().map((mark) => JSON.stringify(outcomeMark(mark)))
    expect(shapes).not.toContain(undefined)
    expect(new Set(shapes).size).toBe(shapes.length)
  })
})

describe('the front page', () => {
  it('shows each source with last verdict, result against limit and open findings, and the newest certificates', async () => {
    const text = await textOfPage('')
    for (const part of [
      'Tarn Hollow tuff',
      'Pending',
      'ASTM C618, edition 12a, class N',
      '≥ 75 %',
      // The lots are copies of one but for a few readings, which the checks ask about.
      '14 lots; 26 open questions',
      'TH-013',
      '2 Apr 2026, revision 2',
    ])
      expect(text).toContain(part)
  })
  it('looks up by a plain form', () => {
    expect(textOf(folder, 'index.html')).toMatch(/<form[^>]*action="\/a\/b\/look-up\/"[^>]*method="get"/)
  })
})

describe('method pages', () => {
  it('render Markdown from the content folder, wherever it lies', () => {
    const html = textOf(folder, 'methods/reading/index.html')
    expect(html).toContain('<strong>full circle</strong>')
    expect(html).toContain('<code>code</code>')
    // Braces stand in a code block as they were written; anywhere else loading refuses them, since they could
    // run.
    expect(html).toMatch(/<pre[^>]*><code[^>]*>\{ 1 \+ 1 \}\n?<\/code><\/pre>/)
  })
  it('are listed with their summaries', async () => {
    expect(await textOfPage('methods/')).toContain('Reading a certificate What a reader finds where.')
  })
})
