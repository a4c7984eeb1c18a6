/**
 * The list of what a build wrote, beside the output: of each file which bytes it has, how it lay on the disk, and what it
 * was made of. It may be deleted, old, spoiled, or of a build that was killed: a list that is not as it was written is none.
 */
import { kept } from '../core/measure/kept.ts'
import { type DependencyDigests, withParts } from '../edition/shape/dependencies.ts'
import type { Trace } from '../edition/shape/trace.ts'
import { keepText, keptText } from './kept-text.ts'

export interface ListedFile {
  /** Digest of its bytes. */
  readonly file: string
  /** Changes whenever the file may have; null where nothing would tell. */
  readonly mark: string | null
  readonly madeOf: MadeOf | null
}

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
  readonly digests: ReadonlyMap<string, string>
  /** Of what was made for several, all that was read for it. */
  readonly parts: ReadonlyMap<string, Trace>
}

/** Names stand once and are meant by their places: pages of a source rest on all its lots. */
interface Written {
  readonly dependencies: readonly string[]
  readonly digests: readonly (string | null)[]
  readonly traces: readonly (readonly number[])[]
  readonly parts: readonly (readonly [dependency: number, trace: number])[]
  readonly given: readonly string[]
  readonly files: Readonly<
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
  const text = keptText(path)
  return text === undefined ? noList() : listOf(JSON.parse(text) as Written)
}

function listOf({ dependencies, digests, traces, parts, given, files }: Written): FileList {
  const named = traces.map((places) => places.map((place) => dependencies[place] ?? ''))
  return {
    parts: new Map(parts.map(([name, trace]) => [dependencies[name] ?? '', named[trace] ?? []])),
    digests: new Map(
      dependencies.flatMap((name, place) => {
        const digest = digests[place]
        return typeof digest === 'string' ? [[name, digest]] : []
      }),
    ),
    files: new Map(
      Object.entries(files).map(([path, [file, mark, ofGiven, ofTrace, view]]) => [
        path,
        { file, mark, madeOf: madeOf(given[ofGiven ?? -1], named[ofTrace ?? -1], view) },
      ]),
    ),
  }
}

function madeOf(given: string | undefined, trace: Trace | undefined, view?: string): MadeOf | null {
  return given === undefined || trace === undefined ? null : { given, trace, view: view ?? null }
}

interface Read {
  readonly parts: ReadonlyMap<string, Trace>
  readonly digestAt: DependencyDigests
}

/**
 * @param read parts of what was made for several, and what any other dependency is now
 * @returns lines for the reader of the command
 */
export function writeList(path: string, files: ReadonlyMap<string, ListedFile>, read: Read): string[] {
  return keepText(path, `${JSON.stringify(written(files, read))}\n`, 'draw every page')
}

function written(files: ReadonlyMap<string, ListedFile>, read: Read): Written {
  const [dependencies, given, traces] = [new Places(), new Places(), new Places()]
  const known = new Map<Trace, { readonly place: number }>()
  const placeOf = (trace: Trace) =>
    kept(known, trace, () => ({ place: traces.of(trace.map((name) => dependencies.of(name)).join()) })).place
  const lines = [...files].map(([path, { file, mark, madeOf: made }]) => [
    path,
    made === null
      ? [file, mark]
      : [file, mark, given.of(made.given), placeOf(made.trace), ...(made.view === null ? [] : [made.view])],
  ])
  const parts: [number, number][] = []
  // Parts may be of several parts themselves, whose names come last.
  for (let place = 0; place < dependencies.names.length; place++) {
    const own = read.parts.get(dependencies.names[place] ?? '')
    if (own !== undefined) parts.push([place, placeOf(own)])
  }
  return {
    dependencies: dependencies.names,
    digests: dependencies.names.map(withParts(read.digestAt, read.parts)),
    traces: traces.names.map((places) => (places === '' ? [] : places.split(',').map(Number))),
    parts,
    given: given.names,
    files: Object.fromEntries(lines),
  }
}

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
