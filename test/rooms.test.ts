import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative, resolve, sep } from 'node:path'
import { describe, expect, it } from 'vitest'

const SRC = resolve(import.meta.dirname, '../src')

/** What each room may import: other rooms, and packages by name ("node:" for Node's own). */
const ALLOWED: Readonly<
  Record<string, { readonly rooms: readonly string[]; readonly packages: readonly string[] }>
> = {
  core: { rooms: ['core'], packages: ['@stdlib/'] },
  records: { rooms: ['core', 'records'], packages: ['node:', 'ajv', 'js-yaml', 'leven'] },
  edition: { rooms: ['core', 'records', 'edition'], packages: ['node:crypto', 'canonicalize', 'd3', 'feed'] },
  charts: { rooms: ['core', 'charts'], packages: ['d3'] },
  demo: { rooms: ['core', 'demo'], packages: ['d3'] },
  scripts: { rooms: ['core', 'charts', 'scripts'], packages: [] },
  components: {
    rooms: ['core', 'records', 'edition', 'charts', 'components', 'styles', 'scripts'],
    packages: ['uqr'],
  },
  layouts: { rooms: ['core', 'edition', 'components', 'layouts', 'styles', 'scripts'], packages: [] },
  pages: {
    rooms: ['core', 'records', 'edition', 'charts', 'components', 'layouts', 'pages', 'styles', 'scripts'],
    packages: ['virtual:'],
  },
  commands: {
    rooms: ['core', 'records', 'edition', 'demo', 'commands'],
    packages: ['node:', 'astro', 'commander', 'js-yaml'],
  },
}

function imports(file: string): string[] {
  return [...readFileSync(file, 'utf8').matchAll(/(?:from\s+|import\s+|import\()'([^']+)'/g)].map(
    (match) => match[1] ?? '',
  )
}

/** Astro and core code the arrows were read from: room, importing file, imported room or package. */
function arrows(): { room: string; file: string; to: string; internal: boolean }[] {
  return readdirSync(SRC, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(ts|astro)$/.test(entry.name) && entry.parentPath !== SRC)
    .flatMap((entry) => {
      const file = join(entry.parentPath, entry.name)
      const room = relative(SRC, file).split(sep)[0] ?? ''
      return imports(file).map((name) =>
        name.startsWith('.')
          ? {
              room,
              file: relative(SRC, file),
              to: relative(SRC, resolve(dirname(file), name)).split(sep)[0] ?? '',
              internal: true,
            }
          : { room, file: relative(SRC, file), to: name, internal: false },
      )
    })
}

describe('the rooms', () => {
  it('import only what their walls allow', () => {
    const broken = arrows().filter(({ room, to, internal }) => {
      const allowed = ALLOWED[room]
      if (allowed === undefined) return true
      return internal
        ? !allowed.rooms.includes(to)
        : !allowed.packages.some(
            (name) => to === name || to.startsWith(/[:/]$/.test(name) ? name : `${name}/`),
          )
    })
    expect(broken.map(({ file, to }) => `${file} imports ${to}`)).toEqual([])
  })

  it('are read by this test: the core alone has many arrows', () => {
    expect(arrows().filter(({ room }) => room === 'core').length).toBeGreaterThan(20)
  })

  it('keep clock and chance out of core, edition and charts', () => {
    const faults = readdirSync(SRC, { recursive: true, withFileTypes: true })
      .filter(
        (entry) =>
          entry.isFile() &&
          entry.name.endsWith('.ts') &&
          ['core', 'edition', 'charts', 'records'].some((room) =>
            entry.parentPath.startsWith(join(SRC, room)),
          ),
      )
      .filter((entry) =>
        /Math\.random|Date\.now|new Date\(\)|performance\.now/.test(
          readFileSync(join(entry.parentPath, entry.name), 'utf8'),
        ),
      )
    expect(faults.map((entry) => entry.name)).toEqual([])
  })
})
