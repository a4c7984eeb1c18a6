/**
 * The list of what a build wrote, beside the output: of each file which bytes it has, how it lay on the disk, and what it
 * was made of. It may be deleted, old, spoiled, or of a build that was killed: a list that is not as it was written is none.
 */
import { kept } from '../core/measure/kept.ts'
import { type DependencyDigests, withParts } from '../edition/shape/dependencies.ts'
import type { Trace } from '../edition/shape/trace.ts'
import { keepLines, keptLines } from './kept-lines.ts'

export interface ListedFile {
  /** Digest of its bytes. */
  readonly file: string
  /** Changes whenever the file may have; null where nothing would tell. */
  readonly mark: string | null
  readonly madeOf: MadeOf | null
}

/** Without a mark where it is not known yet. */
export type WrittenFile = Omit<ListedFile, 'mark'> & Partial<Pick<ListedFile, 'mark'>>

/** null for what is made in each build. */
export interface MadeOf {
  /** Digest of all beside the edition. */
  readonly given: string
  /** What was read of the edition. */
  readonly trace: Trace
  /** Digest of the one value that a page is drawn from; null where it is drawn from the edition. */
  readonly view: string | null
}

export interface FileList {
  /** Whoever reads the list may take them out of it: those of a large site are many. */
  readonly files: Map<string, ListedFile>
  /** What a dependency was when the list was written. */
  readonly digests: Map<string, string>
  /** Of what was made for several, all that was read for it. */
  readonly parts: Map<string, Trace>
}

/**
 * A line holds a part of each list. Names stand once and are meant by their places: pages of a source rest on all its lots.
 */
interface Written {
  readonly dependencies?: readonly (readonly [name: string, digest: string | null])[]
  readonly traces?: readonly (readonly number[])[]
  readonly parts?: readonly (readonly [dependency: number, trace: number])[]
  readonly given?: readonly string[]
  readonly files?: Readonly<
    Record<
      string,
      readonly [file: string, mark: string | null, given?: number, trace?: number, view?: string]
    >
  >
}

export function noList(): FileList {
  return { files: new Map(), digests: new Map(), parts: new Map() }
}

export function readList(path: string): FileList {
  const list = noList()
  const [names, named, ofMany]: [string[], Trace[], string[]] = [[], [], []]
  for (const line of keptLines(path) ?? []) {
    const { dependencies = [], traces = [], parts = [], given = [], files = {} } = JSON.parse(line) as Written
    for (const [name, digest] of dependencies) {
      names.push(name)
      if (digest !== null) list.digests.set(name, digest)
    }
    for (const places of traces) named.push(places.map((place) => names[place] ?? ''))
    for (const [name, trace] of parts) list.parts.set(names[name] ?? '', named[trace] ?? [])
    ofMany.push(...given)
    for (const [file, [bytes, mark, ofGiven, ofTrace, view]] of Object.entries(files))
      list.files.set(file, {
        file: bytes,
        mark,
        madeOf: madeOf(ofMany[ofGiven ?? -1], named[ofTrace ?? -1], view),
      })
  }
  return list
}

function madeOf(given: string | undefined, trace: Trace | undefined, view?: string): MadeOf | null {
  return given === undefined || trace === undefined ? null : { given, trace, view: view ?? null }
}

interface Read {
  readonly markAt: (path: string) => ListedFile['mark']
  readonly parts: ReadonlyMap<string, Trace>
  readonly digestAt: DependencyDigests
}

/**
 * @param read marks of files, parts of what was made for several, and what any other dependency is now
 * @returns lines for the reader of the command
 */
export function writeList(path: string, files: ReadonlyMap<string, WrittenFile>, read: Read): string[] {
  return keepLines(path, linesOf(files, read), 'draw every page')
}

function* linesOf(files: ReadonlyMap<string, WrittenFile>, read: Read): Generator<string> {
  for (const part of written(files, read)) yield JSON.stringify(part)
}

/** What a line names stands in it or in one before. */
function* written(files: ReadonlyMap<string, WrittenFile>, read: Read): Generator<Written> {
  const [dependencies, given, traces] = [new Places(), new Places(), new Places()]
  const known = new Map<Trace, { readonly place: number }>()
  const placeOf = (trace: Trace) =>
    kept(known, trace, () => ({ place: traces.of(trace.map((name) => dependencies.of(name)).join()) })).place
  for (const { madeOf } of files.values()) if (madeOf !== null) placeOf(madeOf.trace)
  const parts: [number, number][] = []
  // Parts may be of several parts themselves, whose names come last.
  for (let place = 0; place < dependencies.names.length; place++) {
    const own = read.parts.get(dependencies.names[place] ?? '')
    if (own !== undefined) parts.push([place, placeOf(own)])
  }
  const digestAt = withParts(read.digestAt, read.parts)
  for (const names of inLines(dependencies.names))
    yield { dependencies: names.map((name) => [name, digestAt(name)]) }
  for (const places of inLines(traces.names))
    yield { traces: places.map((own) => (own === '' ? [] : own.split(',').map(Number))) }
  for (const own of inLines(parts)) yield { parts: own }
  for (const some of inLines(files)) {
    const before = given.names.length
    const lines = some.map(([path, { file, mark: known, madeOf: made }]) => {
      const mark = known ?? read.markAt(path)
      return [
        path,
        made === null
          ? [file, mark]
          : [
              file,
              mark,
              given.of(made.given),
              placeOf(made.trace),
              ...(made.view === null ? [] : [made.view]),
            ],
      ]
    })
    yield { given: given.names.slice(before), files: Object.fromEntries(lines) }
  }
}

function* inLines<Element>(all: Iterable<Element>): Generator<Element[]> {
  let line: Element[] = []
  for (const element of all) {
    line.push(element)
    if (line.length < IN_A_LINE) continue
    yield line
    line = []
  }
  if (line.length > 0) yield line
}

/** Names, traces or files. */
const IN_A_LINE = 500

/** Each text once, by its place. */
class Places {
  readonly names: string[] = []
  readonly #places = new Map<string, number>()

  of(text: string): number {
    const known = this.#places.get(text)
    if (known !== undefined) return known
    this.#places.set(text, this.names.length)
    return this.names.push(text) - 1
  }
}
