/** The demo built under a sub-path, and its public site served. */
import { mkdtempSync, readdirSync, readFileSync } from 'node:fs'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join, relative, resolve, sep } from 'node:path'
import { buildSite } from '../../src/commands/build-site.ts'
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
  readonly stop: () => void
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

/**
 * The demo's public site, served.
 * @param folder of a site that `buildDemo` built
 */
export async function serveDemo(folder: string): Promise<TestSite> {
  const { records } = loadRecords(resolve(ROOT, 'content'))
  const edition = forAudience(
    computeEdition(records, { program: PROGRAM, today: today(), address: ADDRESS }),
    'public',
  )
  const server = await serve(folder, '/a/b/', 0)
  const { port } = server.address() as AddressInfo
  return { folder, edition, url: `http://127.0.0.1:${port}/a/b/`, stop: () => server.close() }
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
