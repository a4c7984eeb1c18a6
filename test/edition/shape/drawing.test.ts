import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'

const SRC = resolve(import.meta.dirname, '../../../src')

/** Frontmatter of each page that is drawn from its view. */
function drawnFromView(): [string, string][] {
  return readdirSync(join(SRC, 'pages'), { recursive: true })
    .map(String)
    .filter((name) => name.endsWith('.astro'))
    .map((name): [string, string] => [name, readFileSync(join(SRC, 'pages', name), 'utf8')])
    .filter(([, text]) => text.includes('pagesToDraw'))
}

describe('a page that is drawn from its view', () => {
  it('reads nothing else: no Edition, no address of its own, nothing of its request', () => {
    const pagesFound = drawnFromView()
    for (const [name, text] of pagesFound) {
      const outside = text
        .replace(/^import .*$/gm, '')
        .replace(/export function getStaticPaths\(\) \{\n.*\n\}/, '')
      expect([name, outside.match(/currentEdition|Astro\.(?!props\.view\(\))\w+/g)]).toEqual([name, null])
      expect([name, text.match(/Astro\.props\.view\(\)/g)?.length]).toEqual([name, 1])
    }
    expect(pagesFound).toHaveLength(7)
  })

  it('is drawn by components that read their props alone', () => {
    const read = ['components', 'layouts'].flatMap((room) =>
      readdirSync(join(SRC, room), { recursive: true })
        .map(String)
        .filter((name) => name.endsWith('.astro'))
        .map((name) => [name, readFileSync(join(SRC, room, name), 'utf8')] as const)
        .filter(([, text]) =>
          /shape\/slot|Astro\.(?!props\b|self\b)\w+|globalThis|import\.meta|Date\b\.|new Date/.test(text),
        )
        .map(([name]) => name),
    )
    expect(read).toEqual([])
  })
})
