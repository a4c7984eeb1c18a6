/** Writes the files of a folder, several at once: of a new one, or of one that is brought up to date. */
import { createHash } from 'node:crypto'
import {
  type BigIntStats,
  closeSync,
  constants,
  linkSync,
  lstatSync,
  mkdirSync,
  openSync,
  renameSync,
  rmdirSync,
  rmSync,
  unlinkSync,
  writeFileSync,
} from 'node:fs'
import { copyFile, link, mkdir, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import type { Piece } from '../edition/writers/outputs.ts'
import { digestIn } from '../records/issued/digest.ts'
import type { ChangedPaths } from './durable.ts'
import type { FolderPaths } from './folder-tree.ts'

/** Files that are being written while the next is made. */
const AT_ONCE = 16

export class FolderWriter {
  readonly #folder: string
  /** What lay in the folder and was not asked for yet. A site that is served may share it: it is never written to. */
  readonly #left: Set<string>
  readonly #folders: Set<string>
  readonly #files = new Set<string>()
  readonly #made = new Map<string, Promise<unknown>>()
  readonly #written: string[] = []
  readonly #changedFolders = new Set<string>()
  readonly #writing = new Set<Promise<void>>()
  readonly #faults: unknown[] = []

  /** @param before all that lies in the folder and concerns the writer; nothing for an empty one */
  constructor(folder: string, before: FolderPaths = { files: [], folders: [] }) {
    this.#folder = folder
    this.#left = new Set(before.files)
    this.#folders = new Set(['', ...before.folders])
  }

  /** What is not on the disk yet. */
  get changed(): ChangedPaths {
    const folders = [...this.#changedFolders].filter((path) => this.#folders.has(path))
    return { files: this.#written, folders }
  }

  /** Begins to write. */
  write(path: string, bytes: Uint8Array): void {
    const place = this.#newPlace(path)
    this.#written.push(path)
    this.#begin(path, () => writeFile(place, bytes, { flag: 'wx' }))
  }

  /**
   * Begins to give a file a second name; a copy where the disk has no such thing.
   * @param file its status
   * @returns false where it has that name already
   */
  link(from: string, path: string, file: BigIntStats): boolean {
    if (this.#left.has(path) && isSame(lstatSync(join(this.#folder, path), { bigint: true }), file)) {
      this.#left.delete(path)
      this.#files.add(path)
      return false
    }
    const place = this.#newPlace(path)
    this.#begin(path, () =>
      link(from, place).catch(() => {
        this.#written.push(path)
        return copyFile(from, place, constants.COPYFILE_EXCL)
      }),
    )
    return true
  }

  /** Waits until little enough is being written. @throws the fault of what was begun before */
  async room(): Promise<void> {
    while (AT_ONCE <= this.#writing.size) await Promise.race(this.#writing)
    if (this.#faults.length > 0) throw this.#faults[0]
  }

  /** Writes piece after piece. @returns the digest of them all */
  writePieces(path: string, pieces: Iterable<Piece>): string {
    const digest = createHash('sha256')
    const place = this.#newPlace(path)
    mkdirSync(dirname(place), { recursive: true })
    const file = openSync(place, 'wx')
    this.#written.push(path)
    try {
      for (const piece of pieces) {
        digest.update(piece)
        writeFileSync(file, piece)
      }
    } finally {
      closeSync(file)
    }
    return digestIn(digest)
  }

  /** Gives a file that was written such a name in its place, where the disk has such a thing. */
  exchange(from: string, path: string): void {
    const [place, other] = [join(this.#folder, path), join(this.#folder, `${path}.other`)]
    try {
      linkSync(from, other)
      renameSync(other, place)
    } catch {
      // It has the same bytes as it is.
      rmSync(other, { force: true })
    }
  }

  /** Ends when everything is written. @throws the first fault of what was not */
  async end(): Promise<void> {
    await Promise.all(this.#writing)
    if (this.#faults.length > 0) throw this.#faults[0]
  }

  /** Takes away what lay in the folder and was not asked for. */
  removeLeft(): void {
    for (const path of this.#left) this.#unlink(path)
    const needed = new Set([...this.#files].flatMap(foldersAbove))
    // A folder comes after the one that it lies in.
    for (const path of [...this.#folders].reverse())
      if (!needed.has(path) && path !== '') {
        rmdirSync(join(this.#folder, path))
        this.#folders.delete(path)
        this.#changedFolders.add(parentOf(path))
      }
  }

  #begin(path: string, act: () => Promise<unknown>): void {
    const done = this.#madeFolder(parentOf(path))
      .then(act)
      .catch((fault: unknown) => this.#faults.push(fault))
      .then(() => void this.#writing.delete(done))
    this.#writing.add(done)
  }

  /** Makes each folder once. */
  #madeFolder(path: string): Promise<unknown> {
    const made = this.#made.get(path) ?? mkdir(join(this.#folder, path), { recursive: true })
    this.#made.set(path, made)
    return made
  }

  /** The place of a file that is to be new: nothing is there, and nothing in the way of its folder. */
  #newPlace(path: string): string {
    for (const folder of foldersAbove(path)) this.#expectFolder(folder)
    if (this.#left.has(path)) this.#unlink(path)
    if (this.#folders.has(path)) this.#removeFolder(path)
    this.#files.add(path)
    this.#changedFolders.add(parentOf(path))
    return join(this.#folder, path)
  }

  #expectFolder(path: string): void {
    if (this.#folders.has(path)) return
    if (this.#left.has(path)) this.#unlink(path)
    this.#folders.add(path)
    this.#changedFolders.add(parentOf(path))
  }

  /** One in which nothing is asked for, as a file takes its name. */
  #removeFolder(path: string): void {
    rmSync(join(this.#folder, path), { recursive: true })
    for (const paths of [this.#left, this.#folders])
      for (const own of paths) if (own === path || own.startsWith(`${path}/`)) paths.delete(own)
  }

  #unlink(path: string): void {
    unlinkSync(join(this.#folder, path))
    this.#left.delete(path)
    this.#changedFolders.add(parentOf(path))
  }
}

function isSame(a: BigIntStats, b: BigIntStats): boolean {
  return a.ino === b.ino && a.dev === b.dev
}

/** The folder itself is "". */
function parentOf(path: string): string {
  return path.slice(0, Math.max(0, path.lastIndexOf('/')))
}

/** Those that a path lies in, the outermost first, without the folder itself. */
function foldersAbove(path: string): string[] {
  const parts = path.split('/')
  return parts.slice(1).map((_, place) => parts.slice(0, place + 1).join('/'))
}
