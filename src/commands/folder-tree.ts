/** What lies below a folder, and whether entries have come or gone since. */
import { type BigIntStats, lstatSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { kept } from '../core/measure/kept.ts'
import { isSettled } from '../records/files.ts'

/** Folders by path with forward slashes, a folder before those in it; "" is the folder itself. */
export type FolderTree = ReadonlyMap<string, FolderEntries>

export interface FolderEntries {
  /** Names of all that is no folder: of files, and of links wherever they lead. */
  readonly files: readonly string[]
  readonly folders: readonly string[]
  readonly permissions: number
  /** Changes with every entry that comes or goes; null where that may not show. */
  readonly mark: string | null
}

/**
 * @param now in milliseconds since 1970
 * @throws the system's refusal of a folder
 */
export function treeOf(folder: string, now = Date.now()): FolderTree {
  const tree = new Map<string, FolderEntries>()
  const lists = new Map<string, readonly string[]>()
  const read = (path: string) => {
    const place = join(folder, path)
    const status = lstatSync(place, { bigint: true })
    const entries = {
      ...entriesOf(place, lists),
      permissions: Number(status.mode & 0o777n),
      mark: markOf(status, now),
    }
    tree.set(path, entries)
    for (const name of entries.folders) read(below(path, name))
  }
  read('')
  return tree
}

/**
 * Looks at each folder of a tree again, without holding the tree.
 * @returns tells whether nothing has come or gone since, as far as marks show
 */
export function asItWas(folder: string, tree: FolderTree): (now?: number) => boolean {
  if ([...tree.values()].some(({ mark }) => mark === null)) return () => false
  // One text, since the folders of a large site are many; no name holds its separator.
  const told = [...tree].map(([path, { mark }]) => `${mark}${SEPARATOR}${path}`).join(SEPARATOR)
  return (now = Date.now()) => {
    const parts = partsOf(told)
    for (const mark of parts) {
      const status = lstatSync(join(folder, parts.next().value ?? ''), {
        bigint: true,
        throwIfNoEntry: false,
      })
      if (status === undefined || markOf(status, now) !== mark) return false
    }
    return true
  }
}

const SEPARATOR = '\0'

function* partsOf(text: string): Generator<string, undefined> {
  let start = 0
  for (let end = text.indexOf(SEPARATOR); end !== -1; end = text.indexOf(SEPARATOR, start)) {
    yield text.slice(start, end)
    start = end + 1
  }
  yield text.slice(start)
}

/** Path of an entry of a folder of a tree. */
export function below(folder: string, name: string): string {
  return folder === '' ? name : `${folder}/${name}`
}

/** Paths of all that is no folder. @param without names in the folder itself that are left out, with what is in them */
export function filesOf(tree: FolderTree, without: ReadonlySet<string> = new Set()): string[] {
  return [...tree].flatMap(([folder, { files }]) => {
    if (without.has(folder.split('/')[0] ?? '')) return []
    const own = folder === '' ? files.filter((name) => !without.has(name)) : files
    return own.map((name) => below(folder, name))
  })
}

/** All that lies in a folder, without its marks. */
export interface FolderPaths {
  readonly files: readonly string[]
  /** A folder before those in it; "" is the folder itself. */
  readonly folders: readonly string[]
}

/** @param without names in the folder itself that are left out, with what is in them */
export function pathsOf(tree: FolderTree, without?: ReadonlySet<string>): FolderPaths {
  return { files: filesOf(tree, without), folders: [...tree.keys()] }
}

/** @param lists of names that were read before: most folders hold one page, and nothing else */
function entriesOf(
  place: string,
  lists: Map<string, readonly string[]>,
): Pick<FolderEntries, 'files' | 'folders'> {
  const [files, folders]: [string[], string[]] = [[], []]
  for (const entry of readdirSync(place, { withFileTypes: true }))
    (entry.isDirectory() ? folders : files).push(entry.name)
  const once = (names: string[]) => kept(lists, names.join('/'), () => names)
  return { files: once(files), folders: once(folders) }
}

function markOf({ ino, mtimeNs, ctimeNs }: BigIntStats, now: number): string | null {
  const mark = `${ino} ${mtimeNs} ${ctimeNs}`
  return isSettled(mark, now) ? mark : null
}
