/** Links of a built site followed over its files: a thousand pages take seconds, and a server would say the same. */
import { posix } from 'node:path'
import { filesOf, textOf } from './built-site.ts'

/** Values of attributes that name another file, and of url() in style sheets. */
const NAMED = /\s(?:href|src|action|srcset)="([^"]*)"|url\(["']?([^"')]+)["']?\)/g
const NAMING = /\.(?:html|css)$/

export interface Links {
  /** How many were followed. */
  readonly links: number
  /** `PAGE -> ADDRESS` for each that leads nowhere, or to no such place on its page. */
  readonly broken: readonly string[]
  /** Pages that no way of links from the front page leads to. */
  readonly unreached: readonly string[]
}

/**
 * @param folder of a site
 * @param base path that the site stands under, with a slash at each end
 */
export function linksOf(folder: string, base: string): Links {
  const files = filesOf(folder)
  const texts = new Map(files.filter((path) => NAMING.test(path)).map((path) => [path, textOf(folder, path)]))
  const places = new Map([...texts].map(([path, text]) => [path, placesIn(text)]))
  const known = new Set(files)
  const ways = new Map<string, Set<string>>()
  let links = 0
  const broken = [...texts].flatMap(([path, text]) => {
    const own = new Set([...text.matchAll(NAMED)].map(([, attribute, url]) => attribute ?? url ?? ''))
    const followed = [...own].filter((address) => !/^(?:[a-z]+:|$)/.test(address))
    links += followed.length
    ways.set(path, new Set(followed.map((address) => fileAt(pathOf(address), path))))
    return followed
      .filter((address) => !leadsSomewhere(address, path))
      .map((address) => `${path} -> ${address}`)
  })
  const reached = reachedFrom('index.html', ways)
  const unreached = [...texts.keys()].filter((path) => path.endsWith('.html') && !reached.has(path))
  return { links, broken, unreached }

  function leadsSomewhere(address: string, from: string): boolean {
    const [path = '', fragment = ''] = address
      .replaceAll('&amp;', '&')
      .replace(/\?[^#]*/, '')
      .split('#')
    const target = fileAt(path, from)
    if (!known.has(target)) return false
    return fragment === '' || places.get(target)?.has(decodeURIComponent(fragment)) === true
  }

  /** The file that a server answers with. */
  function fileAt(path: string, from: string): string {
    if (path === '') return from
    const absolute = posix.join(
      '/',
      path.startsWith('/') ? path : posix.join(base, posix.dirname(from), path),
    )
    if (!absolute.startsWith(base)) return absolute
    const inside = decodeURIComponent(absolute.slice(base.length))
    return inside === '' || inside.endsWith('/') ? `${inside}index.html` : inside
  }
}

/** An address without what is asked and without a place on the page. */
function pathOf(address: string): string {
  return address.replace(/[?#].*/, '')
}

function reachedFrom(first: string, ways: ReadonlyMap<string, ReadonlySet<string>>): ReadonlySet<string> {
  const reached = new Set([first])
  // A set goes on to what is added while it is walked.
  for (const page of reached) for (const next of ways.get(page) ?? []) reached.add(next)
  return reached
}

function placesIn(text: string): ReadonlySet<string> {
  return new Set([...text.matchAll(/\sid="([^"]*)"/g)].map(([, id]) => id ?? ''))
}
