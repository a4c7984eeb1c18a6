/** Differences between two folders of files: a built site, or generated records. */
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { extname, join, relative, sep } from 'node:path'
import { withoutHashes } from './asset-names.ts'
import { type Compared, type Difference, filePatternOf, together } from './difference.ts'
import { htmlTokens } from './html-tokens.ts'
import { jsonDifferences } from './json-difference.ts'
import { sequenceDifferences } from './sequence-difference.ts'
import { styleDifferences } from './style-difference.ts'

const LINES = new Set(['.csv', '.xml', '.txt', '.yaml', '.md', ''])

/**
 * @param label put before each path, for example "site"
 * @param was folder of the reference
 * @param is present folder
 */
export function folderDifferences(label: string, was: string, is: string): Compared {
  const files = { was: filesIn(was), is: filesIn(is) }
  const names = [...new Set([...files.was.keys(), ...files.is.keys()])].sort()
  const parts = names.map((name) =>
    fileDifferences(`${label}:${name}`, read(was, files.was.get(name)), read(is, files.is.get(name))),
  )
  const pages = names.filter((name) => name.endsWith('.html') && files.was.has(name) && files.is.has(name))
  return together([...parts, styleDifferences(label, pages, was, is)])
}

/** Paths by comparable name. Style sheets are left out: which rules share a sheet is the bundler's choice. */
function filesIn(folder: string): Map<string, string> {
  const files = new Map<string, string>()
  const counts = new Map<string, number>()
  if (!existsSync(folder)) return files
  const found = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) =>
    entry.isFile(),
  )
  for (const path of found
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort()) {
    if (path.startsWith('_astro/') && path.endsWith('.css')) continue
    const name = withoutHashes(path)
    const count = (counts.get(name) ?? 0) + 1
    counts.set(name, count)
    files.set(count === 1 ? name : `${name}#${count}`, path)
  }
  return files
}

function read(folder: string, path: string | undefined): Buffer | null {
  return path === undefined ? null : readFileSync(join(folder, path))
}

/**
 * @param where label and file, for example "site:feed.xml"
 * @param was null where the file is not there
 * @param is null where the file is not there
 */
export function fileDifferences(where: string, was: Buffer | null, is: Buffer | null): Compared {
  const none: Compared = { differences: [], reports: 0, values: 0, files: 1 }
  if (was === null || is === null) return { ...none, differences: [presence(where, was, is)] }
  const kind = /_astro\/.*\.js(#\d+)?$/.test(where) ? 'script' : extname(where.replace(/^\w+:/, ''))
  if (kind === 'script' || (kind !== '.json' && was.equals(is))) return none
  if (kind === '.json')
    return { ...jsonDifferences(where, JSON.parse(`${was}`), JSON.parse(`${is}`)), files: 1 }
  if (kind === '.html')
    return { ...none, differences: textDifferences(where, htmlTokens(`${was}`), htmlTokens(`${is}`)) }
  if (LINES.has(kind))
    return { ...none, differences: textDifferences(where, `${was}`.split('\n'), `${is}`.split('\n')) }
  return {
    ...none,
    differences: [
      { where, pattern: filePatternOf(where), was: `${was.length} bytes`, is: `${is.length} other bytes` },
    ],
  }
}

function presence(where: string, was: Buffer | null, is: Buffer | null): Difference {
  const size = (content: Buffer | null) => (content === null ? null : `a file of ${content.length} bytes`)
  return { where, pattern: `${filePatternOf(where)} (whole file)`, was: size(was), is: size(is) }
}

/** Differing lines or tokens; one that has no counterpart is absent on the other side. */
export function textDifferences(where: string, was: readonly string[], is: readonly string[]): Difference[] {
  const joined = (parts: readonly string[]) => (parts.length === 0 ? null : parts.join('\n'))
  return sequenceDifferences(was, is).map((stretch) => ({
    where,
    pattern: filePatternOf(where),
    was: joined(stretch.was),
    is: joined(stretch.is),
  }))
}
