import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { changedPages, drawPages, pagesOf } from '../../src/commands/draw-pages.ts'
import type { PageProgram } from '../../src/commands/page-program.ts'
import { SiteFiles } from '../../src/commands/site-files.ts'
import { tinyEdition } from '../edition/tiny-edition.ts'

/** A program that draws the names of its pages, and throws at one called "faulty". */
function programOf(...pathnames: readonly string[]): PageProgram {
  const entry = join(mkdtempSync(join(tmpdir(), 'draw-pages-')), 'entry.mjs')
  writeFileSync(
    entry,
    `export const app = {
      manifest: { routes: ${JSON.stringify(pathnames)}.map((pathname) => ({ routeData: { prerender: true, pathname, fallbackRoutes: [] } })) },
      routeCache: { clearAll: () => {}, get: () => undefined },
      setInternals: () => {},
      setOptions: () => {},
      render: async ({ url }) => {
        if (url.includes('faulty')) throw new RangeError('a page that throws')
        return new Response(new URL(url).pathname)
      },
    }`,
  )
  return { entry, styles: {}, assets: '', files: new Map(), remove: () => {} }
}

const edition = { ...tinyEdition([], []), address: { origin: 'https://example.org', base: '/a/b/' } }
const drawn = async (...pathnames: readonly string[]) => {
  const folder = mkdtempSync(join(tmpdir(), 'drawn-'))
  const files = new SiteFiles({
    final: join(folder, 'none'),
    next: folder,
    edition,
    fresh: true,
    unknown: true,
  })
  const changed = await changedPages(programOf(...pathnames), edition, { files, common: '' })
  const fault = await drawPages(changed, files).catch((error) => error)
  await files.end()
  return { fault, read: (path: string) => readFileSync(join(folder, path), 'utf8'), folder }
}

describe('drawPages', () => {
  it('writes each page where a server looks for it', async () => {
    const { fault, read } = await drawn('/', '/sources/ash', '/404')
    expect(fault).toBeUndefined()
    expect(read('index.html')).toBe('/a/b/')
    expect(read('sources/ash/index.html')).toBe('/a/b/sources/ash/')
    expect(read('404.html')).toBe('/a/b/404/')
  })

  it('ends with what a page throws, and draws none after it', async () => {
    const { fault, read, folder } = await drawn('/first', '/faulty', '/last')
    expect(fault).toEqual(new RangeError('a page that throws'))
    expect(read('first/index.html')).toBe('/a/b/first/')
    expect(existsSync(join(folder, 'last'))).toBe(false)
  })

  it('refuses two pages of one address', async () => {
    await expect(drawn('/sources', '/sources/')).rejects.toThrow(/an address for each page/)
  })
})

describe('pagesOf', () => {
  it('tells of every page and holds those that are not left', async () => {
    const told: string[] = []
    const pages = await pagesOf(programOf('/', '/lots', '/sources'), edition, ({ file }) => {
      told.push(file)
      return file === 'lots/index.html'
    })
    expect(told).toEqual(['index.html', 'lots/index.html', 'sources/index.html'])
    expect(pages.map(({ file }) => file)).toEqual(['index.html', 'sources/index.html'])
  })
})
