/** Sitemap files (sitemaps.org protocol 0.9). */
import { paths } from '../shape/addresses.ts'
import type { Edition } from '../shape/edition.ts'
import { xmlText } from './xml.ts'

/** Addresses that a file may hold, before an index is needed. */
const LARGEST = 50_000

/** Pages for search engines: neither earlier revisions nor addresses that only lead on. */
export function listedPages(edition: Pick<Edition, 'lots'>, pages: readonly string[]): string[] {
  const former = new Set([...edition.lots.values()].flatMap((lot) => lot.formerly.map(paths.certificate)))
  return pages.filter((page) => !former.has(page) && !/^lots\/[^/]+\/[^/]+\/revision\//.test(page))
}

/**
 * @param home full address of the front page, ending in "/"
 * @param pages paths of all pages, relative to it
 * @returns files by path
 */
export function sitemapFiles(home: string, pages: readonly string[]): Map<string, string> {
  const chunks: string[][] = []
  for (let start = 0; start < pages.length; start += LARGEST) chunks.push(pages.slice(start, start + LARGEST))
  if (chunks.length <= 1) return new Map([['sitemap.xml', addressSet(home, chunks[0] ?? [])]])
  const files = new Map(chunks.map((chunk, index) => [`sitemap-${index + 1}.xml`, addressSet(home, chunk)]))
  const index = [...files.keys()]
    .map((name) => `<sitemap><loc>${xmlText(home + name)}</loc></sitemap>`)
    .join('\n')
  return files.set('sitemap.xml', `${HEAD}<sitemapindex xmlns="${NAMESPACE}">\n${index}\n</sitemapindex>\n`)
}

const HEAD = '<?xml version="1.0" encoding="UTF-8"?>\n'
const NAMESPACE = 'http://www.sitemaps.org/schemas/sitemap/0.9'

function addressSet(home: string, pages: readonly string[]): string {
  return `${HEAD}<urlset xmlns="${NAMESPACE}">\n${pages.map((page) => `<url><loc>${xmlText(home + page)}</loc></url>`).join('\n')}\n</urlset>\n`
}
