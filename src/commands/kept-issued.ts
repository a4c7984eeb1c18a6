/**
 * What builds before read of issued documents and their parts, so that the next one reads only what was issued or touched
 * since. A list beside the output says of each file by which size, times and number on the disk it was known, and what
 * it says of itself. It may be deleted, old, spoiled, of another folder or program, or left by a build that was killed: then
 * all is read again. Only whole builds write it, and `check` does not ask it.
 */
import { realpathSync } from 'node:fs'
import { basename, join } from 'node:path'
import { isSettled } from '../records/files.ts'
import { type KeptReading, ReadBefore } from '../records/read-before.ts'
import { keepText, keptText } from './kept-text.ts'
import { WORK } from './page-stage.ts'
import { programDigest } from './program-digest.ts'

export interface KeptIssued {
  /** For reading the records. */
  readonly issued: ReadBefore
  /** Writes what was read, for the next build. @returns lines for the reader of the command */
  readonly write: () => string[]
}

export interface KeptIssuedRequest {
  /** The folder that the output lies in. */
  readonly beside: string
  /** The folder with the records. */
  readonly content: string
  /** Reads everything anew. */
  readonly fresh?: boolean
  /** When reading begins, in milliseconds since 1970: what was written only just before is read once more. */
  readonly begun?: number
}

export function keptIssued({
  beside,
  content,
  fresh = false,
  begun = Date.now(),
}: KeptIssuedRequest): KeptIssued {
  const made = madeFor(content)
  if (made === null) return { issued: new ReadBefore(), write: () => [] }
  const path = join(beside, WORK, `issued-of-${basename(content)}.json`)
  const earlier = fresh ? new Map<string, KeptReading>() : readList(path, made)
  const issued = new ReadBefore(earlier)
  return {
    issued,
    write: () => {
      const read = [...issued.kept()].filter(([, { mark }]) => isSettled(mark, begun))
      const isAsBefore =
        !fresh &&
        read.length === earlier.size &&
        read.every(([name, reading]) => earlier.get(name) === reading)
      return isAsBefore ? [] : writeList(path, made, read)
    },
  }
}

/** What the program and the folder are told from others by; null where that cannot be said. */
function madeFor(content: string): string | null {
  try {
    const program = programDigest()
    return program === null ? null : JSON.stringify([program, realpathSync(content)])
  } catch {
    // A folder that is not there is told of when it is read.
    return null
  }
}

type Line = readonly [name: string, mark: string, value: unknown]

/** Two lines: what it was made for, the files. */
function readList(path: string, made: string): Map<string, KeptReading> {
  const [first, files] = keptText(path)?.split('\n') ?? []
  if (first !== made || files === undefined) return new Map()
  return new Map((JSON.parse(files) as Line[]).map(([name, mark, value]) => [name, { mark, value }]))
}

function writeList(
  path: string,
  made: string,
  read: readonly (readonly [name: string, reading: KeptReading])[],
): string[] {
  const lines = read.map(([name, { mark, value }]): Line => [name, mark, value])
  return keepText(path, `${made}\n${JSON.stringify(lines)}\n`, 'read every issued document')
}
