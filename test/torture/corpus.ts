/** Sound records to spoil, each with those that it refers to. */
import { readdirSync, readFileSync } from 'node:fs'
import { join, relative, resolve, sep } from 'node:path'
import { recordAt, type RecordName } from '../../src/records/record-path.ts'

const ROOT = resolve(import.meta.dirname, '../..')

export interface CorpusRecord {
  readonly path: string
  readonly text: string
  readonly name: RecordName
}

/** Records that belong together. */
export interface Corpus {
  readonly title: string
  /** The site first: its offset puts the moments of the others in order. */
  readonly records: readonly CorpusRecord[]
  /** Paths of what a record refers to, directly or through others. */
  readonly referredTo: (path: string) => ReadonlySet<string>
  /** The same, the site, and a lot that refers to the record, with what that refers to: enough to judge it. */
  readonly aroundOf: (path: string) => ReadonlySet<string>
}

function recordsIn(folder: string): CorpusRecord[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .filter((path) => !path.startsWith('issued/'))
    .sort()
    .flatMap((path) => {
      const name = recordAt(path)
      return 'kind' in name ? [{ path, text: readFileSync(join(folder, path), 'utf8'), name }] : []
    })
}

/** Lots taken from each source of the demo: the last of them await results, the first are long complete. */
const FIRST = 1
const LAST = 1

/** The demo's records that are written by hand, and a few lots with their controls. */
function demoRecords(): CorpusRecord[] {
  const all = recordsIn(join(ROOT, 'content'))
  const bySource = Map.groupBy(
    all.filter(({ name }) => name.kind === 'lot'),
    ({ name }) => name.id.split('/')[0],
  )
  const lots = [...bySource.values()].flatMap((own) => [...own.slice(0, FIRST), ...own.slice(-LAST)])
  const named = new Set(lots.flatMap(({ text }) => wordsOf(text)))
  return all.filter(
    (record) =>
      lots.includes(record) ||
      (record.name.kind !== 'lot' && (record.name.kind !== 'control' || named.has(record.name.id))),
  )
}

function wordsOf(text: string): string[] {
  return text.match(/[A-Za-z0-9][A-Za-z0-9-]*(?:\/[A-Za-z0-9][A-Za-z0-9-]*)?/g) ?? []
}

function corpusOf(title: string, records: readonly CorpusRecord[]): Corpus {
  const byId = Map.groupBy(records, ({ name }) => name.id)
  const direct = new Map(
    records.map(({ path, text, name }) => {
      const words = new Set([...wordsOf(text), ...(name.kind === 'lot' ? name.id.split('/') : [])])
      return [path, [...words].flatMap((word) => byId.get(word) ?? [])] as const
    }),
  )
  const reach = (path: string, reached: Set<string>): Set<string> => {
    for (const next of direct.get(path) ?? [])
      if (!reached.has(next.path) && next.path !== path) {
        reached.add(next.path)
        reach(next.path, reached)
      }
    return reached
  }
  const known = new Map(records.map(({ path }) => [path, reach(path, new Set())]))
  const referredTo = (path: string): ReadonlySet<string> => known.get(path) ?? new Set()
  const lots = records.filter(({ name }) => name.kind === 'lot').map(({ path }) => path)
  const aroundOf = (path: string) => {
    const user = lots.find((lot) => lot === path || referredTo(lot).has(path)) ?? lots[0] ?? path
    return new Set(['site.yaml', user, ...referredTo(user), ...referredTo(path)])
  }
  return {
    title,
    aroundOf,
    referredTo,
    records: records.toSorted((a, b) => Number(b.path === 'site.yaml') - Number(a.path === 'site.yaml')),
  }
}

/**
 * The small folder that the cases of test/diagnostics spoil by hand, and the demo with few lots. The small one comes
 * twice: it is read many times as fast.
 */
export function corpora(): readonly Corpus[] {
  const small = corpusOf('small', recordsIn(join(ROOT, 'test/diagnostics/base')))
  return [small, small, corpusOf('demo', demoRecords())]
}
