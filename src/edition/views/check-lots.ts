/** The lots of a check report, a line each: what needs a hand first, then the newest first. */
import type { Outcome } from '../../core/criteria/outcome.ts'
import { bySampling } from '../../core/history/history.ts'
import { dateOf } from '../../core/measure/moment.ts'
import { date } from '../../words/dates.ts'
import { blockWords, type BlockReason } from '../../words/issue-blocks.ts'
import { countWords } from '../../words/numbers.ts'
import { outcomeWords } from '../../words/outcomes.ts'
import { plainSpaces } from '../../words/sentences.ts'
import { isDue } from '../shape/due.ts'
import type { Edition, ListedLot } from '../shape/edition.ts'
import { oncePerSource, type PerSource } from '../shape/once-per-source.ts'
import { standingOf } from '../shape/standing.ts'
import { wordsOfVerdict } from '../shape/verdict-words.ts'

/** What somebody has to do about a lot, the most urgent first; `nothing` where it only stands on record. */
export const NEEDS = ['fault', 'overdue', 'failing', 'to-issue', 'nothing'] as const
export type Need = (typeof NEEDS)[number]

export interface CheckedLot {
  /** SOURCE/LOT */
  readonly id: string
  readonly need: Need
  /** Where it stands, then a line for each clause that is not met or that a result is missing for. */
  readonly lines: readonly string[]
}

export interface CheckedScope {
  /** Lots or sources by id; all without it. */
  readonly lots?: ReadonlySet<string>
  /** The first of these that a lot is judged under in place of the governing set. */
  readonly criteria?: ReadonlySet<string>
}

/** A lot or a source whose own record has a fault, so that it was not judged. */
export interface UnjudgedRecord {
  /** SOURCE/LOT, or SOURCE. */
  readonly id: string
  readonly errors: number
  /** Lots that were not judged with it: those of a source. */
  readonly lots: number
}

export interface CheckedFaults {
  readonly unjudged: readonly UnjudgedRecord[]
  /** What keeps a lot from being issued. */
  readonly blocks: (lot: string) => readonly { readonly file: string; readonly reason: BlockReason }[]
  /** A text that somebody has to replace before the lot can be issued, and the record that says it. */
  readonly left: (lot: string) => { readonly file: string; readonly text: string } | null
}

/** Lots of a source that are asked for, by id; made from one source at a time, whose lots are not needed after it. */
export type CheckedSource = PerSource<ReadonlyMap<string, CheckedLot>>

export function checkedSource(faults: CheckedFaults, scope: CheckedScope): CheckedSource {
  const own = new Set(faults.unjudged.map(({ id }) => id))
  return oncePerSource((edition, source) => {
    const asked = edition.lotsOf(source).filter((lot) => isAsked(lot, scope) && !own.has(lot.id))
    return new Map(
      asked.flatMap((lot) => {
        const checked = checkedLot(edition, faults, lot, scope)
        return checked === null ? [] : [[lot.id, checked] as const]
      }),
    )
  })
}

export function checkedLots(
  edition: Edition,
  faults: CheckedFaults,
  scope: CheckedScope,
  ofSource: CheckedSource = checkedSource(faults, scope),
): CheckedLot[] {
  const faulty = faults.unjudged
    .filter(({ id }) => isAsked({ id, source: id.split('/')[0] ?? '' }, scope))
    .map((one): CheckedLot => ({ id: one.id, need: 'fault', lines: [unjudgedLine(one)] }))
  const judged = [...edition.lots.values()]
    .sort((a, b) => Number(isWithdrawn(a)) - Number(isWithdrawn(b)) || bySampling(b, a))
    .flatMap(({ id, source }) => ofSource(edition, source).get(id) ?? [])
  return [...faulty, ...judged.toSorted((a, b) => NEEDS.indexOf(a.need) - NEEDS.indexOf(b.need))]
}

function isAsked({ id, source }: Pick<ListedLot, 'id' | 'source'>, { lots }: CheckedScope): boolean {
  return lots === undefined || lots.has(id) || lots.has(source)
}

/** Nobody has anything more to do for it, so that it stands last. */
function isWithdrawn({ state }: ListedLot): boolean {
  return state === 'withdrawn'
}

function unjudgedLine({ id, errors, lots }: UnjudgedRecord): string {
  const others = lots === 0 ? '' : `; nor were its ${countWords(lots, 'lot')}`
  return `${id}: not judged, its record has ${countWords(errors, 'error')}${others}`
}

/** Null for a lot that is judged under none of the sets asked for. */
function checkedLot(
  edition: Edition,
  { blocks, left: leftIn }: CheckedFaults,
  lot: ListedLot,
  { criteria }: CheckedScope,
): CheckedLot | null {
  const judged = lot.outcomes.find(({ criterion }) => criteria?.has(criterion) ?? true)
  if (judged === undefined && criteria !== undefined) return null
  const standing = standingOf(edition, lot, judged?.criterion)
  const isReady = isDue(edition.lot(lot.id))
  const under = judged === undefined ? '' : `, ${judged.criterion}`
  const head = `${lot.id}, ${date(dateOf(lot.sampled))}${under}: ${standing.text}`
  const blocked = isReady ? blocks(lot.id) : []
  const left = isReady && blocked.length === 0 ? leftIn(lot.id) : null
  return {
    id: lot.id,
    need: needOf(lot, { late: standing.late, isReady, outcome: judged?.outcome }),
    lines: [
      `${head}${isReady && blocked.length === 0 ? `; ${readyWords(left)}` : ''}`,
      ...(judged === undefined ? [] : clauseLines(edition, lot.id, judged.criterion)),
      ...(blocked.length === 0 ? [] : [blockWords(lot.id, blocked)]),
    ].map(plainSpaces),
  }
}

function readyWords(left: ReturnType<CheckedFaults['left']>): string {
  return left === null ? 'ready to issue' : `to be issued once ${left.file} no longer says ${left.text}`
}

interface Standing {
  readonly late: boolean
  readonly isReady: boolean
  readonly outcome: Outcome | undefined
}

/** A lot that fails needs a hand until its certificate says so for good. */
function needOf({ state }: ListedLot, { late, isReady, outcome }: Standing): Need {
  if (late) return 'overdue'
  const open = state === 'draft' || state === 'provisional'
  if (open && outcome !== undefined && OPEN.has(outcome)) return 'failing'
  return isReady ? 'to-issue' : 'nothing'
}

/** Outcomes that somebody has to do something about. */
const OPEN: ReadonlySet<Outcome> = new Set(['does-not-meet', 'not-valid', 'not-reported', 'inconclusive'])

/** Clauses that are not met, or that a result is missing for; those for information decide nothing. */
function clauseLines(edition: Edition, lot: string, criterion: string): string[] {
  const verdict = edition.lot(lot).verdicts.find((candidate) => candidate.criterion === criterion)
  if (verdict === undefined || !verdict.clauses.some(isOpen)) return []
  return wordsOfVerdict(edition, verdict)
    .clauses.filter(isOpen)
    .map(({ title, outcome, reason }) => `${title}: ${outcomeWords(outcome)}; ${reason}`)
}

function isOpen({
  outcome,
  information,
}: {
  readonly outcome: Outcome
  readonly information: boolean
}): boolean {
  return OPEN.has(outcome) && !information
}
