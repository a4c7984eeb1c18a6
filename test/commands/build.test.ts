import { randomUUID } from 'node:crypto'
import { execFile } from 'node:child_process'
import {
  appendFileSync,
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { issueBase } from '../records/issued/issue-base.ts'
import { contentCopy, run, start } from './run-command.ts'

const ROOT = resolve(import.meta.dirname, '../..')
const NOTHING = /Nothing was there to compare with/

/** The good records with certificates issued, and where their site is to be. */
function issued(): { readonly content: string; readonly out: string } {
  const content = contentCopy()
  issueBase(content)
  return { content, out: join(content, '../site') }
}

const beside = (out: string) => readdirSync(join(out, '..')).sort()
const build = (content: string, out: string, ...more: string[]) =>
  run('build', '--content', content, '--out', out, ...more)

function dropLot(content: string): void {
  rmSync(join(content, 'lots/tuff/T-1.yaml'))
  rmSync(join(content, 'issued/tuff/T-1'), { recursive: true })
}

/** Each case builds a site or two in processes of their own. */
describe('npm run build', { timeout: 600_000 }, () => {
  it('refuses to lose a certificate of the site that it replaces, until somebody accepts it', async () => {
    const { content, out } = issued()
    const first = await build(content, out)
    expect(first).toMatchObject({ status: 0, error: '' })
    expect(first.out).toMatch(NOTHING)
    const manifest = JSON.parse(readFileSync(join(out, 'manifest.json'), 'utf8')) as { lots: object }
    const schema = JSON.parse(readFileSync(join(ROOT, 'schemas/manifest.json'), 'utf8')) as object
    expect(new Ajv2020().validate(schema, manifest)).toBe(true)
    expect(Object.keys(manifest.lots)).toEqual(['tuff/T-1', 'tuff/T-9'])
    dropLot(content)
    const refused = await build(content, out)
    expect(refused).toMatchObject({ status: 1, out: '' })
    expect(refused.error).toMatch(/would be lost or exchanged:\n {2}tuff\/T-1: the lot is gone/)
    expect(existsSync(join(out, 'lots/tuff/T-1/index.html'))).toBe(true)
    expect(beside(out)).toEqual(['.puteoli', 'content', 'site'])
    // Without its manifest the site cannot be compared with, which is told before anything is built.
    const kept = readFileSync(join(out, 'manifest.json'))
    rmSync(join(out, 'manifest.json'))
    const blind = await build(content, out)
    expect(blind).toMatchObject({ status: 1, out: '' })
    expect(blind.error).toMatch(
      /holds a site without its manifest\.json.*give a good copy of it with --against/s,
    )
    writeFileSync(join(out, 'manifest.json'), kept)
    // A fresh machine has no earlier site; a copy of its manifest is enough.
    const copy = mkdtempSync(join(tmpdir(), 'copy-'))
    writeFileSync(join(copy, 'manifest.json'), JSON.stringify(manifest))
    const fresh = await build(content, `${out}-fresh`, '--against', copy)
    expect(fresh.error).toMatch(/Against .*copy-.* would be lost/)
    expect(existsSync(`${out}-fresh`)).toBe(false)
    const checked = await run('check', '--content', content, '--against', copy)
    expect(checked.status).toBe(1)
    expect(checked.error).toMatch(/tuff\/T-1: the lot is gone/)
    const accepted = await build(content, out, '--accept', 'tuff/*-1')
    expect(accepted.status).toBe(0)
    // The parts of its documents are left behind, which is worth a warning and no more.
    expect(accepted.error.match(/\[[a-z-]+\]$/gm)).toEqual(Array(3).fill('[issued-part-unused]'))
    expect(accepted.error).toMatch(/^0 errors, 3 warnings$/m)
    expect(accepted.out).toMatch(/accepted against .*:\n {2}tuff\/T-1: the lot is gone/)
    expect(accepted.out).toMatch(/pages of .* that are gone \(\d+\):\n(.*\n)* {2}lots\/tuff\/T-1\//)
    expect(existsSync(join(out, 'lots/tuff/T-1'))).toBe(false)
  })

  it('keeps what site.yaml says is the owner’s, and refuses what it does not know', async () => {
    const { content, out } = issued()
    await build(content, out)
    appendFileSync(join(content, 'site.yaml'), 'keep: [CNAME, .git]\n')
    writeFileSync(join(out, 'CNAME'), 'example.org')
    mkdirSync(join(out, '.git'))
    writeFileSync(join(out, '.git/HEAD'), 'ref')
    expect(await build(content, out)).toMatchObject({ status: 0, error: '' })
    expect(readFileSync(join(out, 'CNAME'), 'utf8')).toBe('example.org')
    expect(readFileSync(join(out, '.git/HEAD'), 'utf8')).toBe('ref')
    writeFileSync(join(out, 'robots.txt'), 'x')
    const refused = await build(content, out)
    expect(refused.status).toBe(2)
    expect(refused.error).toMatch(/holds robots\.txt that no build .*list robots\.txt under keep:/s)
    expect(beside(out)).toEqual(['.puteoli', 'content', 'site'])
  })

  it('gives every file and folder the permissions of new ones, so that any web server may read them', async () => {
    const { content, out } = issued()
    // Those of the project and of the records do not show.
    chmodSync(join(content, 'site.yaml'), 0o600)
    const command = `umask 027 && "${process.execPath}" "${join(ROOT, 'src/commands/build.ts')}" --content "${content}" --out "${out}"`
    await new Promise((done) => execFile('sh', ['-c', command], done))
    const modes = [out, ...readdirSync(out, { recursive: true }).map((path) => join(out, String(path)))].map(
      (path) => ({
        path,
        mode: statSync(path).mode & 0o777,
        wanted: statSync(path).isDirectory() ? 0o750 : 0o640,
      }),
    )
    expect(modes.filter(({ mode, wanted }) => mode !== wanted)).toEqual([])
    expect(modes.length).toBeGreaterThan(50)
  })

  it.each(['SIGINT', 'SIGTERM'] as const)('leaves nothing behind when %s ends it', async (signal) => {
    const { content, out } = issued()
    // At an address that is new, so that the program that draws is made and not taken.
    const address = `https://example.org/${randomUUID()}/`
    const { child, ended } = start('build', '--content', content, '--out', out, '--address', address)
    const { pid } = child
    const stages = () =>
      readdirSync(join(ROOT, 'node_modules')).filter((name) => {
        const owner = join(ROOT, 'node_modules', name, 'owner')
        return (
          name.startsWith('.pages-') && existsSync(owner) && readFileSync(owner, 'utf8').includes(`:${pid},`)
        )
      })
    while (stages().length === 0 && child.exitCode === null) await new Promise((done) => setTimeout(done, 20))
    expect(existsSync(`${out}.next`)).toBe(true)
    child.kill(signal)
    expect((await ended).status).toBe(signal === 'SIGINT' ? 130 : 143)
    expect(stages()).toEqual([])
    // What was computed of the sources is kept for the next build.
    expect(beside(out)).toEqual(['.puteoli', 'content'])
  })

  it('lets one of two builds at once work, and the other say so', async () => {
    const { content, out } = issued()
    const both = await Promise.all([build(content, out), build(content, out)])
    expect(both.map(({ status }) => status).sort()).toEqual([0, 1])
    expect(both.map(({ error }) => error).join('')).toMatch(/^Another command is building in .*site\.\n.*\n$/)
    expect(beside(out)).toEqual(['.puteoli', 'content', 'site'])
  })

  it.each([
    ['a plain file', (folder: string) => join(folder, 'site.yaml'), /site\.yaml is no folder\./],
    ['below one', (folder: string) => join(folder, 'site.yaml/x/y'), /cannot be made: a file stands in/],
    ['where nothing can be made', () => '/proc/x/site', /The output folder \/proc\/x\/site cannot be made: /],
  ])('says in one line that the output is %s', async (_, outOf, message) => {
    const other = contentCopy()
    const ended = await build(contentCopy(), outOf(other))
    expect(ended.status).toBe(2)
    expect(ended.error).toMatch(message)
    expect(ended.error.trimEnd().split('\n')).toHaveLength(2)
  })
})

describe('npm run check', () => {
  it('ends with 1 where even its faults cannot be written', async () => {
    const content = contentCopy()
    writeFileSync(join(content, 'lots/tuff/T-1.yaml'), 'x: [')
    const check = join(ROOT, 'src/commands/check.ts')
    const command = `"${process.execPath}" "${check}" --content "${content}" 2> /dev/full`
    const status = await new Promise<number>((done) => {
      execFile('sh', ['-c', command], { timeout: 30_000 }, (failed) => done(Number(failed?.code ?? 0)))
    })
    expect(status).toBe(1)
  })
  it('says in one line that the disk is full, and ends with 1', async () => {
    const check = join(ROOT, 'src/commands/check.ts')
    const content = contentCopy()
    const command = `"${process.execPath}" "${check}" --content "${content}" --json > /dev/full`
    const [error, status] = await new Promise<[string, number]>((done) => {
      execFile('sh', ['-c', command], (failed, _out, text) => done([text, Number(failed?.code ?? 0)]))
    })
    expect(error).toBe('What the command reports cannot be written: the disk is full.\n')
    expect(status).toBe(1)
  })
})
