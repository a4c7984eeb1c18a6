/**
 * What builds before read of records, of issued documents and of their parts, so that the next one reads only what was
 * written, issued or touched since. Lists beside the output say of each file by which size, times and number on the disk it was
 * known, and what was read. They may be deleted, old, spoiled, of another folder or program, or left by a build that was
 * killed: then all is read again. Builds write them once the output is theirs, and `check` does not ask them.
 */
import { readdirSync, realpathSync, rmSync } from 'node:fs'
import { basename, join } from 'node:path'
import { once } from '../core/measure/once.ts'
import { sharedPlainText, sharedPlainValue } from '../edition/shape/plain-text.ts'
import { isSettled } from '../records/files.ts'
import { type KeptReading, ReadBefore } from '../records/read-before.ts'
import { keepText, keptText, withDigest } from './kept-text.ts'
import { WORK } from './page-stage.ts'
import { programDigest } from './program-digest.ts'

export interface KeptReadings {
  /** For reading the records. */
  readonly before: ReadBefore
  /** The same of issued documents and their parts. */
  readonly issued: ReadBefore
  /** Writes what was read, for the next build, and holds nothing any more. @returns lines for the reader of the command */
  readonly end: () => string[]
}

export interface KeptReadingsRequest {
  /** The folder that the output lies in. */
  readonly beside: string
  /** The folder with the records. */
  readonly content: string
  /** Reads everything anew. */
  readonly fresh?: boolean
  /** When reading begins, in milliseconds since 1970: what was written only just before is read once more. */
  readonly begun?: number
}

export function keptReadings({
  beside,
  content,
  fresh = false,
  begun = Date.now(),
}: KeptReadingsRequest): KeptReadings {
  const made = madeFor(content)
  if (made === null) return { before: new ReadBefore(), issued: new ReadBefore(), end: () => [] }
  const folderOf = (what: string) => join(beside, WORK, `${what}-of-${basename(content)}`)
  const records = keptLists(folderOf('records'), { made, fresh, listOf: listOfRecord })
  const documents = keptLists(folderOf('issued'), { made, fresh, listOf: listOfDocument })
  return {
    get before() {
      return records.readings()
    },
    get issued() {
      return documents.readings()
    },
    // What keeps one list from being written keeps the others: one line tells of it.
    end: () => [...records.end(begun), ...documents.end(begun)].slice(0, 1),
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

/** Lots by their source, and controls; of all other kinds there are few. */
function listOfRecord(path: string): string | undefined {
  return /^(?:lots\/[^/]+|controls)(?=\/)/.exec(path)?.[0].replace('/', '-')
}

/** Documents by the source of their lots, and parts. */
function listOfDocument(name: string): string | undefined {
  return /^issued\/([^/]+)\//.exec(name)?.[1]
}

interface ListsRequest {
  readonly made: string
  readonly fresh: boolean
  /** Name of the list that a file stands in; undefined for one that is read each time. */
  readonly listOf: (name: string) => string | undefined
}

interface KeptLists {
  readonly readings: () => ReadBefore
  readonly end: (begun: number) => string[]
}

/** A folder of lists, so that only those are written of which something has changed. */
function keptLists(folder: string, { made, fresh, listOf }: ListsRequest): KeptLists {
  const earlier = once(
    () =>
      new Map<string, Readings>(
        fresh ? [] : namesIn(folder).map((name) => [name, readList(pathOf(folder, name), made)]),
      ),
  )
  const readings = once(() => new ReadBefore(new Map([...earlier().values()].flatMap((list) => [...list]))))
  return {
    readings,
    end: (begun) => {
      const read = [...readings().kept()].filter(([, { mark }]) => isSettled(mark, begun))
      const lists = Map.groupBy(read, ([name]) => listOf(name))
      lists.delete(undefined)
      for (const name of namesIn(folder)) if (!lists.has(name)) rmSync(pathOf(folder, name), { force: true })
      const notes = [...lists].flatMap(([name = '', list]) =>
        isAsBefore(list, earlier().get(name)) ? [] : writeList(pathOf(folder, name), made, list),
      )
      readings().letGo()
      earlier().clear()
      return notes
    },
  }
}

type Readings = ReadonlyMap<string, KeptReading>
type Listed = readonly (readonly [name: string, reading: KeptReading])[]

function isAsBefore(list: Listed, earlier: Readings = new Map()): boolean {
  return list.length === earlier.size && list.every(([name, reading]) => earlier.get(name) === reading)
}

const ENDING = '.json'

function pathOf(folder: string, name: string): string {
  return join(folder, `${name}${ENDING}`)
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder).flatMap((name) =>
      name.endsWith(ENDING) ? [name.slice(0, -ENDING.length)] : [],
    )
  } catch {
    // Nothing was kept, or it is closed to us.
    return []
  }
}

type Line = readonly [name: string, mark: string, value: unknown]

/** Two lines: what it was made for, the files. */
function readList(path: string, made: string): Readings {
  const text = keptText(path) ?? ''
  const end = text.indexOf('\n')
  if (text.slice(0, end) !== made) return new Map()
  const lines = sharedPlainValue(text.slice(end + 1)) as Line[]
  return new Map(lines.map(([name, mark, value]) => [name, { mark, value }]))
}

function writeList(path: string, made: string, list: Listed): string[] {
  const lines = list.map(([name, { mark, value }]): Line => [name, mark, value])
  return keepText(
    path,
    withDigest(`${made}\n${sharedPlainText(lines)}\n`),
    'read every record and every issued document',
  )
}
