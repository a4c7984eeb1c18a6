import { createHash } from 'node:crypto'
import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { HtmlValidate } from 'html-validate'
import { describe, expect, it } from 'vitest'
import { ROOT } from '../../src/commands/program.ts'
import { lotColumns } from '../../src/edition/writers/columns.ts'
import { loadRecords } from '../../src/records/load.ts'

import { buildDemo, filesOf, textOf } from './built-site.ts'
import { kindsOfPage } from './kinds-of-page.ts'
import { linksOf } from './links.ts'
import { siteInBrowser } from './site-in-browser.ts'

const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; connect-src 'self'; img-src 'self' data: blob:; base-uri 'none'; form-action 'self'"

const demo = siteInBrowser('load')

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

  it('has no broken link or anchor under the sub-path, and each page can be reached from the front page', () => {
    const { broken, links, unreached } = linksOf(demo.site.folder, '/a/b/')
    expect(broken).toEqual([])
    expect(links).toBeGreaterThan(10_000)
    const leadsOn = (path: string) => textOf(demo.site.folder, path).includes('http-equiv="refresh"')
    expect(unreached.filter((path) => !leadsOn(path))).toEqual(['404.html'])
  })

  it('is searched for links by a walk that tells what leads nowhere', () => {
    const folder = mkdtempSync(join(tmpdir(), 'links-'))
    mkdirSync(join(folder, 'lots'))
    writeFileSync(
      join(folder, 'index.html'),
      '<a href="/a/b/lots/"><a href="/a/b/lots/?q=1#two"><a href="/a/lots/">',
    )
    writeFileSync(
      join(folder, 'lots/index.html'),
      '<p id="one"><a href="#one"><a href="../#none"><a href="https://example.org/"><img src="gone.png">',
    )
    expect(linksOf(folder, '/a/b/')).toEqual({
      links: 6,
      broken: [
        'index.html -> /a/b/lots/?q=1#two',
        'index.html -> /a/lots/',
        'lots/index.html -> ../#none',
        'lots/index.html -> gone.png',
      ],
      unreached: [],
    })
  })

  it('is reachable by links alone, every lot', async () => {
    const linked = new Set<string>()
    for (const path of filesOf(demo.site.folder).filter((name) => /^register\/.+\/index\.html$/.test(name)))
      for (const match of textOf(demo.site.folder, path).matchAll(/href="\/a\/b\/lots\/([^"/]+\/[^"/]+)\/"/g))
        linked.add(match[1] ?? '')
    expect([...demo.site.edition.lots.keys()].filter((id) => !linked.has(id))).toEqual([])
  })

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
    for (const path of kindsOfPage(demo.site.edition)) {
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
  }, 400_000)
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
