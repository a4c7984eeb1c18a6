/** The demo built under a sub-path, and its public site served. */
import { existsSync, mkdtempSync, readdirSync, readFileSync } from 'node:fs'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join, relative, resolve, sep } from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { buildSite } from '../../src/commands/build-site.ts'
import { MANIFEST } from '../../src/commands/manifest-file.ts'
import { PROGRAM, ROOT, today } from '../../src/commands/program.ts'
import { serve } from '../../src/commands/serve.ts'
import { computeEdition } from '../../src/edition/compute.ts'
import { forAudience } from '../../src/edition/publishing.ts'
import type { Edition } from '../../src/edition/shape/edition.ts'
import { loadRecords } from '../../src/records/load.ts'

export const ADDRESS = 'https://example.org/a/b/'

export interface TestSite {
  readonly folder: string
  readonly edition: Edition
  readonly url: string
}

export async function buildDemo(
  audience: Edition['audience'] = 'public',
  content = resolve(ROOT, 'content'),
): Promise<{ folder: string; edition: Edition }> {
  const { records } = loadRecords(content)
  const { folder, edition } = await buildSite(records, {
    out: join(mkdtempSync(join(tmpdir(), 'site-')), 'out'),
    audience,
    address: ADDRESS,
  })
  return { folder, edition }
}

/** Where the build of a folder says why there will be none. */
export function failureFile(folder: string): string {
  return `${folder}.failed`
}

/** Waits until the folder's site is whole: a build puts it there with its manifest by one renaming. */
async function siteIn(folder: string): Promise<void> {
  while (!existsSync(join(folder, MANIFEST))) {
    if (existsSync(failureFile(folder)))
      throw new Error(`The demo was not built:\n${readFileSync(failureFile(folder), 'utf8')}`)
    await setTimeout(100)
  }
}

/**
 * The demo's public site, served for as long as the process runs.
 * @param folder in which it lies, or will soon
 */
export async function serveDemo(folder: string): Promise<TestSite> {
  const { records } = loadRecords(resolve(ROOT, 'content'))
  const edition = forAudience(
    computeEdition(records, { program: PROGRAM, today: today(), address: ADDRESS }),
    'public',
  )
  await siteIn(folder)
  return { folder, edition, url: await served(folder) }
}

/** @returns the address under which a folder's site is served for as long as the process runs */
export async function served(folder: string): Promise<string> {
  const server = await serve(folder, '/a/b/', 0)
  server.unref()
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}/a/b/`
}

/** All files of a folder by relative path with forward slashes. */
export function filesOf(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort()
}

export function textOf(folder: string, path: string): string {
  return readFileSync(join(folder, path), 'utf8')
}
