import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import AxeBuilder from '@axe-core/playwright'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { HtmlValidate } from 'html-validate'
import { LinkChecker } from 'linkinator'
import { describe, expect, it } from 'vitest'
import { ROOT } from '../../src/commands/program.ts'
import { lotColumns } from '../../src/edition/writers/columns.ts'
import { loadRecords } from '../../src/records/load.ts'

import { buildDemo, filesOf, textOf } from './built-site.ts'
import { siteInBrowser } from './site-in-browser.ts'

const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; connect-src 'self'; img-src 'self' data: blob:; base-uri 'none'; form-action 'self'"

const demo = siteInBrowser('load')

/** One page of each kind, by path. */
function kindsOfPage(): string[] {
  const lots = [...demo.site.edition.lots.values()]
  const byState = ['provisional', 'complete', 'withdrawn']
    .map((state) => lots.find((lot) => lot.state === state)?.id)
    .filter((id) => id !== undefined)
  const revised = lots.find((lot) => lot.earlier.length > 0)
  const [source, entry] = [...demo.site.edition.sources][0] ?? []
  const firstLot = lots[0]
  return [
    '',
    'register/',
    'shipments/',
    'sources/',
    'criteria/',
    'laboratories/',
    'conditions/',
    'methods/',
    'findings/',
    'look-up/',
    '404.html',
    ...byState.map((id) => `lots/${id}/`),
    `lots/${revised?.id}/revision/0/`,
    `sources/${source}/`,
    `sources/${source}/${entry?.criteria[0]}/`,
    `register/${firstLot?.source}/${firstLot?.sampled.text.slice(0, 4)}/`,
    ...['c618-12a', 'high-fell-viaduct', 'en450-1-2012'].map((id) => `criteria/${id}/`),
    'comparison/',
    'limits/',
    'limits/strength-activity-index/',
    'routes/',
    ...[...demo.site.edition.laboratories.keys()].slice(0, 1).map((id) => `laboratories/${id}/`),
    ...demo.site.edition.methods.slice(0, 1).map((method) => `methods/${method.id}/`),
  ]
}

describe('the built site', () => {
  it('has a certificate page, a revision page for each earlier revision and a data file for every lot', () => {
    const files = new Set(filesOf(demo.site.folder))
    for (const lot of demo.site.edition.lots.values()) {
      expect(files).toContain(`lots/${lot.id}/index.html`)
      expect(files).toContain(`data/lots/${lot.id}.json`)
      for (const number of lot.earlier)
        expect(files).toContain(`lots/${lot.id}/revision/${number}/index.html`)
    }
    expect(demo.site.edition.lots.size).toBeGreaterThanOrEqual(150)
  })

  it('names the invented data and the policy first in head on every page', () => {
    const pages = filesOf(demo.site.folder).filter((path) => path.endsWith('.html'))
    for (const path of pages) {
      const html = textOf(demo.site.folder, path)
      expect(html.toLowerCase(), path).toContain('invented example data')
      expect(html.replaceAll('&#39;', "'"), path).toMatch(
        /<head>\s*<meta http-equiv="Content-Security-Policy"/i,
      )
      expect(html.replaceAll('&#39;', "'"), path).toContain(`content="${POLICY}"`)
    }
    expect(pages.length).toBeGreaterThan(300)
  })

  it('holds no inline style, style attribute or inline script', () => {
    for (const path of filesOf(demo.site.folder).filter((name) => name.endsWith('.html'))) {
      const html = textOf(demo.site.folder, path)
      expect(html, path).not.toMatch(/<style[\s>]|\sstyle="|<script(?![^>]*\ssrc=)[^>]*>/)
    }
  })

  it('has no broken link or anchor under the sub-path', async () => {
    const result = await new LinkChecker().check({
      path: demo.site.url,
      recurse: true,
      checkFragments: true,
      concurrency: 40,
      linksToSkip: async (link) => !link.startsWith(demo.site.url),
    })
    expect(
      result.links.filter((link) => link.state === 'BROKEN').map((link) => `${link.parent} -> ${link.url}`),
    ).toEqual([])
    expect(result.links.filter((link) => link.state === 'OK').length).toBeGreaterThan(300)
  })

  it('is reachable by links alone, every lot', async () => {
    const linked = new Set<string>()
    for (const path of filesOf(demo.site.folder).filter((name) => /^register\/.+\/index\.html$/.test(name)))
      for (const match of textOf(demo.site.folder, path).matchAll(/href="\/a\/b\/lots\/([^"/]+\/[^"/]+)\/"/g))
        linked.add(match[1] ?? '')
    expect([...demo.site.edition.lots.keys()].filter((id) => !linked.has(id))).toEqual([])
  })

  it('asks nothing of another origin and breaks no policy, on one page of each kind', async () => {
    for (const path of kindsOfPage()) {
      const context = await demo.browser.newContext()
      const page = await context.newPage()
      const foreign: string[] = []
      const complaints: string[] = []
      page.on('request', (request) => {
        if (!request.url().startsWith(demo.site.url) && !request.url().startsWith('data:'))
          foreign.push(request.url())
      })
      page.on('console', (message) => {
        if (message.type() === 'error' && !(path === '404.html')) complaints.push(message.text())
      })
      page.on('pageerror', (error) => complaints.push(String(error)))
      await page.goto(demo.site.url + path, { waitUntil: 'networkidle' })
      expect({ path, foreign, complaints }).toEqual({ path, foreign: [], complaints: [] })
      await context.close()
    }
  })

  it.each(['light', 'dark'] as const)(
    'has no finding of the accessibility rules (WCAG 2.2 AA), %s',
    async (colorScheme) => {
      for (const path of kindsOfPage()) {
        const page = await demo.open(path, { colorScheme })
        // Only colours differ in the dark.
        const rules = new AxeBuilder({ page })
        const { violations } = await (colorScheme === 'dark'
          ? rules.withRules(['color-contrast'])
          : rules.withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
        ).analyze()
        expect(
          violations.map(
            (violation) => `${path} (${colorScheme}): ${violation.id}, ${violation.nodes[0]?.html}`,
          ),
        ).toEqual([])
        await page.context().close()
      }
    },
    180_000,
  )

  it('is valid HTML, on one page of each kind', async () => {
    const validator = new HtmlValidate({
      extends: ['html-validate:standard'],
      rules: {
        'void-style': 'off',
        'long-title': 'off',
        'no-trailing-whitespace': 'off',
        'attribute-boolean-style': 'off',
        'attribute-empty-style': 'off',
        'doctype-style': 'off',
      },
    })
    for (const path of kindsOfPage()) {
      const report = await validator.validateString(
        textOf(demo.site.folder, path.endsWith('.html') ? path : `${path}index.html`),
      )
      expect(
        report.results.flatMap((result) =>
          result.messages.map((message) => `${path}:${message.line} ${message.ruleId} ${message.message}`),
        ),
      ).toEqual([])
    }
  })

  it('does not scroll sideways on a phone, nor at the 320 px of WCAG 2.2, 1.4.10, nor on a tablet, on one page of each kind', async () => {
    for (const path of kindsOfPage()) {
      const page = await demo.open(path, { viewport: { width: 390, height: 844 } })
      const overflow = () =>
        page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
      expect({ path, overflow: await overflow() }).toEqual({ path, overflow: 0 })
      for (const width of [320, 768]) {
        await page.setViewportSize({ width, height: 844 })
        expect({ path, width, overflow: await overflow() }).toEqual({ path, width, overflow: 0 })
      }
      await page.context().close()
    }
  })
})

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
  }, 180_000)
})

describe('the look-up', () => {
  it('leads from a bill of lading to its certificate', async () => {
    const shipment = demo.site.edition.shipments.at(-1)
    const page = await demo.open(`look-up/?q=${shipment?.bill}`)
    await page.waitForSelector(`a[href="/a/b/lots/${shipment?.lot}/"]`)
    expect(await page.locator(`a[href="/a/b/lots/${shipment?.lot}/"]`).count()).toBeGreaterThan(0)
  })
  it('leads from a lot number to its certificate', async () => {
    const lot = [...demo.site.edition.lots.values()][0]
    const page = await demo.open(`look-up/?q=${encodeURIComponent(lot?.number ?? '')}`)
    await page.waitForSelector(`a[href="/a/b/lots/${lot?.id}/"]`)
    expect(await page.locator(`a[href="/a/b/lots/${lot?.id}/"]`).count()).toBeGreaterThan(0)
  })
})

describe('what is not published', () => {
  it('is in no file of the output: consignees, projects, seals', () => {
    const { records } = loadRecords(join(ROOT, 'content'))
    const withheld = new Set(
      [...records.lots.values()]
        .flatMap((lot) => [
          ...(lot.shipments ?? []).flatMap((shipment) => [shipment.to, shipment.project, shipment.seal]),
          ...(lot.seals ?? []),
        ])
        .filter((text) => text !== undefined && 4 < text.length) as string[],
    )
    expect(
      records.site.publish?.some((item) => ['consignee', 'project', 'seals'].includes(item)) ?? false,
    ).toBe(false)
    expect(withheld.size).toBeGreaterThan(5)
    // Numbers of seals could stand in a longer number by chance: a whole word is looked for.
    const pattern = new RegExp(
      `(?<![0-9A-Za-z])(?:${[...withheld].map((text) => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')).join('|')})(?![0-9A-Za-z])`,
    )
    const leaks = filesOf(demo.site.folder)
      .filter((path) => /\.(html|json|csv|xml|js|txt)$/.test(path))
      .map((path) => `${path}: ${pattern.exec(textOf(demo.site.folder, path))?.[0] ?? ''}`)
      .filter((line) => !line.endsWith(': '))
    expect(leaks).toEqual([])
  })
})

describe('a build', () => {
  it('gives the same bytes again for the same records', async () => {
    const again = await buildDemo()
    const digest = (folder: string) =>
      new Map(
        filesOf(folder).map((path) => [
          path,
          createHash('sha256')
            .update(readFileSync(join(folder, path)))
            .digest('hex'),
        ]),
      )
    expect(digest(again.folder)).toEqual(digest(demo.site.folder))
  })
})

describe('data/lots', () => {
  it('is as schemas/lot-data.json describes, for every lot', () => {
    const validate = new Ajv2020({ allErrors: true, allowUnionTypes: true, strict: false }).compile(
      JSON.parse(textOf(demo.site.folder, 'schemas/lot-data.json')) as object,
    )
    const faults = [...demo.site.edition.lots.keys()].flatMap((id) =>
      validate(JSON.parse(textOf(demo.site.folder, `data/lots/${id}.json`)))
        ? []
        : [`${id}: ${JSON.stringify(validate.errors)}`],
    )
    expect(faults).toEqual([])
  })
})

describe('data/index.json', () => {
  it('has columns of one length, a row for each lot', () => {
    const { columns } = lotColumns(demo.site.edition) as {
      columns: Record<string, unknown> & {
        outcome: Record<string, unknown[]>
        values: Record<string, unknown[]>
      }
    }
    const lengths = [
      columns['lot'],
      columns['number'],
      columns['source'],
      columns['sampled'],
      columns['issued'],
      columns['state'],
      columns['class'],
      ...Object.values(columns.outcome),
      ...Object.values(columns.values),
    ].map((column) => (column as unknown[]).length)
    expect(new Set(lengths)).toEqual(new Set([demo.site.edition.lots.size]))
  })
})
