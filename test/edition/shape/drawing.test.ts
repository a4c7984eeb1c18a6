import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { afterEach, describe, expect, it } from 'vitest'
import { type PageFromView, pagesToDraw, putPageMemory } from '../../../src/edition/shape/drawing.ts'

const SRC = resolve(import.meta.dirname, '../../../src')

const pages: PageFromView<{ readonly says: string }>[] = ['a', 'b', 'c'].map((name) => ({
  params: { name },
  path: `${name}/`,
  view: () => ({ says: name.toUpperCase() }),
}))

afterEach(() => putPageMemory(undefined))

describe('pagesToDraw', () => {
  it('gives all pages where no memory of an earlier build is put', () => {
    expect(pagesToDraw(pages).map(({ params, props }) => [params, props.view()])).toEqual([
      [{ name: 'a' }, { says: 'A' }],
      [{ name: 'b' }, { says: 'B' }],
      [{ name: 'c' }, { says: 'C' }],
    ])
  })

  it('leaves out what is kept, and notes what each of the others is drawn from once it is', () => {
    const drawn: unknown[] = []
    putPageMemory({
      isKept: (path, view) => path === 'b/' && JSON.stringify(view()) === '{"says":"B"}',
      drawn: (path, view) => drawn.push([path, view]),
    })
    const left = pagesToDraw(pages)
    expect(left.map(({ params }) => params)).toEqual([{ name: 'a' }, { name: 'c' }])
    expect(drawn).toEqual([])
    left[1]?.props.view()
    expect(drawn).toEqual([['c/', { says: 'C' }]])
  })
})

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
    expect(pagesFound).toHaveLength(3)
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
