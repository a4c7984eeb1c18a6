import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { folderDifferences } from './folder-difference.ts'

const SITE = {
  'index.html': '<link rel="stylesheet" href="/_astro/a.12345678.css"><p>Meets the limit</p>',
  'data/lots.csv': 'lot,outcome\nTL-1,meets\nTL-2,meets\n',
  'data/index.json': '{"lots":[{"id":"TL-1","state":"complete"}]}',
  '_astro/a.12345678.css': 'a{color:red}@media print{a{color:#000}}',
  '_astro/a.12345678.js': 'let a',
  '_astro/font.12345678.woff2': 'abc',
}

let folder = ''
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'compare-'))
})
afterEach(() => rmSync(folder, { recursive: true }))

function site(name: string, files: Readonly<Record<string, string>>): string {
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name, path)), { recursive: true })
    writeFileSync(join(folder, name, path), text)
  }
  return join(folder, name)
}

function differences(is: Readonly<Record<string, string>>) {
  return folderDifferences('site', site('was', SITE), site('is', is)).differences.map(
    ({ where, was, is: now }) => [where, was, now],
  )
}

describe('folderDifferences', () => {
  it('finds nothing where only hashes and code differ, and counts the files', () => {
    const { '_astro/a.12345678.js': _, ...others } = SITE
    const compared = folderDifferences(
      'site',
      site('was', SITE),
      site('is', { ...others, '_astro/a.abcdefgh.js': 'let b' }),
    )
    expect(compared).toMatchObject({ differences: [], files: 5, values: 2 })
  })

  it('sees a changed word in a page', () => {
    expect(differences({ ...SITE, 'index.html': SITE['index.html'].replace('the', 'a') })).toEqual([
      ['site:index.html', 'Meets the limit', 'Meets a limit'],
    ])
  })

  it('sees a vanished file and a new one', () => {
    const { 'data/lots.csv': csv, ...others } = SITE
    expect(differences({ ...others, 'new.csv': csv })).toEqual([
      ['site:data/lots.csv', 'a file of 34 bytes', null],
      ['site:new.csv', null, 'a file of 34 bytes'],
    ])
  })

  it('sees a vanished script', () => {
    const { '_astro/a.12345678.js': _, ...others } = SITE
    expect(differences(others)).toEqual([['site:_astro/a.js', 'a file of 5 bytes', null]])
  })

  it('compares JSON by pointer, tables by line, other files by their bytes', () => {
    expect(
      differences({
        ...SITE,
        'data/index.json': SITE['data/index.json'].replace('complete', 'draft'),
        'data/lots.csv': SITE['data/lots.csv'].replace('TL-2,meets', 'TL-2,pending'),
        '_astro/font.12345678.woff2': 'abd',
      }),
    ).toEqual([
      ['site:_astro/font.woff2', '3 bytes', '3 other bytes'],
      ['site:data/index.json:/lots/TL-1/state', '"complete"', '"draft"'],
      ['site:data/lots.csv', 'TL-2,meets', 'TL-2,pending'],
    ])
  })

  it('sees a changed rule at the page that links to it', () => {
    expect(
      differences({ ...SITE, '_astro/a.12345678.css': '@media print{a{color:#111}}a{color:red}' }),
    ).toEqual([
      ['site:index.html:styles', '@media print{ a{color:#000}', null],
      ['site:index.html:styles', null, '@media print{ a{color:#111}'],
    ])
  })
})
