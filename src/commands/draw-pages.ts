/** Draws the pages of the edition in the slot, one after the other. */
import { pathToFileURL } from 'node:url'
import type { AstroPrerenderer, PathWithRoute } from 'astro'
import { pageFile } from '../edition/shape/addresses.ts'
import type { Edition } from '../edition/shape/edition.ts'
import { wholeText } from '../edition/shape/dependencies.ts'
import { type Traced, tracing, tracingAll } from '../edition/shape/trace.ts'
import { digestOf } from '../records/issued/digest.ts'
import type { PageProgram } from './page-program.ts'
import { givenOf, type SiteFiles } from './site-files.ts'

/** What the program that Astro has made says of itself. */
interface App {
  readonly manifest: {
    readonly pageMap: ReadonlyMap<string, () => Promise<{ readonly page: () => unknown }>>
    readonly routes: readonly object[]
  }
  readonly setInternals: (internals: unknown) => void
  readonly setOptions: (options: unknown) => void
  readonly render: AstroPrerenderer['render']
  readonly routeCache: {
    readonly clearAll: () => void
    readonly get: (route: PathWithRoute['route']) => { readonly staticPaths?: StaticPaths } | undefined
  }
}

export interface PageToDraw {
  /** Path of its file in the site. */
  readonly file: string
  /** What it is drawn from beside the edition and its view. */
  readonly given: unknown
  /** Makes the one value that it is drawn from; null for a page that is drawn from the edition. */
  readonly view: (() => unknown) | null
  /** @param view that was made @throws whatever the page throws */
  readonly draw: (view: unknown) => Promise<Uint8Array>
}

/** A path of a route as Astro keeps it, with what the page is given. */
interface StaticPath {
  props?: Readonly<Record<string, unknown>>
}

/** All paths of a route, in their order, and those that it can draw. */
type StaticPaths = StaticPath[] & { readonly keyed: Map<string, StaticPath> }

/** @returns whether nothing more is wanted of a page */
export type Leave = (page: PageToDraw) => boolean | Promise<boolean>

/**
 * Every page of the site but those that are left: these are told one after the other, and no more is held than what one
 * route has.
 * @throws RangeError for two pages of one address
 */
export async function pagesOf(
  { entry, styles }: Pick<PageProgram, 'entry' | 'styles'>,
  { address }: Edition,
  leave: Leave = () => false,
): Promise<PageToDraw[]> {
  const app = await appOf(entry)
  app.setInternals({
    pagesByKeys: new Map(Object.entries(styles).map(([name, own]) => [name, { styles: own }])),
  })
  app.setOptions({ settings: { scripts: [] }, logger: { options: { destination: { write: () => true } } } })
  // A process that builds again has the program in memory, with the addresses of the edition before.
  app.routeCache.clearAll()
  const files = new Set<string>()
  const pages: PageToDraw[] = []
  for (const route of app.manifest.routes)
    for (const { path, own, forget } of await pathsOf(app, route)) {
      const page = pageOf(app, path, own, address)
      if (files.has(page.file))
        throw new RangeError(`pagesOf needs an address for each page, got two of ${page.file}`)
      files.add(page.file)
      if (await leave(page)) forget()
      else pages.push(page)
    }
  return pages
}

interface PathOfRoute {
  readonly path: PathWithRoute
  /** What the page is given; undefined where the route has one path alone. */
  readonly own: StaticPath | undefined
  /** The page cannot be drawn any more. */
  readonly forget: () => void
}

async function pathsOf(app: App, route: object): Promise<PathOfRoute[]> {
  const { StaticPaths } = await import('astro/runtime/prerender/static-paths.js')
  const manifest = Object.create(app.manifest, { routes: { value: [route] } }) as App['manifest']
  const paths = await new StaticPaths({ manifest, routeCache: app.routeCache } as never).getAll()
  return paths.map((path, place) => {
    const known = app.routeCache.get(path.route)?.staticPaths
    const own = known?.[place]
    const forget = () => {
      known?.keyed.delete(path.pathname)
      delete known?.[place]
    }
    return { path, own, forget }
  })
}

async function appOf(entry: string): Promise<App> {
  const { app } = (await import(pathToFileURL(entry).href)) as { app: App }
  return app
}

/** Loads the modules of all pages, each of which is loaded with the first page that is drawn with it otherwise. */
export async function loadPages({ entry }: Pick<PageProgram, 'entry'>): Promise<void> {
  const { manifest } = await appOf(entry)
  for (const load of manifest.pageMap.values()) (await load()).page()
}

function pageOf(
  app: App,
  path: PathWithRoute,
  own: StaticPath | undefined,
  { base, origin }: Edition['address'],
): PageToDraw {
  const { view, ...given } = own?.props ?? {}
  const draw = () => drawn(app, path, new URL(`${base}${addressOf(path)}`, origin ?? 'http://localhost'))
  if (own === undefined || typeof view !== 'function') return { file: fileOf(path), given, view: null, draw }
  return {
    file: fileOf(path),
    given,
    view: view as () => unknown,
    draw: async (made) => {
      // The page asks for what was made a moment ago, and it is let go.
      own.props = { ...given, view: () => made }
      try {
        return await draw()
      } finally {
        own.props = { ...given, view }
      }
    },
  }
}

/** A page of which something has changed. */
export interface ChangedPage {
  readonly page: PageToDraw
  /** Digest of all beside the edition that it is made of. */
  readonly given: string
}

/**
 * Takes the pages of which nothing has changed.
 * @param common digest of all that every page is drawn from beside the edition
 * @returns the others
 * @throws RangeError for two pages of one address
 */
export async function changedPages(
  drawing: Pick<PageProgram, 'entry' | 'styles'>,
  edition: Edition,
  { files, common }: { readonly files: SiteFiles; readonly common: string },
): Promise<ChangedPage[]> {
  const changed: ChangedPage[] = []
  await pagesOf(drawing, edition, async (page) => {
    const given = givenOf(common, wholeText(page.given))
    const isKept = files.isKept(page.file, given)
    if (isKept) await files.room()
    else changed.push({ page, given })
    return isKept
  })
  return changed
}

/**
 * Draws pages with the traced edition in the slot.
 * @throws whatever a page throws, or the system
 */
export async function drawPages(changed: readonly ChangedPage[], files: SiteFiles): Promise<void> {
  for (const each of changed) {
    const drawn = await drawnPage(each.page, viewBefore(each, files))
    if (!(await isTaken(each, drawn, files))) await redraw(each, files)
  }
}

/** What becomes of a page, and what it was made of. */
export interface DrawnPage extends Omit<Traced<unknown>, 'value'> {
  /** null for a page that has the view that it had before: it need not be drawn. */
  readonly bytes: Uint8Array | null
  /** Digest of its view; null where it is drawn from the edition. */
  readonly view: string | null
}

/** @param before digest of the view that it had before @throws whatever the page throws */
export async function drawnPage(
  { view: viewOf, draw }: PageToDraw,
  before: string | null,
): Promise<DrawnPage> {
  if (viewOf === null) {
    const { value: bytes, ...traced } = await tracingAll(() => draw(null))
    return { bytes, view: null, ...traced }
  }
  const { value: made, ...traced } = tracing(viewOf)
  const view = digestOf(JSON.stringify(made))
  return { bytes: view === before ? null : await draw(made), view, ...traced }
}

/** Digest of the view of a page in the site before; null where it may not be taken from there. */
export function viewBefore({ page, given }: ChangedPage, files: SiteFiles): string | null {
  return page.view === null ? null : files.viewBefore(page.file, given)
}

/** @returns false where the page before has its view and is not as it was: it has to be drawn all the same */
export async function isTaken(
  { page, given }: ChangedPage,
  { bytes, view, trace, parts }: DrawnPage,
  files: SiteFiles,
): Promise<boolean> {
  files.noteParts(parts)
  const madeOf = { given, trace, view }
  if (bytes === null && !files.isKeptByView(page.file, madeOf)) return false
  await (bytes === null ? files.room() : files.write(page.file, bytes, madeOf))
  return true
}

/** Draws a page whatever view it had before. */
export async function redraw(changed: ChangedPage, files: SiteFiles): Promise<void> {
  await isTaken(changed, await drawnPage(changed.page, null), files)
}

/** Path of a page below the base, "" for the front page. */
function addressOf({ pathname }: PathWithRoute): string {
  const from = pathname.startsWith('/') ? 1 : 0
  return from === pathname.length || pathname.endsWith('/')
    ? pathname.slice(from)
    : `${pathname.slice(from)}/`
}

/** A server that finds nothing asks for one file of a name of its own. */
function fileOf(path: PathWithRoute): string {
  const address = addressOf(path)
  return address === '404/' ? '404.html' : pageFile(address)
}

async function drawn(app: App, { route }: PathWithRoute, url: URL): Promise<Uint8Array> {
  const response = await app.render(new Request(url), { routeData: route })
  if (!(response instanceof Response) || response.body === null)
    throw new RangeError(`drawn needs a page at ${url.pathname}, got nothing`)
  return new Uint8Array(await response.arrayBuffer())
}
