/** What an issued certificate prints never changes, whatever the records and the program say today. */
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, relative, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { buildSite } from '../../src/commands/build-site.ts'
import { loadRecords } from '../../src/records/load.ts'
import { DRAFT, writeFixtureContent } from './fixture-content.ts'

const ROOT = resolve(import.meta.dirname, '../..')

/** The article of every certificate and revision, without markup, by path. */
async function articles(content: string): Promise<Map<string, string>> {
  const { folder } = await buildSite(loadRecords(content).records, {
    out: join(mkdtempSync(join(tmpdir(), 'site-')), 'out'),
    audience: 'public',
  })
  const lots = join(folder, 'lots')
  return new Map(
    readdirSync(lots, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.name === 'index.html')
      .map((entry) => join(entry.parentPath, entry.name))
      .flatMap((path) => {
        const article = /<article.*?<\/article>/s.exec(readFileSync(path, 'utf8'))?.[0]
        return article === undefined
          ? []
          : [[relative(lots, path), article.replace(/<[^>]*>/g, '|')] as const]
      }),
  )
}

function edit(content: string, path: string, from: string | RegExp, to: string): void {
  const text = readFileSync(join(content, path), 'utf8')
  expect(text).toMatch(from)
  writeFileSync(join(content, path), text.replace(from, to))
}

describe('the article of an issued certificate', () => {
  it('keeps its text when units, names, conditions, limits and criteria change today', async () => {
    const content = writeFixtureContent()
    const before = await articles(content)
    expect(before.size).toBeGreaterThan(25)
    edit(content, 'site.yaml', 'units: SI', 'units: US')
    edit(content, 'site.yaml', 'title: Varrow Vale register of pozzolans', 'title: Another register')
    edit(content, 'site.yaml', 'notice: Invented example data', 'notice: Another notice')
    edit(content, 'producers/tarn-hollow.yaml', 'name: Tarn Hollow Pozzolans', 'name: Renamed Pozzolans')
    edit(
      content,
      'laboratories/north-quay.yaml',
      'name: North Quay laboratory',
      'name: South Quay laboratory',
    )
    edit(content, 'sources/tarn-hollow-tuff.yaml', 'name: Tarn Hollow tuff', 'name: Renamed tuff')
    edit(content, 'conditions/modified-50c.yaml', /title: .*/, 'title: a renamed condition')
    edit(content, 'criteria/c618-12a.yaml', /title: .*/, 'title: A renamed set')
    edit(content, 'criteria/c618-12a.yaml', /at-most: \d+(\.\d+)? %/, 'at-most: 0.01 %')
    const after = await articles(content)
    const issued = (texts: ReadonlyMap<string, string>) =>
      [...texts].filter(([path]) => !path.startsWith(`${DRAFT}/`))
    expect(issued(after)).toEqual(issued(before))
    // The draft is made from today's records, so that the changes above are seen where they should be.
    expect(after.get(`${DRAFT}/index.html`)).not.toBe(before.get(`${DRAFT}/index.html`))
  })

  it('has every word from its document: the components hold none of their own', () => {
    const components = [
      'Certificate',
      'CertificateFoot',
      'CertificateHead',
      'Fact',
      'Identification',
      'LimitStrip',
      'Mortars',
      'OutcomeMark',
      'OutcomeWord',
      'PlainLine',
      'PrintedText',
      'Readings',
      'ResultTable',
      'Sampling',
      'VerdictBlock',
      'Withdrawal',
    ]
    for (const name of components) {
      const [, , markup = ''] = readFileSync(join(ROOT, `src/components/${name}.astro`), 'utf8').split(
        '---\n',
      )
      expect(literalWords(markup), name).toEqual([])
    }
  })
})

/** Texts between tags, outside of braces, and attributes that are read aloud. */
function literalWords(markup: string): string[] {
  const spoken = [...markup.matchAll(/(?:aria-label|alt|title|data-label)="([^"]*)"/g)].map(
    ([, text]) => text ?? '',
  )
  let plain = markup
  for (let before = ''; before !== plain; ) {
    before = plain
    plain = plain.replace(/\{[^{}<>]*\}/g, '')
  }
  const between = [...plain.matchAll(/>([^<>{}=]*)</g)].map(([, text]) => text?.trim() ?? '')
  return [...spoken, ...between].filter((text) => /[A-Za-z]{3}/.test(text) && !/=>|\(|&&|\?/.test(text))
}
