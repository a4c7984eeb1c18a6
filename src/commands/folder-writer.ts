/** Writes the files of a new folder, several at once. */
import { createHash } from 'node:crypto'
import {
  closeSync,
  constants,
  copyFileSync,
  linkSync,
  mkdirSync,
  openSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import type { Piece } from '../edition/writers/outputs.ts'

/** Files that are being written while the next is made. */
const AT_ONCE = 16

export class FolderWriter {
  readonly #folder: string
  readonly #made = new Set<string>()
  readonly #writing = new Set<Promise<void>>()
  readonly #faults: unknown[] = []

  constructor(folder: string) {
    this.#folder = folder
  }

  /** Begins to write. @throws the fault of an earlier file */
  async write(path: string, bytes: Uint8Array): Promise<void> {
    const written = writeFile(this.#placeOf(path), bytes)
      .catch((fault: unknown) => void this.#faults.push(fault))
      .finally(() => this.#writing.delete(written))
    this.#writing.add(written)
    if (this.#writing.size === AT_ONCE) await Promise.race(this.#writing)
    if (this.#faults.length > 0) throw this.#faults[0]
  }

  /** Writes piece after piece. @returns the digest of them all */
  writePieces(path: string, pieces: Iterable<Piece>): string {
    const digest = createHash('sha256')
    const file = openSync(this.#placeOf(path), 'w')
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

  /** A second name of the same file; a copy where the disk has no such thing. */
  link(from: string, path: string): void {
    const place = this.#placeOf(path)
    try {
      linkSync(from, place)
    } catch {
      copyFileSync(from, place, constants.COPYFILE_EXCL)
    }
  }

  /** Such a name in the place of a file of the same bytes. */
  exchange(from: string, path: string): void {
    rmSync(join(this.#folder, path))
    this.link(from, path)
  }

  /** Ends when everything is written. @throws the first fault of what was not */
  async end(): Promise<void> {
    await Promise.all(this.#writing)
    if (this.#faults.length > 0) throw this.#faults[0]
  }

  #placeOf(path: string): string {
    const place = join(this.#folder, path)
    const parent = dirname(place)
    if (!this.#made.has(parent)) mkdirSync(parent, { recursive: true })
    this.#made.add(parent)
    return place
  }
}
