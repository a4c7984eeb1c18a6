import { appendFileSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs'
import { randomUUID } from 'node:crypto'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { fileDigests } from './file-digests.ts'
import { ROOT } from '../../src/commands/program.ts'
import { contentCopy, run } from './run-command.ts'

const KEPT = join(ROOT, 'node_modules/.cache/puteoli')
const content = contentCopy()
const top = mkdtempSync(join(tmpdir(), 'page-program-'))

/** No other test has it. */
const address = `https://example.org/${randomUUID()}/`

/** Folders of the programs for the address. */
function programs(): string[] {
  return readdirSync(KEPT)
    .filter((name) => name.startsWith('page-program-'))
    .map((name) => join(KEPT, name))
    .filter((path) => namesAddress(join(path, 'program')))
}

function namesAddress(folder: string): boolean {
  return readdirSync(folder)
    .filter((name) => name.startsWith('prerender-entry'))
    .some((name) => readFileSync(join(folder, name), 'utf8').includes(new URL(address).pathname))
}

/** Builds a site at the address. @returns digests of its files */
async function built(out: string): Promise<Record<string, string>> {
  const site = join(top, out)
  const ended = await run('build', '--content', content, '--out', site, '--address', address, '--fresh')
  expect(ended).toMatchObject({ status: 0, error: '' })
  return Object.fromEntries(fileDigests(site))
}

function made(): string {
  const [own, ...others] = programs()
  expect(others).toEqual([])
  return own ?? ''
}

afterAll(() => {
  for (const path of programs()) rmSync(path, { recursive: true })
})

/** One after the other. */
describe('the program that draws pages', { timeout: 120_000 }, () => {
  let first: Record<string, string>

  it('is made by two builds at once, and kept whole', async () => {
    const [one, other] = await Promise.all([built('one'), built('other')])
    first = one
    expect(other).toEqual(one)
    expect(readdirSync(made()).sort()).toEqual(['assets', 'list.json', 'program'])
  })

  it('is not made again, and draws the same', async () => {
    const { ino } = statSync(made())
    expect(await built('one')).toEqual(first)
    expect(statSync(made()).ino).toBe(ino)
  })

  it.each([
    ['program', /^prerender-entry/],
    ['assets/_astro', /\.css$/],
  ])('is made again where a file in its %s was spoiled', async (folder, name) => {
    const spoiled = join(made(), folder)
    const { ino } = statSync(made())
    appendFileSync(join(spoiled, readdirSync(spoiled).find((one) => name.test(one)) ?? ''), '\nthrow 1\n')
    expect(await built('one')).toEqual(first)
    expect(statSync(made()).ino).not.toBe(ino)
  })
})
