/** Lines of text held in a fraction of their size, until they are written. */
import { zstdCompressSync, zstdDecompressSync } from 'node:zlib'

/** Characters that are packed together: a longer text packs no better. */
const TOGETHER = 1 << 20

export class PackedLines {
  readonly #packed: Buffer[] = []
  #loose: string[] = []
  #characters = 0

  /** @param line without a line break */
  add(line: string): void {
    this.#loose.push(line)
    this.#characters += line.length
    if (this.#characters < TOGETHER) return
    this.#packed.push(zstdCompressSync(this.#loose.join('\n')))
    this.#loose = []
    this.#characters = 0
  }

  /** In the order in which they were added. */
  *lines(): Generator<string> {
    for (const packed of this.#packed) yield* zstdDecompressSync(packed).toString('utf8').split('\n')
    yield* this.#loose
  }
}
