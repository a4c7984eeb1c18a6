/**
 * Lines that a build keeps for the next one, read and written piece by piece, since together they may be longer than
 * memory is wide. The last line is the digest of all before it, so that lines which were cut short, altered or half written
 * are none.
 */
import { createHash } from 'node:crypto'
import { closeSync, fstatSync, openSync, readSync } from 'node:fs'
import { digestIn, digestOf } from '../records/issued/digest.ts'
import { keepText } from './kept-text.ts'

/** Bytes that are read at once. */
const PIECE = 1 << 20

/** Bytes of the last line, without its end. */
const DIGEST = digestOf('').length

/**
 * The lines that were kept, each read when it is asked for; once, before anything else is written there.
 * @returns undefined for a file that is not there, cannot be read, or is not as it was written
 */
export function keptLines(path: string): Iterable<string> | undefined {
  try {
    return isAsWritten(path) ? linesOf(path) : undefined
  } catch {
    return undefined
  }
}

/**
 * Writes them all or none.
 * @param lines without their ends
 * @param otherwise what the next build does without them: "draw every page"
 * @returns lines for the reader of the command
 */
export function keepLines(path: string, lines: Iterable<string>, otherwise: string): string[] {
  return keepText(path, withDigest(lines), otherwise)
}

function* withDigest(lines: Iterable<string>): Generator<string> {
  const hash = createHash('sha256')
  for (const line of lines) {
    hash.update(`${line}\n`)
    yield `${line}\n`
  }
  yield digestIn(hash)
}

function isAsWritten(path: string): boolean {
  const hash = createHash('sha256')
  let last: Uint8Array = new Uint8Array()
  for (const piece of piecesOf(path)) {
    const both = Buffer.concat([last, piece])
    const end = Math.max(0, both.length - DIGEST)
    hash.update(both.subarray(0, end))
    last = both.subarray(end)
  }
  return Buffer.from(last).toString('latin1') === digestIn(hash)
}

function* linesOf(path: string): Generator<string> {
  let begun: Uint8Array[] = []
  for (const piece of piecesOf(path)) {
    let start = 0
    for (let end = piece.indexOf(NEWLINE); end !== -1; end = piece.indexOf(NEWLINE, start)) {
      yield Buffer.concat([...begun, piece.subarray(start, end)]).toString('utf8')
      begun = []
      start = end + 1
    }
    begun.push(piece.subarray(start))
  }
}

const NEWLINE = 10

function* piecesOf(path: string): Generator<Uint8Array> {
  const file = openSync(path, 'r')
  try {
    for (let left = fstatSync(file).size; left > 0; ) {
      const piece = Buffer.alloc(Math.min(PIECE, left))
      const read = readSync(file, piece)
      if (read === 0) return
      left -= read
      yield piece.subarray(0, read)
    }
  } finally {
    closeSync(file)
  }
}
