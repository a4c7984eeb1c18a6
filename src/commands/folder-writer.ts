/** Writes the files of a new folder, several at once. */
import { createHash } from 'node:crypto'
import {
  closeSync,
  constants,
  linkSync,
  mkdirSync,
  openSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { copyFile, link, mkdir, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import type { Piece } from '../edition/writers/outputs.ts'

/** Files that are being written while the next is made. */
const AT_ONCE = 16

export class FolderWriter {
  readonly #folder: string
  readonly #made = new Map<string, Promise<unknown>>()
  readonly #writing = new Set<Promise<void>>()
  readonly #faults: unknown[] = []

  constructor(folder: string) {
    this.#folder = folder
  }

  /** Begins to write. */
  write(path: string, bytes: Uint8Array): void {
    this.#begin(path, (place) => writeFile(place, bytes))
  }

  /** Begins to give a file a second name; a copy where the disk has no such thing. */
  link(from: string, path: string): void {
    this.#begin(path, (place) =>
      link(from, place).catch(() => copyFile(from, place, constants.COPYFILE_EXCL)),
    )
  }

  /** Waits until little enough is being written. @throws the fault of what was begun before */
  async room(): Promise<void> {
    while (AT_ONCE <= this.#writing.size) await Promise.race(this.#writing)
    if (this.#faults.length > 0) throw this.#faults[0]
  }

  /** Writes piece after piece. @returns the digest of them all */
  writePieces(path: string, pieces: Iterable<Piece>): string {
    const digest = createHash('sha256')
    const place = join(this.#folder, path)
    mkdirSync(dirname(place), { recursive: true })
    const file = openSync(place, 'w')
    try {
      for (const piece of pieces) {
        digest.update(piece)
        writeFileSync(file, piece)
      }
    } finally {
      closeSync(file)
    }
    return `sha256-${digest.digest('hex')}`
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

  #begin(path: string, act: (place: string) => Promise<unknown>): void {
    const place = join(this.#folder, path)
    const done = this.#parentOf(place)
      .then(() => act(place))
      .catch((fault: unknown) => this.#faults.push(fault))
      .then(() => void this.#writing.delete(done))
    this.#writing.add(done)
  }

  /** Makes each folder once. */
  #parentOf(place: string): Promise<unknown> {
    const parent = dirname(place)
    const made = this.#made.get(parent) ?? mkdir(parent, { recursive: true })
    this.#made.set(parent, made)
    return made
  }
}
