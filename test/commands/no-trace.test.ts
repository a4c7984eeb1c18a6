/** Whatever the system refuses is told in a line, and a fault of the program too: nobody meets a trace. */
import { execFile } from 'node:child_process'
import { chmodSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { mapAt } from '../../src/commands/import-file.ts'
import { MARKER, writeMarker } from '../../src/commands/output-marker.ts'
import { contentCopy, type Ended, issue, noTrace, run } from './run-command.ts'

const ROOT = resolve(import.meta.dirname, '../..')
const NOBODY = 65_534

interface Shelled {
  /** What comes after the command, such as "| head -c 1". */
  readonly after?: string
  /** What the shell does first, such as "ulimit -f 4 &&". */
  readonly before?: string
  readonly asNobody?: true
  readonly env?: Readonly<Record<string, string>>
}

/** Runs a command in a shell, by default as the user of the tests. */
function shell(
  command: string,
  args: readonly string[],
  { before = '', after = '', asNobody, env }: Shelled,
): Promise<Ended> {
  const path = command.endsWith('.mts') ? command : join(ROOT, 'src/commands', `${command}.ts`)
  const line = [process.execPath, path, ...args].map((word) => `"${word}"`).join(' ')
  const root = process.getuid?.() === 0
  const options = {
    env: { ...process.env, ...env },
    ...(asNobody && root ? { uid: NOBODY, gid: NOBODY } : {}),
  }
  return new Promise((done) => {
    execFile('sh', ['-c', `${before} ${line} ${after}`], options, (failed, out, error) => {
      done({ status: failed === null ? 0 : Number(failed.code), out, error })
    })
  })
}

/** A copy of good records that everybody may read, and whose own folder nobody else may write to. */
function readable(): string {
  const folder = contentCopy()
  chmodSync(resolve(folder, '..'), 0o755)
  return folder
}

/** A command that fails as only a mistake in it can; what it says is given. */
function broken(main: string): string {
  const path = join(mkdtempSync(join(tmpdir(), 'broken-')), 'broken.mts')
  const program = JSON.stringify(join(ROOT, 'src/commands/program.ts'))
  writeFileSync(path, `const { run } = await import(${program})\nawait run(() => { ${main} })\n`)
  return path
}

/** One line or two: what is wrong, and how to fix it. */
function toldInWords(ended: Ended, status: number, message: RegExp): void {
  expect([ended.status, ended.error]).toEqual([status, expect.stringMatching(message)])
  expect(ended.error.trimEnd().split('\n').length).toBeLessThan(3)
  noTrace(ended)
}

const said = ['--by', 'A. Mason', '--function', 'manager', '--reason', 'all tests done']

describe('a command that is refused permission', () => {
  it('check says which file cannot be read, as a diagnostic', async () => {
    const folder = readable()
    chmodSync(join(folder, 'lots/tuff/T-1.yaml'), 0)
    const ended = await shell('check', ['--content', folder], { asNobody: true })
    expect(ended.error).toMatch(/^lots\/tuff\/T-1\.yaml:1:1: the file cannot be read \[file-unreadable\]/)
    expect(ended.status).toBe(1)
    noTrace(ended)
  })
  it.each([
    ['new', ['producer', '--name', 'Hill Lime'], /\nNothing was written\.\n$/],
    ['import', ['TABLE', '--map', 'MAP', '--write'], /\nNothing was imported\.\n$/],
  ])('%s writes nothing beside a folder of records that cannot be read', async (command, args, message) => {
    const folder = readable()
    const own = { TABLE: join(folder, '../rows.csv'), MAP: join(folder, '../map.yaml') }
    writeFileSync(own.TABLE, 'Lot\nT-2\n')
    writeFileSync(
      own.MAP,
      'every: { source: tuff }\ntables:\n  - holds: lots\n    columns:\n      Lot: lot\n',
    )
    chmodSync(join(folder, 'sources'), 0)
    chmodSync(folder, 0o777)
    const words = args.map((word) => own[word as keyof typeof own] ?? word)
    const ended = await shell(command, [...words, '--content', folder], { asNobody: true })
    expect(ended).toMatchObject({ status: 1, error: expect.stringMatching(message) })
    expect(ended.error).toMatch(/^sources:1:1: [^\n]*\n[^\n]*fix: put the folder back/)
    expect(ended.error).not.toMatch(/lots\//)
  })
  it('import does not tell to write a map anew that is there and cannot be read', () => {
    expect(() => mapAt(mkdtempSync(join(tmpdir(), 'map-')))).toThrow(
      /cannot be read\.\nfix: check its permissions/,
    )
  })
  it.each([
    [
      'site',
      /site cannot be replaced: \S+site cannot be written to \(permission is denied\)\.\nfix: give yourself/,
    ],
    [
      'site.old',
      /site\.old, left by an earlier build, cannot be removed: permission is denied\.\nfix: remove it/,
    ],
  ])('build does not begin where %s cannot be removed', async (name, message) => {
    const folder = readable()
    const beside = mkdtempSync(join(tmpdir(), 'fixed-'))
    chmodSync(beside, 0o777)
    mkdirSync(join(beside, name))
    writeMarker(join(beside, name), { program: 'test', audience: 'public', state: 'whole' })
    if (name !== 'site') mkdirSync(join(beside, 'site'))
    chmodSync(join(beside, name), 0o555)
    const before = readdirSync(beside)
    const args = ['--content', folder, '--out', join(beside, 'site')]
    toldInWords(await shell('build', args, { asNobody: true }), 1, message)
    expect(readdirSync(beside)).toEqual(before)
    expect(readdirSync(join(beside, name))).toEqual([MARKER])
  })
  it.each([
    ['build', ['--out', 'OUT']],
    ['start', ['--out', 'OUT']],
    ['issue', ['tuff/T-1', ...said]],
    ['demo', ['--lots', '5', '--out', 'OUT']],
  ])('%s says in a line what cannot be written', async (command, args) => {
    const folder = readable()
    const closed = mkdtempSync(join(tmpdir(), 'closed-'))
    chmodSync(closed, 0o555)
    const own = args.map((text) => (text === 'OUT' ? join(closed, 'out') : text))
    const ended = await shell(command, [...own, '--content', folder], { asNobody: true })
    toldInWords(ended, 1, /cannot be (written|opened): permission is denied\.\nfix: /)
  })
})

describe('a command whose output nobody takes', () => {
  it.each([
    ['check', '>/dev/full'],
    ['issue', '>/dev/full'],
  ])('%s says that the disk is full, and ends with 1', async (command, after) => {
    const args = command === 'issue' ? ['tuff/T-1', ...said] : []
    const ended = await shell(command, [...args, '--content', contentCopy()], { after })
    toldInWords(ended, 1, /^What the command reports cannot be written: the disk is full\.\n$/)
  })
  it.each(['check', 'build', 'issue', 'demo'])('%s ends quietly with a closed pipe', async (command) => {
    const args = command === 'issue' ? ['tuff/T-1', ...said] : []
    const out = join(mkdtempSync(join(tmpdir(), 'piped-')), 'out')
    const own = command === 'check' || command === 'issue' ? [] : ['--out', out]
    const more = command === 'demo' ? ['--lots', '5'] : []
    const after = '| true'
    expect(
      await shell(command, [...args, ...own, ...more, '--content', contentCopy()], { after }),
    ).toMatchObject({
      status: 0,
      out: '',
      error: '',
    })
  })
  it('check ends where even standard error is closed', async () => {
    const ended = await shell('check', ['--content', '/nowhere'], { after: '2>&-' })
    expect(ended).toMatchObject({ status: 2, out: '', error: '' })
  })
})

describe('a command that finds something else in its way', () => {
  it.each([
    ['build', 'OUT'],
    ['start', 'OUT'],
    ['demo', 'OUT'],
  ])('%s does not write over a file where its folder should be', async (command, out) => {
    const file = join(mkdtempSync(join(tmpdir(), 'file-')), out)
    writeFileSync(file, 'mine')
    const ended = await run(command, '--content', contentCopy(), '--out', file)
    expect(ended.status).toBeGreaterThan(0)
    expect(ended.error.trimEnd().split('\n').length).toBeLessThan(3)
    noTrace(ended)
    expect(readFileSync(file, 'utf8')).toBe('mine')
  })
  it('issue says where a folder stands in the place of a document', async () => {
    const folder = contentCopy()
    mkdirSync(join(folder, 'issued/tuff/T-1/0.json'), { recursive: true })
    toldInWords(await issue(folder), 1, /0\.json cannot be written: a folder stands in its place\.\nfix: /)
  })
})

/** Stands for a full disk: no file may be larger than some blocks of 512 or 1024 bytes. */
const ROOM_FOR_SMALL_FILES = { before: 'ulimit -f 40 &&', env: { NODE_DISABLE_COMPILE_CACHE: '1' } }

describe('a command that runs out of room', () => {
  it('build says so in place of the bundler', async () => {
    const folder = contentCopy()
    const out = join(folder, '../site')
    const ended = await shell('build', ['--content', folder, '--out', out], ROOM_FOR_SMALL_FILES)
    toldInWords(ended, 1, /^The output cannot be written: it would be larger than [^\n]*\nfix: [^\n]*\n$/)
    // What was computed of the sources is kept for the next build.
    expect(readdirSync(join(folder, '..'))).toEqual(['.puteoli', 'content'])
  })
  it('export keeps the earlier spreadsheet, and leaves nothing beside it', async () => {
    const folder = contentCopy()
    const out = join(folder, '../lots.xlsx')
    writeFileSync(out, 'earlier')
    const before = readdirSync(join(folder, '..'))
    const ended = await shell('export', ['--content', folder, '--out', out], {
      ...ROOM_FOR_SMALL_FILES,
      before: 'ulimit -f 1 &&',
    })
    toldInWords(
      ended,
      1,
      /lots\.xlsx cannot be written: it would be larger than .*\.\nfix: .* is as it was\n$/,
    )
    expect(readFileSync(out, 'utf8')).toBe('earlier')
    expect(readdirSync(join(folder, '..'))).toEqual(before)
  })
})

describe('a command that fails while something else goes on', () => {
  it('ends at once', async () => {
    const main = "setTimeout(() => process.stderr.write('late'), 2000); throw new Error('early')"
    const ended = await shell(broken(main), [], {})
    toldInWords(ended, 1, /fault: early\nfix: [^\n]*\n$/)
  })
})

describe('a command whose current folder was removed', () => {
  it.each([
    ['puteoli', ['check']],
    ['check', ['--content', 'records']],
  ])('%s says so', async (command, args) => {
    const folder = mkdtempSync(join(tmpdir(), 'gone-'))
    const ended = await shell(command, args, { before: `cd "${folder}" && rmdir "${folder}" &&` })
    toldInWords(ended, 1, /^The current folder no longer exists\.\nfix: change to a folder that exists/)
  })
})

describe('a fault of the program', () => {
  const LATE = 'setTimeout(() => { null.x }, 1); return 0'
  const UNHEARD = 'setTimeout(() => Promise.reject(new Error("unheard")), 1); return 0'
  it.each([
    ['at once', 'return null.x', /fault: Cannot read properties of null/],
    ['later', LATE, /fault: Cannot read properties of null/],
    ['in a promise that nothing waits for', UNHEARD, /fault: unheard\n/],
    ['without a word', 'throw new Error("")', /fault: it does not say which\n/],
    ['on a second line', 'throw new Error("It failed:\\n  here")', /fault: It failed: here\n/],
  ])('is told in a line with how to get the trace: %s', async (_when, main, message) => {
    const ended = await shell(broken(main), [], {})
    toldInWords(ended, 1, message)
    expect(ended.error).toMatch(/^The program itself has a fault: .*\nfix: .* PUTEOLI_TRACE=1 .*\n$/)
  })
  it('shows its trace to who asks for it', async () => {
    const ended = await shell(broken(LATE), [], { env: { PUTEOLI_TRACE: '1' } })
    expect(ended.status).toBe(1)
    expect(ended.error).toMatch(/TypeError.*\n +at /)
  })
})
