/** What pages are drawn by: the program's own files, the packages that it runs with, and Node.js. */
import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs'
import { createRequire } from 'node:module'
import { join, relative, resolve, sep } from 'node:path'
import { once } from '../core/measure/once.ts'
import { INSTALLED, ROOT } from './program.ts'

const OWN = INSTALLED
  ? ['built', 'schemas', 'package.json']
  : ['src', 'schemas', 'package.json', 'astro.config.mjs']

/** Lists that package managers leave beside the packages, with the version of each: of npm, pnpm and yarn. */
const LISTS = ['.package-lock.json', '.pnpm/lock.yaml', '.yarn-state.yml', '.yarn-integrity']

/** Folders that this program's packages are looked for in, innermost first. */
export function packageFolders(): string[] {
  const folders = createRequire(import.meta.url).resolve.paths('astro') ?? []
  return folders.filter((folder) => existsSync(folder))
}

/**
 * The same only where every page comes out the same of the same view; read once, as the program is that runs.
 * @returns null where nothing says which packages are installed
 */
export const programDigest = once((): string | null => {
  const lists = packageFolders()
    .flatMap((folder) => LISTS.map((name) => join(folder, name)))
    .filter((path) => existsSync(path))
  if (lists.length === 0) return null
  const digest = createHash('sha256').update(JSON.stringify(process.versions))
  for (const path of lists) digest.update(`\0${readFileSync(path, 'utf8')}`)
  for (const path of OWN.flatMap((name) => filesOf(resolve(ROOT, name))).sort())
    digest.update(`\0${relative(ROOT, path).split(sep).join('/')}\0`).update(readFileSync(path))
  return digest.digest('hex')
})

function filesOf(path: string): string[] {
  if (statSync(path).isFile()) return [path]
  return readdirSync(path, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
}
