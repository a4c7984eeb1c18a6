/** The only place that reads content from the disk. */
import { isUtf8 } from 'node:buffer'
import { type BigIntStats, lstatSync, readdirSync, readFileSync, realpathSync, statSync } from 'node:fs'
import { join, sep } from 'node:path'

/** A record file's size at most: thousands of shipments fit, an endless file does not. */
export const LARGEST_BYTES = 4 * 1024 * 1024

export interface ContentFile {
  readonly path: string
  readonly bytes: number
}

/**
 * What is listed but not read: links that lead out of the folder or round in it, folders without permission,
 * anything that is no plain file, folders in the place of one.
 */
export interface Unread {
  readonly path: string
  readonly why: 'outside' | 'folder-link' | 'named-as-file' | 'unreadable' | 'no-file'
}

export type FolderListing =
  | { readonly files: readonly ContentFile[]; readonly unread: readonly Unread[] }
  | { readonly fault: string }
export type FileText =
  | { readonly text: string }
  | { readonly fault: 'missing' | 'unreadable' | 'too-large' }
  /** The line of the first byte that is none of the encoding, from 1. */
  | { readonly fault: 'not-utf8'; readonly line: number }

/** What npm keeps at the root of a content folder that the tool is installed in. */
const OF_THE_TOOL: readonly string[] = ['node_modules', 'package.json', 'package-lock.json']

/**
 * Every file below a content folder but those under issued/ and npm's own, by path with forward slashes in
 * code-unit order; what cannot be read apart.
 */
export function listFolder(folder: string): FolderListing {
  try {
    if (!statSync(folder).isDirectory()) return { fault: 'is not a folder' }
    const listing = { files: [] as ContentFile[], unread: [] as Unread[] }
    listBelow(realpathSync(folder), '', listing)
    return { files: listing.files.sort(byPath), unread: listing.unread.sort(byPath) }
  } catch (error) {
    return { fault: (error as NodeJS.ErrnoException).code === 'ENOENT' ? 'does not exist' : 'cannot be read' }
  }
}

interface Entries {
  readonly files: ContentFile[]
  readonly unread: Unread[]
}

/** @param path of a folder below the root; '' is the root itself, which throws where it cannot be read */
function listBelow(root: string, path: string, listing: Entries): void {
  for (const entry of readdirSync(join(root, path), { withFileTypes: true })) {
    const name = path === '' ? entry.name : `${path}/${entry.name}`
    if (entry.name.startsWith('.') || name === 'issued' || OF_THE_TOOL.includes(name)) continue
    const why = unreadable(root, name, entry)
    if (why !== null) listing.unread.push({ path: name, why })
    else if (!entry.isDirectory()) listing.files.push({ path: name, bytes: statSync(join(root, name)).size })
    else listFolderBelow(root, name, listing)
  }
}

function listFolderBelow(root: string, name: string, listing: Entries): void {
  try {
    listBelow(root, name, listing)
  } catch {
    listing.unread.push({ path: name, why: 'unreadable' })
  }
}

/**
 * Why an entry is not read; null where it is. A pipe would be waited for, a link to a folder could lead round
 * for ever.
 */
function unreadable(
  root: string,
  name: string,
  entry: { isFile(): boolean; isDirectory(): boolean; isSymbolicLink(): boolean },
): Unread['why'] | null {
  if (entry.isDirectory()) return /\.(?:ya?ml|mdx)$/i.test(name) ? 'named-as-file' : null
  if (entry.isFile()) return null
  if (!entry.isSymbolicLink()) return 'no-file'
  if (!leadsInside(root, name)) return 'outside'
  const target = statSync(join(root, name))
  return target.isDirectory() ? 'folder-link' : target.isFile() ? null : 'no-file'
}

function byPath(a: { readonly path: string }, b: { readonly path: string }): number {
  return a.path < b.path ? -1 : 1
}

function leadsInside(root: string, name: string): boolean {
  try {
    return realpathSync(join(root, name)).startsWith(`${root}${sep}`)
  } catch {
    return false
  }
}

const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true })

/** A content file's text; a byte order mark stays in it, so that columns are those of the file. */
export function readText(folder: string, path: string): FileText {
  try {
    const full = join(folder, path)
    const status = statSync(full)
    // Diagnostics ask for the line of what was refused, too: a pipe would be waited for, a file outside would
    // be shown.
    if (!status.isFile() || (lstatSync(full).isSymbolicLink() && !leadsInside(realpathSync(folder), path)))
      return { fault: 'unreadable' }
    if (LARGEST_BYTES < status.size) return { fault: 'too-large' }
    const bytes = readFileSync(full)
    return decode(bytes)
  } catch (error) {
    return { fault: (error as NodeJS.ErrnoException).code === 'ENOENT' ? 'missing' : 'unreadable' }
  }
}

function decode(bytes: Buffer): FileText {
  // UTF-16 of Latin letters is UTF-8 as well, with a zero byte beside each letter.
  if (bytes[0] === 0 || bytes[1] === 0) return { fault: 'not-utf8', line: 1 }
  try {
    return { text: decoder.decode(bytes) }
  } catch {
    return { fault: 'not-utf8', line: firstBadLine(bytes) }
  }
}

function firstBadLine(bytes: Buffer): number {
  let [line, start] = [1, 0]
  for (;;) {
    const end = bytes.indexOf(LINE_FEED, start)
    if (end < 0 || !isUtf8(bytes.subarray(start, end))) return line
    line += 1
    start = end + 1
  }
}

const LINE_FEED = 0x0a

/** What changes whenever a content file may have changed; null where it is not there. */
export function fileMark(folder: string, path: string): string | null {
  try {
    return markOf(statSync(join(folder, path), { bigint: true }))
  } catch {
    return null
  }
}

/** The same of a file below issued/, by its path from the content folder: what is no plain file there is never read. */
export function issuedMark(folder: string, path: string): string | null {
  try {
    const status = lstatSync(join(folder, path), { bigint: true })
    return status.isFile() ? markOf(status) : null
  } catch {
    return null
  }
}

function markOf({ ino, size, mtimeNs, ctimeNs }: BigIntStats): string {
  return `${ino} ${size} ${mtimeNs} ${ctimeNs}`
}

/** Disks that date changes coarsely do so by two seconds. */
const COARSEST_MS = 2000

/**
 * Whether a file of this mark has another one after any change that is made later than a moment: of one that was just
 * written, the next change may bear the same time.
 * @param milliseconds since 1970
 */
export function isSettled(mark: string, milliseconds: number): boolean {
  return Number(mark.split(' ').at(-1)) / 1e6 < milliseconds - COARSEST_MS
}

/**
 * Every entry below issued/ that is no folder, by path from there with forward slashes in code-unit order; a folder
 * that cannot be read stands there itself, its path ending with a slash (that of issued/ is empty).
 * @param leftovers with what an interrupted issue left half written
 */
export function listIssued(folder: string, { leftovers = false } = {}): readonly string[] {
  return issuedBelow(join(folder, 'issued'), '')
    .filter((path) => leftovers || !/(^|\/)\.[^/]*$/.test(path))
    .sort()
}

/** @param path of a folder below issued/, ending with a slash; '' is issued/ itself */
function issuedBelow(root: string, path: string): string[] {
  try {
    return readdirSync(join(root, path), { withFileTypes: true }).flatMap((entry) =>
      entry.isDirectory() ? issuedBelow(root, `${path}${entry.name}/`) : [`${path}${entry.name}`],
    )
  } catch (error) {
    // Nothing was issued yet, or a folder went while its parent was read.
    return (error as NodeJS.ErrnoException).code === 'ENOENT' ? [] : [path]
  }
}

/** Whether an entry of `listIssued` is a folder that cannot be read. */
export function isUnreadFolder(path: string): boolean {
  return path === '' || path.endsWith('/')
}

/** Path of a revision's document below issued/, with forward slashes. */
export function documentPath(lot: string, number: number): string {
  return `${lot}/${number}.json`
}

/** Lot and revision of a document by its path below issued/; undefined for another file, even `01.json`. */
export function documentAt(path: string): { readonly lot: string; readonly number: number } | undefined {
  const [, lot, number] = /^([^/]+\/[^/]+)\/(0|[1-9]\d{0,5})\.json$/.exec(path) ?? []
  return lot === undefined ? undefined : { lot, number: Number(number) }
}

/**
 * Bytes of content/issued/SOURCE/LOT/N.json, which its digest is taken of; null where they cannot be read.
 */
export function readIssued(folder: string, lot: string, number: number): Buffer | null {
  return plainFile(join(folder, 'issued', documentPath(lot, number)))
}

/** The digest of a part by its path below issued/; undefined for another file. */
export function partAt(path: string): string | undefined {
  return /^parts\/(sha256-[0-9a-f]{64})\.json$/.exec(path)?.[1]
}

/** Bytes of a part of issued documents, by digest; null where they cannot be read. */
export function readPart(folder: string, digest: string): Buffer | null {
  return plainFile(join(folder, 'issued', 'parts', `${digest}.json`))
}

function plainFile(path: string): Buffer | null {
  try {
    const status = lstatSync(path)
    return !status.isFile() || LARGEST_BYTES < status.size ? null : readFileSync(path)
  } catch {
    return null
  }
}
