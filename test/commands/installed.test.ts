import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { fileDigests } from './file-digests.ts'
import { installed, runIn } from './installed.ts'
import { noTrace, run } from './run-command.ts'

let home: string
let files: readonly string[]

const puteoli = (...args: readonly string[]) => runIn(home, 'npx', 'puteoli', ...args)
const digests = (folder: string) => Object.fromEntries(fileDigests(join(home, folder)))
const page = (path: string) => readFileSync(join(home, 'out', path, 'index.html'), 'utf8')

/** The records of one lot with finished figures, and what is shipped with the program. */
const RECORDS: Readonly<Record<string, string>> = {
  'site.yaml':
    'title: Ridge ash\nformat: 1\nunits: SI\nas-of: 2026-04-10\ncriteria: [c618-19]\ngrace: 7 d\ndrafts: yes\n',
  'producers/ridge.yaml':
    'name: Ridge Ash\naddress: [2 Kiln Row]\nplants: { kiln: { name: Kiln 1 } }\nsignatories: [{ name: A. Mason, function: manager }]\n',
  'laboratories/quay.yaml': 'name: Quay laboratory\naddress: [2 Quay]\nstanding: in-house\n',
  'sources/ridge.yaml': 'name: Ridge fly ash\nproducer: ridge\nplant: kiln\nkind: coal-fly-ash\nclass: F\n',
  'lots/ridge/R-1.yaml': [
    'produced: { from: 2026-03-02, to: 2026-03-08 }',
    'quantity: 1450 t',
    'samples:',
    '  - { id: C, kind: composite, taken: { from: 2026-03-02T06:00, to: 2026-03-08T14:30 } }',
    'analyses:',
    '  - laboratory: quay',
    '    sample: C',
    '    tested: 2026-03-20',
    '    results:',
    '      loss-on-ignition: 2.1 %',
    '      strength-activity-index: { value: 84 %, condition: c311, age: 7 d }',
    '',
  ].join('\n'),
}
const SHIPPED = [
  'criteria/c618-19.yaml',
  'criteria/c618-23e1.yaml',
  'conditions/c311.yaml',
  'methods/cautions.mdx',
]

function writeRecords(): void {
  for (const [path, text] of Object.entries(RECORDS)) {
    mkdirSync(dirname(join(home, 'mine', path)), { recursive: true })
    writeFileSync(join(home, 'mine', path), text)
  }
  for (const path of SHIPPED)
    cpSync(join(home, 'node_modules/puteoli/content', path), join(home, 'mine', path))
}

beforeAll(async () => {
  ;({ home, files } = await installed())
  writeRecords()
})

/** One after the other, as a user goes on. */
describe('the installed program', { timeout: 600_000 }, () => {
  it('is packed without the demo, tests, and what developers alone use', () => {
    const folders = new Set(files.map((path) => path.split('/').slice(0, 2).join('/')))
    expect([...folders].filter((path) => !path.startsWith('built/') && !path.startsWith('schemas/'))).toEqual(
      ['LICENSE', 'README.md', 'content/conditions', 'content/criteria', 'content/methods', 'package.json'],
    )
    expect(
      files.filter((path) =>
        /^built\/demo\/|commands\/(demo|bench|fonts|generate|write-built)\.js|\.test\.|\.ts$/.test(path),
      ),
    ).toEqual([])
    expect(files).toContain('built/commands/puteoli.js')
    // The installed program makes none of its own.
    expect(files).toContain('built/records/schema/validators.cjs')
  })

  it('checks, issues and builds, and writes what a clone writes, the same bytes each time', async () => {
    const before = [digests('node_modules/puteoli'), readdirSync(join(home, 'node_modules'))]
    expect(await puteoli('check', '--content', 'mine')).toMatchObject({ status: 0, error: '' })
    const said = ['--content', 'mine', '--by', 'A. Mason', '--reason', 'first results']
    expect(await puteoli('issue', 'ridge/R-1', ...said)).toMatchObject({ status: 0, error: '' })
    const built = await puteoli('build', '--content', 'mine', '--out', 'out')
    expect(built).toMatchObject({ status: 0, error: '' })
    expect(built.out).toMatch(/^1 lot, \d+ pages in .*out$/m)
    expect(page('')).toContain('Ridge fly ash')
    expect(page('lots/ridge/R-1')).toMatch(/84\s*%/)
    // A method page is MDX, of which a plain text copy would show the marks.
    expect(page('methods/cautions')).toMatch(/<h2[^>]*>/)
    const index = JSON.parse(readFileSync(join(home, 'out/data/index.json'), 'utf8')) as object
    expect(JSON.stringify(index)).toContain('ridge/R-1')
    const first = digests('out')
    // Small fonts of the program's own, and complete ones from packages that lie elsewhere than in a clone.
    expect(Object.keys(first).filter((path) => /SourceSans3-Regular.*\.woff2$/.test(path))).toHaveLength(1)
    const again = await puteoli('build', '--content', 'mine', '--out', 'out')
    expect(again.out).toMatch(/^(\d+) pages: 0 drawn, \1 unchanged$/m)
    expect(digests('out')).toEqual(first)
    const deeper = join(mkdtempSync(join(tmpdir(), 'deeper-')), 'further/down/out')
    expect(await puteoli('build', '--content', 'mine', '--out', deeper)).toMatchObject({ status: 0 })
    expect(Object.fromEntries(fileDigests(deeper))).toEqual(first)
    const clone = join(mkdtempSync(join(tmpdir(), 'clone-')), 'out')
    expect((await run('build', '--content', join(home, 'mine'), '--out', clone)).status).toBe(0)
    expect(Object.fromEntries(fileDigests(clone))).toEqual(first)
    expect([digests('node_modules/puteoli'), readdirSync(join(home, 'node_modules'))]).toEqual(before)
    expect(readdirSync(home).sort()).toEqual([
      '.puteoli',
      'mine',
      'node_modules',
      'out',
      'package-lock.json',
      'package.json',
    ])
  })

  it('builds the site that it has just laid out', async () => {
    expect(await puteoli('new', 'site', 'works', '--yes')).toMatchObject({ status: 0, error: '' })
    const built = await puteoli('build', '--content', 'works', '--out', 'works-site')
    expect(built.status).toBe(0)
    expect(built.out).toMatch(/^0 lots, \d+ pages in .*works-site$/m)
    expect(readFileSync(join(home, 'works-site/index.html'), 'utf8')).toContain('Works')
  })

  it('runs on any Node.js that starts it, and says how its commands are written', async () => {
    const program = join(home, 'node_modules/puteoli/built/commands/puteoli.js')
    const asked = await runIn(join(home, 'mine'), 'node', program, 'check', '--json')
    expect(asked.status).toBe(0)
    expect(JSON.parse(asked.out)).toMatchObject({ lots: [{ id: 'ridge/R-1' }] })
    const help = await puteoli()
    expect(help).toMatchObject({ status: 0, error: '' })
    expect(help.out).toMatch(/^ {2}build +writes the site$/m)
    expect((await puteoli('build', '--help')).out).toMatch(/^Usage: puteoli build \[options\]/)
    const unknown = await puteoli('chek')
    expect(unknown).toMatchObject({ status: 2, out: '' })
    expect(unknown.error).toBe('There is no command "chek".\nfix: did you mean check?\n')
    noTrace(unknown)
  })
})
