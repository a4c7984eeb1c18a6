/**
 * The files of a site that is being built. A file of which nothing has changed that it was made of is taken from the site
 * before, under a second name; so is a page that another edition gives the same view, and a file that was made again and has
 * the same bytes. It is taken only where the file that lies there has the bytes that the list of the build before names
 * (file-list.ts), whatever has become of the site since.
 */
import { type BigIntStats, lstatSync, readFileSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { kept } from '../core/measure/kept.ts'
import type { ChangedPaths } from './durable.ts'
import { type DependencyDigests, dependencyDigests, withParts } from '../edition/shape/dependencies.ts'
import type { Edition } from '../edition/shape/edition.ts'
import type { Trace } from '../edition/shape/trace.ts'
import type { Piece } from '../edition/writers/outputs.ts'
import { digestOf } from '../records/issued/digest.ts'
import {
  type FileList,
  type ListedFile,
  type MadeOf,
  noList,
  readList,
  type WrittenFile,
  writeList,
} from './file-list.ts'
import type { FolderPaths } from './folder-tree.ts'
import { FolderWriter } from './folder-writer.ts'
import { MARKER } from './output-marker.ts'
import { WORK } from './page-stage.ts'
import { firstToTell } from './why-drawn.ts'

export interface SiteFilesRequest {
  /** The site that is replaced; it need not be there. */
  readonly final: string
  /** The folder that takes its place, with its marker in it. */
  readonly next: string
  /** All that lies in it from an earlier site; nothing where it is empty. */
  readonly spare?: FolderPaths
  readonly edition: Edition
  /** Makes every file and the list anew. */
  readonly fresh: boolean
  /** Whether nothing tells if the program is the one that made the site before: no list is kept. */
  readonly unknown: boolean
  /** Called with each file, so that a command can look at its memory; may throw. */
  readonly atFile?: () => void
}

/**
 * Of all beside the edition that a file is made of.
 * @param common digest of what it shares with all files of its kind @param own what it alone is given
 */
export function givenOf(common: string, own: string): string {
  return [common, digestOf(own)].map((digest) => digest.slice(-DIGITS)).join(' ')
}

/** Of 64: chance makes no two alike, and the list of a large site stays short. */
const DIGITS = 32

/** '' where what it shares has changed, a name of what it alone is given; undefined for nothing. */
export function changedGiven(before: string, now: string): string | undefined {
  if (before === now) return undefined
  return before.split(' ')[0] === now.split(' ')[0] ? 'given' : ''
}

export class SiteFiles {
  readonly #request: SiteFilesRequest
  readonly #list: string
  /** Files of the site before that have not been taken. */
  readonly #before: FileList
  readonly #digestAt: DependencyDigests
  /** The same with what was made for several, as far as the build before has told its parts. */
  readonly #digestNow: DependencyDigests
  readonly #parts: Map<string, Trace>
  readonly #names = new Map<string, string>()
  readonly #mode: bigint | undefined
  readonly #files = new Map<string, WrittenFile>()
  readonly #traces = new Map<Trace, { readonly changed: string | undefined }>()
  readonly #unchanged = new Set<string>()
  /** Of files that were made anew, what was found to have changed; '' stands for all beside the edition. */
  readonly #changed = new Map<string, string>()
  readonly #writer: FolderWriter

  constructor(request: SiteFilesRequest) {
    const { final, next, spare, edition, fresh, unknown } = request
    this.#request = request
    this.#list = join(dirname(final), WORK, `files-of-${basename(final)}.json`)
    this.#before = fresh || unknown ? noList() : readList(this.#list)
    this.#digestAt = dependencyDigests(edition, this.#before.digests)
    this.#digestNow = withParts(this.#digestAt, this.#before.parts)
    this.#parts = new Map(this.#before.parts)
    this.#mode = permissions(statusOf(join(next, MARKER)))
    this.#writer = new FolderWriter(next, spare)
  }

  /** Digest of each file by its path. */
  get digests(): [string, string][] {
    return [...this.#files].map(([path, { file }]) => [path, file])
  }

  /** Paths of files that are made of something that may change. */
  get all(): string[] {
    return [...this.#files].filter(([, { madeOf }]) => madeOf !== null).map(([path]) => path)
  }

  /** What was found to have changed of files that were made anew, once for each; '' is all beside the edition. */
  get changed(): string[] {
    return [...this.#changed.values()]
  }

  isUnchanged(path: string): boolean {
    return this.#unchanged.has(path)
  }

  has(path: string): boolean {
    return this.#files.has(path)
  }

  /**
   * Takes a file of which nothing has changed.
   * @param given digest of all beside the edition that it is made of
   */
  isKept(path: string, given: string): boolean {
    this.#request.atFile?.()
    const before = this.#before.files.get(path)
    if (before?.madeOf == null) return false
    const changed = changedGiven(before.madeOf.given, given) ?? this.#changedOf(before.madeOf.trace)
    if (changed === undefined) return this.#keep(path, before, before.madeOf)
    this.#changed.set(path, changed)
    return false
  }

  /** Digest of the view of a page that was given the same in the site before; null where there is none. */
  viewBefore(path: string, given: string): string | null {
    const madeOf = this.#before.files.get(path)?.madeOf
    return madeOf?.given === given ? madeOf.view : null
  }

  /** Takes a page that has the same view, though what the view was made of has changed. */
  isKeptByView(path: string, madeOf: MadeOf): boolean {
    const before = this.#before.files.get(path)
    const isSame = before?.madeOf?.given === madeOf.given && before.madeOf.view === madeOf.view
    return before !== undefined && isSame && this.#keep(path, before, madeOf)
  }

  /** @param madeOf null for what is made in each build @throws the fault of an earlier file */
  write(path: string, bytes: Uint8Array, madeOf: MadeOf | null): Promise<void> {
    this.#request.atFile?.()
    const made = { file: digestOf(bytes), madeOf: this.#withSharedNames(madeOf) }
    if (!this.#take(path, made)) {
      this.#files.set(path, made)
      this.#writer.write(path, bytes)
    }
    return this.#writer.room()
  }

  /** Writes piece after piece. @returns takes what they were made of, which is known once they are written */
  begin(path: string, pieces: Iterable<Piece>): (madeOf: MadeOf) => void {
    const file = this.#writer.writePieces(path, pieces)
    if (this.#lyingThere(path, file) !== undefined)
      this.#writer.exchange(join(this.#request.final, path), path)
    return (madeOf) => void this.#files.set(path, { file, madeOf: this.#withSharedNames(madeOf) })
  }

  /** Notes what was made for several files in this build. */
  noteParts(parts: ReadonlyMap<string, Trace>): void {
    for (const [name, trace] of parts) this.#parts.set(name, trace)
  }

  /** Waits while more is being written than is well. @throws the fault of an earlier file */
  room(): Promise<void> {
    return this.#writer.room()
  }

  /** Ends when everything is written. @throws the first fault of what was not */
  end(): Promise<void> {
    return this.#writer.end()
  }

  /** Takes away what an earlier site had beside these files. @returns what is not on the disk yet */
  removeLeft(): ChangedPaths {
    this.#writer.removeLeft()
    return this.#writer.changed
  }

  /**
   * Writes the list for the next build, once the site is in its place.
   * @returns lines for the reader of the command
   */
  writeList(): string[] {
    const { final, unknown } = this.#request
    if (unknown) return []
    const now = BigInt(Date.now()) * 1_000_000n
    const markAt = (path: string) => markFrom(statusOf(join(final, path)), now)
    return writeList(this.#list, this.#files, { markAt, parts: this.#parts, digestAt: this.#digestAt })
  }

  /** What was read for one file was read for many: each name is held once. */
  #withSharedNames<Made extends MadeOf | null>(madeOf: Made): Made {
    if (madeOf === null) return madeOf
    const shared = (name: string) => {
      const known = this.#names.get(name) ?? name
      this.#names.set(name, known)
      return known
    }
    return { ...madeOf, trace: madeOf.trace.map(shared) }
  }

  /** Of what was read one that is another now; undefined where all is as it was. */
  #changedOf(trace: Trace): string | undefined {
    const isChanged = (name: string) => {
      const before = this.#before.digests.get(name)
      return before === undefined || this.#digestNow(name) !== before
    }
    return kept(this.#traces, trace, () => ({ changed: firstToTell(trace, isChanged) })).changed
  }

  #keep(path: string, { file }: ListedFile, madeOf: MadeOf): boolean {
    if (!this.#take(path, { file, madeOf })) return false
    this.#unchanged.add(path)
    this.#changed.delete(path)
    return true
  }

  /** Takes a file of the site before, where it has these bytes. */
  #take(path: string, { file, madeOf }: Omit<ListedFile, 'mark'>): boolean {
    const lying = this.#lyingThere(path, file)
    if (lying === undefined) return false
    const isLinked = this.#writer.link(join(this.#request.final, path), path, lying.status)
    // What it was is what it is.
    this.#before.files.delete(path)
    // A second name changes when it was changed last.
    this.#files.set(path, { file, madeOf, ...(isLinked ? {} : { mark: lying.mark }) })
    return true
  }

  /** The file of the site before, where it has these bytes and the permissions of a new one; its mark where that tells so. */
  #lyingThere(path: string, file: string): { status: BigIntStats; mark: string | null } | undefined {
    const before = this.#before.files.get(path)
    if (before?.file !== file) return undefined
    const place = join(this.#request.final, path)
    const status = statusOf(place)
    if (status?.isFile() !== true || permissions(status) !== this.#mode) return undefined
    if (before.mark !== null && markOf(status) === before.mark) return { status, mark: before.mark }
    return digestOf(readFileSync(place)) === file ? { status, mark: null } : undefined
  }
}

function statusOf(path: string): BigIntStats | undefined {
  return lstatSync(path, { bigint: true, throwIfNoEntry: false })
}

function permissions(status: BigIntStats | undefined): bigint | undefined {
  return status === undefined ? undefined : status.mode & 0o777n
}

/** Within this time of a change another one may leave the file with the same time: some systems count in 10 ms. */
const SETTLED_NS = 20_000_000n
const SECOND_NS = 1_000_000_000n

/** null where a change of this moment would not show, as on disks that count whole seconds. */
function markFrom(status: BigIntStats | undefined, now: bigint): string | null {
  if (status === undefined || now - SETTLED_NS < status.ctimeNs || status.ctimeNs % SECOND_NS === 0n)
    return null
  return markOf(status)
}

function markOf({ ino, size, mtimeNs, ctimeNs }: BigIntStats): string {
  return [ino, size, mtimeNs, ctimeNs].map((part) => part.toString(36)).join(' ')
}
