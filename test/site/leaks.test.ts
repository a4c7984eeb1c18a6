/** What a site does not publish is in no file of its output: searched for, byte by byte. */
import { mkdtempSync, readdirSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, relative } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { buildSite } from '../../src/commands/build-site.ts'
import { loadRecords } from '../../src/records/load.ts'
import { parquetTexts } from '../edition/in-duckdb.ts'
import { DRAFT, FORMER, PENDING, writeFixtureContent } from './fixture-content.ts'

/** A number that no other text holds, for a silo of each lot. */
const SEAL = 'SL-770219'
const SITE_SEALS = `seals: [${SEAL}]\n`
/** Stands in every lot, issued or not. */
const ORDER = 'Zzhidden 4500-1'

/** What a source's record holds of its own: every text that is to be withheld begins alike. */
const HIDDEN = 'Zzhidden'
const CONTACTS =
  'telephone: +1 555 0100\nmail: office@tarn.example\nletterhead: [Tarn Hollow, "“over the water”"]\n'
const SOURCE_SECRETS = `shipments:
  - { bill: BL-88999, date: 2026-02-20, mass: 25 t, lots: [TH-010, TH-011], from: Tarn terminal, to: ${HIDDEN} Mix, project: ${HIDDEN} Dam, purchase-order: ${HIDDEN} 4500-2, seal: ${HIDDEN}-1, vehicle: ${HIDDEN}-2 }
answers:
  - { finding: number-gap/tarn-hollow-tuff/TH-000, date: 2026-02-21, by: ${HIDDEN} Person, answer: ${HIDDEN} answer, told: [{ who: ${HIDDEN} Board, on: 2026-02-22 }] }
verification-plan:
  - { kind: split, from: 2026-01-01, to: 2026-03-31, planned: 4, sampler: ${HIDDEN} Sampler }
`

/** The set that the withheld project asks for, which no list names. */
const OF_PROJECT = 'c618-19'
const PROJECTS = `projects: [{ name: ${HIDDEN} Dam, criteria: [{ set: ${OF_PROJECT} }] }]\n`

/** Figures that no other text holds: an agency's, written among the producer's, on the split that each lot has. */
const AGENCYS = ['7.7713', '9.5517', 'ZZ-ROADS-C', '88.8871']
const agencysAnalysis = `  - { laboratory: roads-authority, sample: S, tested: 2026-03-25, results: { loss-on-ignition: ${AGENCYS[0]} %, SO3: ${AGENCYS[1]} % } }
`
const agencysTest = `  - sample: S
    condition: c311
    control: ${AGENCYS[2]}
    laboratory: roads-authority
    cast: 2026-03-11T10:40
    strength:
      - { age: 7 d, tested: 2026-03-18T10:40, specimens: { a: ${AGENCYS[3]} kN, b: 87.9 kN, c: 88.4 kN } }
      - { age: 28 d }
`

/** The newest lot alone, so that nothing of the others changes. */
function withAgencys(text: string): string {
  return text
    .replace('tests:\n', `${agencysAnalysis}tests:\n`)
    .replace('shipments:\n', `${agencysTest}shipments:\n`)
}

function prepared(publish: string, drafts = 'no') {
  return writeFixtureContent((texts) => {
    for (const [path, whole] of [...texts]) {
      let text = whole
      if (path === 'site.yaml')
        texts.set(
          path,
          `${text.replace(/publish: .*/, `publish: [${publish}]`).replace('drafts: yes', `drafts: ${drafts}`)}${PROJECTS}`,
        )
      if (path === 'sources/tarn-hollow-tuff.yaml') texts.set(path, `${text}${SOURCE_SECRETS}`)
      if (path.startsWith('producers/')) texts.set(path, `${text}${CONTACTS}`)
      if (path === `controls/NQ-2026-03-C.yaml`)
        texts.set(`controls/${AGENCYS[2]}.yaml`, text.replace('north-quay', 'roads-authority'))
      if (path === `lots/${PENDING}.yaml`) text = withAgencys(text)
      if (path.startsWith('lots/')) texts.set(path, `${SITE_SEALS}purchase-order: ${ORDER}\n${text}`)
    }
  })
}

async function built(content: string, audience: 'public' | 'internal'): Promise<Map<string, string>> {
  const { records, diagnostics } = loadRecords(content)
  expect(diagnostics).toEqual([])
  const { folder } = await buildSite(records, {
    out: join(mkdtempSync(join(tmpdir(), 'site-')), 'out'),
    audience,
  })
  const bytes = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .map((path) => [relative(folder, path), readFileSync(path, 'latin1')] as const)
  // What a table holds is compressed in its file: searched as text, too.
  const tables = await parquetTexts(folder)
  expect(tables.size).toBeGreaterThan(0)
  return new Map(bytes.map(([path, text]) => [path, `${text}${tables.get(path) ?? ''}`]))
}

/** A number counts where it stands whole: any digits occur somewhere within an unrounded figure. */
const holding = (files: ReadonlyMap<string, string>, text: string) => {
  const number = /^\d+$/.test(text) ? new RegExp(`(?<!\\d)${text}(?!\\d)`) : null
  const holds = (bytes: string) => (number === null ? bytes.includes(text) : number.test(bytes))
  return [...files].filter(([path, bytes]) => holds(path) || holds(bytes)).map(([path]) => path)
}

const PERSONS = ['M. Okafor', 'J. Brandt']
const SHIPPED = ['Quellan Mix', 'Varrow Bridge', '44871', '44902']
/** Each has a page of its own. */
const LOTS = 14
/** The draft by id, its bills of lading, and the controls that nothing else was tested against. */
const OF_DRAFT = [DRAFT, 'TH-011', 'BL-88211', 'BL-88311', 'NQ-2025-12-W', 'NQ-2025-12-C']

describe('a public site that publishes nothing by name', () => {
  let files: Map<string, string>
  beforeAll(async () => {
    files = await built(prepared(''), 'public')
  })

  it.each([...PERSONS, ...SHIPPED, SEAL, ...OF_DRAFT])('holds %s in no file', (text) => {
    expect(holding(files, text)).toEqual([])
  })
  it('tells of a shipment that may be of the draft, and holds nothing withheld of the source’s record', () => {
    expect(holding(files, 'BL-88999')).not.toEqual([])
    expect(holding(files, HIDDEN)).toEqual([])
  })
  it('holds no verification and no finding', () => {
    expect(holding(files, '"verification":[{')).toEqual([])
    expect(holding(files, 'changed-after-issue/')).toEqual([])
  })
  it.each(AGENCYS)('holds %s, an agency’s that the record lists among the producer’s, in no file', (text) => {
    expect(holding(files, text)).toEqual([])
  })
  it('gives no result to an agency’s laboratory, in no table', () => {
    const tables = [...files].filter(([path]) => /results.*\.(csv|parquet)$/.test(path))
    expect(tables.length).toBeGreaterThan(1)
    for (const [path, text] of tables) expect(text, path).not.toContain('roads-authority')
  })
  it('judges no lot under a set that only its project asks for', () => {
    const data = files.get('data/lots/tarn-hollow-tuff/TH-010.json') ?? ''
    expect(data).toContain('"criterion":"c618-12a"')
    expect(data).not.toContain(`"criterion":"${OF_PROJECT}"`)
  })
  it('prints the producer’s letterhead, and telephone and mail as links of our own making', () => {
    const page = files.get('lots/tarn-hollow-tuff/TH-013/index.html') ?? ''
    expect(page).toContain('href="tel:+15550100"')
    expect(page).toContain('href="mailto:office@tarn.example"')
    expect(page).toMatch(/class="letterhead"[^>]*><p[^>]*>Tarn Hollow</)
  })
  it('is marked in no way as internal, and has its feed and its sitemap', () => {
    expect(holding(files, 'Internal edition')).toEqual([])
    expect(files.has('feed.xml')).toBe(true)
    expect(files.has('sitemap.xml')).toBe(true)
    expect(files.get('index.html')).not.toContain('noindex')
    expect(files.get('index.html')).toContain('application/atom+xml')
  })
  it('still counts the draft among the results before a lot, without its name', () => {
    const later = files.get('data/lots/tarn-hollow-tuff/TH-013.json') ?? ''
    expect(later).toContain('a lot not yet issued')
    expect(later).toContain('tarn-hollow-tuff/TH-010')
  })
})

describe('an internal site', () => {
  let files: Map<string, string>
  beforeAll(async () => {
    files = await built(prepared(''), 'internal')
  })
  const pages = () => [...files].filter(([path]) => path.endsWith('.html'))

  it('holds all of it, so that the search above can find something', () => {
    for (const text of [...PERSONS, ...SHIPPED, SEAL, ORDER, ...OF_DRAFT])
      expect(holding(files, text).length, text).toBeGreaterThan(0)
    for (const text of [...AGENCYS, `verification`])
      expect(holding(files, text).length, text).toBeGreaterThan(0)
    for (const text of [...SHIPPED, DRAFT])
      expect(
        holding(files, text).some((path) => path.endsWith('.parquet')),
        text,
      ).toBe(true)
  })
  it('judges a lot under the set that its project asks for', () => {
    const data = files.get('data/lots/tarn-hollow-tuff/TH-010.json') ?? ''
    expect(data).toContain(`"criterion":"${OF_PROJECT}"`)
  })
  it('says on every page that it is internal, and asks not to be indexed; the addresses of former ids ask the same', () => {
    expect(pages().length).toBeGreaterThan(LOTS)
    const isMoved = (html: string) => html.includes('http-equiv="refresh"')
    for (const [path, html] of pages()) {
      expect(html, path).toContain('content="noindex')
      if (!isMoved(html)) expect(html, path).toContain('Internal edition: it holds what is not published.')
    }
    const moved = pages().filter(([, html]) => isMoved(html))
    expect(moved.length).toBeGreaterThan(0)
    for (const [path] of moved) expect(path).toContain(FORMER)
  })
  it('has no sitemap and no feed, and links to none', () => {
    expect([...files.keys()].filter((path) => /sitemap|feed\.xml|robots\.txt/.test(path))).toEqual([])
    for (const [path, html] of pages()) expect(html, path).not.toContain('application/atom+xml')
  })
})
