/**
 * Pages of the site before that a build takes as they are. A list beside the output says of each which key it was
 * drawn under, a digest of its view and of all else that a page is made of, and which bytes came of it. That holds
 * whatever has become of the site since: a page is taken only where its key is the same and the file that lies there has
 * these very bytes. So the list may be deleted, old, or of a build that was killed.
 */
import { constants, copyFileSync, linkSync, lstatSync, mkdirSync, readFileSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { once } from '../core/measure/once.ts'
import type { PageMemory } from '../edition/shape/drawing.ts'
import type { Edition } from '../edition/shape/edition.ts'
import { digestOf } from '../records/issued/digest.ts'
import { MARKER } from './output-marker.ts'
import { WORK } from './page-stage.ts'
import { writeWhole } from './write-whole.ts'

const PAGE = 'index.html'

interface Drawn {
  readonly key: string
  /** Digest of the page's file. */
  readonly file: string
}

type Listed = Readonly<Record<string, Drawn>>

export interface KeptPagesRequest {
  /** The site that is replaced; it need not be there. */
  readonly final: string
  /** The folder that takes its place, with its marker in it. */
  readonly next: string
  /** Digest of the program; null where nothing tells whether it has changed. */
  readonly program: string | null
  /** Paths of what pages refer to, each with a digest of its content in it. */
  readonly assets: readonly string[]
  readonly edition: Edition
  /** Draws every page, and makes the list anew. */
  readonly fresh: boolean
}

export interface KeptPages extends PageMemory {
  /** Digests of the files of pages that were kept, by path. */
  readonly files: ReadonlyMap<string, string>
  /** Puts them into a site. */
  readonly putInto: (folder: string) => void
  /**
   * Writes the list for the next build.
   * @param files digests of the files of the site that has been built, by path
   * @returns lines for the reader of the command
   */
  readonly write: (files: Readonly<Record<string, string>>) => string[]
}

export function keptPages({ final, next, program, assets, edition, fresh }: KeptPagesRequest): KeptPages {
  const list = join(dirname(final), WORK, `pages-of-${basename(final)}.json`)
  const before = fresh || program === null ? {} : readList(list)
  const mode = permissions(join(next, MARKER))
  const keys = new Map<string, string>()
  const kept = new Map<string, string>()
  const alike = once(() =>
    digestOf(JSON.stringify([program, edition.address, edition.audience, edition.methods, assets])),
  )
  const keyOf = (path: string, view: unknown) => digestOf(JSON.stringify([alike(), path, view]))
  return {
    files: kept,
    isKept: (path, view) => {
      if (kept.has(`${path}${PAGE}`)) return true
      const drawn = before[path]
      if (drawn === undefined || drawn.key !== keyOf(path, view())) return false
      if (!holds(join(final, path, PAGE), drawn.file, mode)) return false
      kept.set(`${path}${PAGE}`, drawn.file)
      keys.set(path, drawn.key)
      return true
    },
    drawn: (path, view) => keys.set(path, keyOf(path, view)),
    putInto: (folder) => {
      for (const path of kept.keys()) put(join(final, path), join(folder, path))
    },
    write: (files) => (program === null ? [] : writeList(list, keys, files)),
  }
}

/** Permissions of a plain file; null where there is none. */
function permissions(path: string): number | null {
  const status = lstatSync(path, { throwIfNoEntry: false })
  return status?.isFile() === true ? status.mode & 0o777 : null
}

/** Whether a file of these bytes lies there, with the permissions of a new one. */
function holds(path: string, digest: string, mode: number | null): boolean {
  const own = permissions(path)
  return own !== null && own === mode && digestOf(readFileSync(path)) === digest
}

/** A second name of the same file; a copy where the disk has no such thing. */
function put(from: string, to: string): void {
  mkdirSync(dirname(to), { recursive: true })
  try {
    linkSync(from, to)
  } catch {
    copyFileSync(from, to, constants.COPYFILE_EXCL)
  }
}

/** The first line is the digest of the second, so that a list that was spoiled is none. */
function readList(path: string): Listed {
  try {
    const [digest, text = ''] = readFileSync(path, 'utf8').split('\n')
    return digest === digestOf(text) ? (JSON.parse(text) as Listed) : {}
  } catch {
    return {}
  }
}

function writeList(
  path: string,
  keys: ReadonlyMap<string, string>,
  files: Readonly<Record<string, string>>,
): string[] {
  const listed = [...keys].map(([page, key]) => [page, { key, file: files[`${page}${PAGE}`] }])
  const text = JSON.stringify(Object.fromEntries(listed))
  try {
    writeWhole(path, `${digestOf(text)}\n${text}\n`, 'check the permissions and the free space of the folder')
    return []
  } catch (error) {
    return [`The next build will draw every page: ${(error as Error).message}`]
  }
}
