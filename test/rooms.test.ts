import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative, resolve, sep } from 'node:path'
import { describe, expect, it } from 'vitest'

const SRC = resolve(import.meta.dirname, '../src')

interface Walls {
  /** Rooms, and sub-rooms as "room/sub", that may be imported; a room's name stands for all that lies in it. */
  readonly rooms: readonly string[]
  /** Packages by name; "node:" and "@scope/" stand for all that begin so. */
  readonly packages?: readonly string[]
}

/** Sub-rooms of core in the order that data takes: each may import itself and those before it. */
const CORE = [
  'core/measure',
  'core/statistics',
  'core/result',
  'core/mortar',
  'core/composition',
  'core/strength',
  'core/resistivity',
  'core/readings',
  'core/history',
  'core/doubt',
  'core/criteria',
  'core/evidence',
  'core/judging',
  'core/agency',
  'core/checks',
  'core/studies',
] as const

/** Arrows within core that the order would allow and that the design does not. */
const NEVER: readonly (readonly [string, string])[] = [
  ['core/strength', 'core/composition'],
  ['core/resistivity', 'core/strength'],
  ['core/resistivity', 'core/composition'],
  ['core/criteria', 'core/readings'],
  ['core/criteria', 'core/history'],
  ['core/criteria', 'core/doubt'],
  ['core/judging', 'core/readings'],
  ['core/judging', 'core/mortar'],
  ['core/judging', 'core/strength'],
  ['core/judging', 'core/resistivity'],
]

const coreWalls = CORE.map((room, place): [string, Walls] => [
  room,
  {
    rooms: CORE.slice(0, place + 1).filter((to) => !NEVER.some(([from, not]) => from === room && not === to)),
    packages: room === 'core/statistics' ? ['@stdlib/'] : [],
  },
])

const SHAPES = ['core', 'words', 'records', 'edition/shape']

/** What draws takes views and words; of core and records it may name types, and compute with nothing of theirs. */
const SITE = ['words', 'edition/views', 'edition/shape', 'charts', 'styles', 'scripts']
const DRAWS = ['components', 'layouts', 'pages']

const WALLS: Readonly<Record<string, Walls>> = {
  ...Object.fromEntries(coreWalls),
  words: { rooms: ['core', 'words'], packages: ['d3'] },
  // Diagnostics word their own messages; only files.ts touches the disk (held below).
  'records/diagnostics': {
    rooms: ['core', 'words', 'records/diagnostics', 'records/yaml', 'records/files.ts'],
    packages: ['leven', 'd3'],
  },
  'records/yaml': {
    rooms: ['core', 'words', 'records/diagnostics', 'records/schema', 'records/yaml'],
    packages: ['js-yaml', 'd3'],
  },
  'records/schema': {
    rooms: ['core', 'words', 'records/diagnostics', 'records/yaml', 'records/schema'],
    packages: ['ajv', 'node:'],
  },
  'records/criteria': {
    rooms: ['core', 'words', 'records/diagnostics', 'records/yaml', 'records/schema', 'records/criteria'],
  },
  'records/studies': { rooms: ['core', 'words', 'records'] },
  'records/edit': {
    rooms: ['core', 'words', 'records/diagnostics', 'records/yaml', 'records/schema', 'records/edit'],
    packages: ['js-yaml'],
  },
  'records/form': {
    rooms: ['core', 'records/schema', 'records/yaml', 'records/edit', 'records/diagnostics', 'records/form'],
  },
  'records/export': {
    rooms: ['core', 'words', 'records/schema', 'records/edit', 'records/import', 'records/export'],
  },
  'records/import': {
    rooms: [
      ...['core', 'words', 'records/diagnostics', 'records/yaml', 'records/schema', 'records/edit'],
      ...['records/import', 'records/records.ts'],
    ],
    packages: ['node:path', 'node:zlib', 'papaparse'],
  },
  'records/issued': {
    rooms: [
      ...['core', 'words', 'records/diagnostics', 'records/schema', 'records/issued', 'records/files.ts'],
      'records/read-before.ts',
    ],
    packages: ['node:crypto', 'canonicalize'],
  },
  'records/checks': { rooms: ['core', 'words', 'records'] },
  records: { rooms: ['core', 'words', 'records'], packages: ['node:'] },
  'edition/shape': { rooms: SHAPES },
  'edition/passes': { rooms: [...SHAPES, 'edition/passes'] },
  'edition/tables': { rooms: [...SHAPES, 'edition/tables'] },
  'edition/printed': { rooms: [...SHAPES, 'edition/printed'] },
  'edition/certificate': {
    rooms: [...SHAPES, 'edition/passes', 'edition/printed', 'edition/certificate'],
  },
  'edition/writers': {
    rooms: [...SHAPES, 'edition/tables', 'edition/writers'],
    packages: ['d3', 'hyparquet-writer', 'node:zlib'],
  },
  'edition/views': { rooms: [...SHAPES, 'edition/tables', 'edition/views', 'charts'], packages: ['d3'] },
  // The door: compute.ts puts the Edition together, publishing.ts takes out what an audience may not see.
  edition: { rooms: [...SHAPES, 'edition/passes', 'edition/certificate'] },
  charts: { rooms: ['core', 'words', 'charts'], packages: ['d3'] },
  demo: { rooms: ['core', 'demo'], packages: ['d3'] },
  scaffold: { rooms: ['core', 'words', 'records', 'scaffold'] },
  // The bench page reads and judges a lot with the program's own functions, none of which touches the disk.
  scripts: {
    rooms: [
      ...['core', 'words', 'charts', 'scripts', 'records/records.ts', 'records/checks/lot-alone.ts'],
      ...['records/diagnostics', 'records/edit', 'records/form', 'records/schema', 'records/yaml'],
      ...['edition/passes/computed-lot.ts', 'edition/passes/lot-results.ts'],
    ],
    packages: ['@codemirror/'],
  },
  components: { rooms: [...SITE, 'components'], packages: ['uqr'] },
  // Files of fonts alone: a sheet imports nothing.
  styles: { rooms: ['styles'] },
  layouts: { rooms: [...SITE, 'components', 'layouts'] },
  pages: { rooms: [...SITE, 'components', 'layouts', 'pages'], packages: ['virtual:'] },
  commands: {
    rooms: ['core', 'words', 'records', 'edition', 'demo', 'scaffold', 'commands'],
    packages: [
      'node:',
      '@astrojs/mdx',
      'astro',
      'commander',
      'js-yaml',
      'serve-static',
      'subset-font',
      'write-excel-file',
      'typescript',
    ],
  },
}

interface Arrow {
  readonly room: string
  readonly file: string
  readonly to: string
  readonly internal: boolean
  /** Only the types of a module are imported. */
  readonly typeOnly: boolean
}

/** The innermost room that has walls of its own. */
function roomOf(path: string): string {
  const [room = '', sub = ''] = path.split(sep)
  return WALLS[`${room}/${sub}`] === undefined ? room : `${room}/${sub}`
}

function sources(): { file: string; text: string }[] {
  return readdirSync(SRC, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(ts|astro)$/.test(entry.name) && entry.parentPath !== SRC)
    .map((entry) => {
      const path = join(entry.parentPath, entry.name)
      return { file: relative(SRC, path), text: readFileSync(path, 'utf8') }
    })
}

const IMPORT =
  /(import|export)(\s+type\b)?[^'"`;]*?(?:from\s+|import\s+|import\()'([^']+)'|(?:import\s+|import\()'([^']+)'/g

/** Imports of a module; text within back quotes is none of its code. */
function imports(text: string): { name: string; typeOnly: boolean }[] {
  return [...text.replace(/`[^`]*`/g, '``').matchAll(IMPORT)].map(([, , type, named, bare]) => ({
    name: named ?? bare ?? '',
    typeOnly: type !== undefined,
  }))
}

function arrows(): Arrow[] {
  return sources().flatMap(({ file, text }) =>
    imports(text).map(({ name, typeOnly }) => {
      const internal = name.startsWith('.')
      const to = internal ? relative(SRC, resolve(dirname(join(SRC, file)), name)) : name
      return { room: roomOf(file), file, to, internal, typeOnly }
    }),
  )
}

function allows({ rooms, packages = [] }: Walls, { room, to, internal, typeOnly }: Arrow): boolean {
  const types = typeOnly && DRAWS.includes(room) ? ['core', 'records'] : []
  const [list, path] = internal ? [[...rooms, ...types], to.split(sep).join('/')] : [packages, to]
  return list.some((name) => path === name || path.startsWith(/[:/]$/.test(name) ? name : `${name}/`))
}

describe('the rooms', () => {
  it('import only what their walls allow, between sub-rooms too', () => {
    const broken = arrows().filter((arrow) => {
      const walls = WALLS[arrow.room]
      return walls === undefined || !allows(walls, arrow)
    })
    expect(broken.map(({ file, to }) => `${file} imports ${to}`)).toEqual([])
  })

  it('are read by this test: the core alone has many arrows', () => {
    expect(arrows().filter(({ room }) => room.startsWith('core/')).length).toBeGreaterThan(100)
  })

  it('hold every file of core, records and edition in a sub-room, but for their doors', () => {
    const flat = sources()
      .map(({ file }) => file)
      .filter((file) => /^(core|records|edition)[\\/][^\\/]+$/.test(file))
    expect(flat.sort()).toEqual(
      [
        'edition/compute.ts',
        'edition/publishing.ts',
        'records/files.ts',
        'records/load.ts',
        'records/read-before.ts',
        'records/record-path.ts',
        'records/records.ts',
      ].map((path) => path.replaceAll('/', sep)),
    )
  })

  it('keep the machine, the clock and chance out of core, words, records, edition, charts and scaffold', () => {
    const machine = /\b(?:Math\.random|Date\.now|new Date\(\)|performance\.now)\b/
    const page = /\b(?:process|console|document|window|globalThis)\.|\b(?:fetch|setTimeout)\(/
    const faults = sources().filter(({ file, text }) => {
      const [room = ''] = file.split(sep)
      if (!['core', 'words', 'records', 'edition', 'charts', 'scaffold'].includes(room)) return false
      const code = text.replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '')
      return machine.test(code) || (['core', 'words'].includes(room) && page.test(code))
    })
    expect(faults.map(({ file }) => file)).toEqual([])
  })

  it('let only records/files.ts and the schemas read the disk', () => {
    const readers = arrows().filter(
      ({ file, to }) => to.startsWith('node:fs') && !file.startsWith('commands'),
    )
    expect([...new Set(readers.map(({ file }) => file))].sort()).toEqual(
      ['records/files.ts', 'records/schema/ready-validators.ts', 'records/schema/schema-texts.ts'].map(
        (path) => path.replaceAll('/', sep),
      ),
    )
  })
})
