/**
 * Which faults of other records keep a lot from being issued: what its certificate says must not depend on a record
 * that cannot be read. Everything else may be issued, however many records are at fault.
 */
import { bySampling } from '../../core/history/history.ts'
import { sourceOf } from '../../core/measure/lot-id.ts'
import type { LotDates } from '../../records/checks/dated-lots.ts'
import type { FaultyRecord } from '../../records/checks/faulty-records.ts'
import type { Records } from '../../records/records.ts'
import type { Lot } from '../../records/schema/loaded-records.ts'
import type { BlockReason } from '../../words/issue-blocks.ts'
import { sampledAt } from '../passes/computed-lot.ts'

export interface IssueBlock {
  /** The file with the fault, relative to the content folder. */
  readonly file: string
  readonly reason: BlockReason
}

/** Records of which some are at fault. */
export interface FaultyContent {
  readonly records: Records
  readonly faulty: readonly FaultyRecord[]
  /** Faulty lots whose sampling is dated all the same. */
  readonly dated: ReadonlyMap<string, LotDates>
  /** Text of a content file; null where it cannot be read. */
  readonly textOf: (file: string) => string | null
}

/**
 * What keeps each lot from being issued.
 * @returns by a lot's id SOURCE/LOT, in the order of the faults; nothing where the certificate is the same as without
 * the faults
 * Notes: 1. a reference is any text of a record that is the id of another, so that no place where one may stand is
 * forgotten; 2. of a text that cannot be read as a record it is searched for the names of laboratories and controls.
 */
export function issueBlocks(content: FaultyContent): (lot: string) => IssueBlock[] {
  const uses = new Map<string, ReadonlySet<string>>()
  const faults = content.faulty.map((fault) => ({ fault, reach: scatterReach(content, fault) }))
  return (lot) => {
    if (faults.length === 0) return []
    const source = sourceOf(lot)
    const used = uses.get(source) ?? usedBy(content, source)
    uses.set(source, used)
    return faults.flatMap(({ fault, reach }) => {
      const reason = reasonFor(content, fault, { lot, used, reach })
      return reason === null ? [] : [{ file: fault.file, reason }]
    })
  }
}

/** Laboratories whose scatter a fault may change; all of them where that cannot be told. */
type Reach = 'all' | readonly string[]

interface Asked {
  readonly lot: string
  /** What its source rests on. */
  readonly used: ReadonlySet<string>
  readonly reach: Reach
}

function reasonFor(content: FaultyContent, fault: FaultyRecord, asked: Asked): BlockReason | null {
  const { lot, used, reach } = asked
  if (fault.kind === 'any') return 'unassigned'
  if (fault.kind === 'method') return null
  if (fault.kind === 'site') return 'referred-to'
  if (fault.kind === 'lot') {
    const own = reasonOfLot(content, fault.id, lot)
    if (own !== null) return own
  } else if (used.has(key(fault.id)) || (fault.kind === 'criterion' && lacksSet(content, lot)))
    return 'referred-to'
  return reach === 'all' || reach.some((laboratory) => used.has(key(laboratory))) ? 'scatter' : null
}

function reasonOfLot({ records, dated }: FaultyContent, faulty: string, lot: string): BlockReason | null {
  if (key(faulty) === key(lot)) return 'own'
  const record = records.lots.get(lot)
  if (record !== undefined && textsIn(record).has(key(faulty))) return 'referred-to'
  if (key(sourceOf(faulty)) !== key(sourceOf(lot))) return null
  const other = records.lots.get(faulty) ?? dated.get(faulty)
  if (other === undefined || record === undefined) return 'undated'
  const [own, before] = [
    { id: lot, sampled: sampledAt(record) },
    { id: faulty, sampled: sampledAt(other) },
  ]
  return bySampling(before, own) < 0 ? 'earlier' : null
}

/** Ids as they are compared: two that differ by case alone are one in many places. */
function key(id: string): string {
  return id.toLowerCase()
}

/** Sets that a source's lots are judged under. */
function setsOf({ records }: FaultyContent, source: string): readonly string[] {
  return records.sources.get(source)?.criteria?.map(({ set }) => set) ?? records.site.criteria
}

/** A set that rests on a faulty one is not among the records, and has no fault of its own. */
function lacksSet(content: FaultyContent, lot: string): boolean {
  return setsOf(content, sourceOf(lot)).some((id) => !content.records.criteria.has(id))
}

/** Ids of everything that a source, its lots and its sets name, and that those name in turn. */
function usedBy(content: FaultyContent, source: string): ReadonlySet<string> {
  const { records } = content
  const lots = [...records.lots].filter(([id]) => sourceOf(id) === source).map(([, lot]) => lot)
  return reachable(records, [source, setsOf(content, source), records.sources.get(source), lots])
}

/** Every text within some values, and within the records that those texts are ids of. */
function reachable(records: Records, from: readonly unknown[]): ReadonlySet<string> {
  const texts = textsIn(from)
  const further = [records.criteria, records.controls, records.conditions, records.laboratories]
  // What is added meanwhile is come to as well.
  for (const text of texts)
    for (const kind of further)
      for (const [id, record] of kind) if (key(id) === text) collectTexts(record, texts)
  return texts
}

function textsIn(value: unknown): Set<string> {
  const texts = new Set<string>()
  collectTexts(value, texts)
  return texts
}

/** Adds every text and every key within a value, as ids are compared. */
function collectTexts(value: unknown, texts: Set<string>): void {
  if (typeof value === 'string') texts.add(key(value))
  else if (typeof value === 'object' && value !== null)
    for (const [name, member] of Object.entries(value)) {
      texts.add(key(name))
      collectTexts(member, texts)
    }
}

/** Kinds of record that results are made with. */
const OF_RESULTS: ReadonlySet<FaultyRecord['kind']> = new Set([
  'source',
  'control',
  'condition',
  'laboratory',
])

/**
 * A control batch counts in the scatter of its laboratory, and so does a lot that was tested against several controls,
 * unless a record that its results need is lost.
 */
function scatterReach(content: FaultyContent, fault: FaultyRecord): Reach {
  if (fault.kind === 'lot') return reachOfLot(content, fault)
  if (!OF_RESULTS.has(fault.kind)) return []
  const { records, textOf } = content
  const own = fault.kind === 'control' ? laboratoriesIn(content, textOf(fault.file)) : []
  if (own === 'all') return own
  const lost = [...records.lots].flatMap(([id, lot]) =>
    isRepeated(lot) && reachable(records, [sourceOf(id), lot]).has(key(fault.id)) ? [textsIn(lot)] : [],
  )
  const named = (laboratory: string) => lost.some((texts) => texts.has(key(laboratory)))
  return [...own, ...[...records.laboratories.keys()].filter(named)]
}

/** Of a lot with a fault in its issued documents alone the results are known. */
function reachOfLot(content: FaultyContent, { id }: FaultyRecord): Reach {
  if (content.records.lots.has(id)) return []
  const text = content.textOf(`lots/${id}.yaml`)
  return text !== null && controlsNamed(text) < 2 ? [] : laboratoriesIn(content, text)
}

function isRepeated({ tests = [] }: Lot): boolean {
  return 1 < new Set(tests.map(({ control }) => control)).size
}

/** Different controls that a text names, whether or not it can be read as a record. */
function controlsNamed(text: string): number {
  const named = [...text.matchAll(/control["']?\s*:\s*["']?([A-Za-z0-9-]*)/gi)].map(([, name]) => name)
  // A key in escapes or on a line of its own would be overlooked.
  return /\\[xuU]|\?/.test(text) || named.includes('') ? 2 : new Set(named).size
}

function laboratoriesIn({ records, faulty }: FaultyContent, text: string | null): Reach {
  if (text === null) return 'all'
  const words = new Set(text.split(/[^A-Za-z0-9-]+/).map(key))
  const ids = [
    ...records.laboratories.keys(),
    ...faulty.flatMap(({ kind, id }) => (kind === 'laboratory' ? [id] : [])),
  ]
  const named = ids.filter((id) => words.has(key(id)))
  return named.length === 0 ? 'all' : named
}
