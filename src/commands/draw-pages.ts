/** Draws the pages of the edition in the slot, in one order, one after the other. */
import { mkdirSync } from 'node:fs'
import { writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { AstroPrerenderer, PathWithRoute } from 'astro'
import type { Edition } from '../edition/shape/edition.ts'
import type { PageProgram } from './page-program.ts'

/** What the program that Astro has made says of itself. */
interface App {
  readonly setInternals: (internals: unknown) => void
  readonly setOptions: (options: unknown) => void
  readonly render: AstroPrerenderer['render']
  readonly routeCache: { readonly clearAll: () => void }
}

export interface PageToDraw {
  /** Path of its file in the site. */
  readonly file: string
  /** @throws whatever the page throws */
  readonly draw: () => Promise<Uint8Array>
}

/**
 * Every page of the site.
 * @throws RangeError for two pages of one address
 */
export async function pagesOf({ entry, styles }: PageProgram, { address }: Edition): Promise<PageToDraw[]> {
  const [{ app }, { StaticPaths }] = await Promise.all([
    import(pathToFileURL(entry).href) as Promise<{ app: App }>,
    import('astro/runtime/prerender/static-paths.js'),
  ])
  app.setInternals({
    pagesByKeys: new Map(Object.entries(styles).map(([name, own]) => [name, { styles: own }])),
  })
  app.setOptions({ settings: { scripts: [] }, logger: { options: { destination: { write: () => true } } } })
  // A process that builds again has the program in memory, with the addresses of the edition before.
  app.routeCache.clearAll()
  const paths = await new StaticPaths(app as never).getAll()
  const files = new Set(paths.map(fileOf))
  if (files.size < paths.length)
    throw new RangeError('pagesOf needs an address for each page, got one of two')
  return paths.map((path) => ({
    file: fileOf(path),
    draw: () =>
      drawn(app, path, new URL(`${address.base}${addressOf(path)}`, address.origin ?? 'http://localhost')),
  }))
}

/** Files that are being written while the next page is drawn. */
const AT_ONCE = 16

/** Draws pages into the folder of a site. @throws whatever a page throws, or the system */
export async function drawPages(pages: readonly PageToDraw[], folder: string): Promise<void> {
  const writing = new Set<Promise<void>>()
  const faults: unknown[] = []
  try {
    for (const { file, draw } of pages) {
      const path = join(folder, file)
      const bytes = await draw()
      mkdirSync(dirname(path), { recursive: true })
      const written = writeFile(path, bytes)
        .catch((fault: unknown) => void faults.push(fault))
        .finally(() => writing.delete(written))
      writing.add(written)
      if (writing.size === AT_ONCE) await Promise.race(writing)
      if (faults.length > 0) break
    }
  } finally {
    // Whoever removes the folder next is alone with it.
    await Promise.all(writing)
  }
  if (faults.length > 0) throw faults[0]
}

/** Path of a page below the base, "" for the front page. */
function addressOf({ pathname }: PathWithRoute): string {
  const path = pathname.replace(/^\/|\/$/g, '')
  return path === '' ? '' : `${path}/`
}

/** A server that finds nothing asks for one file of a name of its own. */
function fileOf(path: PathWithRoute): string {
  const address = addressOf(path)
  return address === '404/' ? '404.html' : `${address}index.html`
}

async function drawn(app: App, { route }: PathWithRoute, url: URL): Promise<Uint8Array> {
  const response = await app.render(new Request(url), { routeData: route })
  if (!(response instanceof Response) || response.body === null)
    throw new RangeError(`drawn needs a page at ${url.pathname}, got nothing`)
  return new Uint8Array(await response.arrayBuffer())
}
