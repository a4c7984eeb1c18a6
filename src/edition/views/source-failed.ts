/** Lots that do not meet, were withdrawn, or were issued again with a changed value. */
import { shortDate } from '../../words/dates.ts'
import { plural } from '../../words/numbers.ts'
import { mass, missedWords } from '../../words/source-strip.ts'
import type { LotStanding } from '../../words/standing.ts'
import type { Edition, SourceEntry } from '../shape/edition.ts'
import { type DivertedLine, divertedLines } from './source-diverted.ts'
import type { SourceLot } from './source-lots.ts'
import { bestOfRoutes } from './source-lot-table.ts'
import { isFailed, ofLastYear, withdrawnInYear } from './source-strip.ts'

export interface FailedLot {
  readonly id: string
  readonly number: string
  readonly sampled: string
  readonly standing: LotStanding
  /** Clauses missed, with value, limit and margin. */
  readonly missed: readonly string[]
  /** What later revisions were made for. */
  readonly changed: readonly string[]
  /** "5 bills, 126 t" */
  readonly bills: string
}

export interface FailedLots {
  /** Those sampled or withdrawn in the last twelve months before the others, the newest first. */
  readonly lots: readonly FailedLot[]
  /** How many of them stand open: those of the last twelve months, as far as there is room. */
  readonly recent: number
  readonly more: number
  /** Material that never became a certified lot, or left one; null where no ledger is kept. */
  readonly diverted: readonly DivertedLine[] | null
}

const SHOWN = 60
/** Lots that stand open. */
const OPEN = 6

export function failedLots(
  edition: Pick<Edition, 'site' | 'asOf'>,
  { record }: Pick<SourceEntry, 'record'>,
  lots: readonly SourceLot[],
): FailedLots {
  const found = lots.filter((lot) => isFailed(lot) || lot.row.state === 'withdrawn' || 0 < lot.changed.length)
  const recent = new Set([...ofLastYear(edition, found), ...withdrawnInYear(edition, found)])
  const isRecent = (lot: SourceLot) => recent.has(lot)
  return {
    lots: found
      .toReversed()
      .toSorted((a, b) => Number(isRecent(b)) - Number(isRecent(a)))
      .slice(0, SHOWN)
      .map((lot) => failedLot(lot, edition.site.units)),
    recent: Math.min(OPEN, recent.size),
    more: Math.max(0, found.length - SHOWN),
    diverted: divertedLines(edition, record),
  }
}

function failedLot(
  { row, standing, missed, revisions, changed, shipments }: SourceLot,
  units: Edition['site']['units'],
): FailedLot {
  const massT = shipments.reduce((sum, shipment) => sum + shipment.massT, 0)
  return {
    id: row.id,
    number: row.number,
    sampled: shortDate(row.sampled),
    standing,
    missed: missedLines(missed),
    changed: [...revisions.slice(1).map(({ date, reason }) => `${shortDate(date)}: ${reason}`), ...changed],
    bills:
      shipments.length === 0 ? 'none' : `${plural(shipments.length, 'bill', 'bills')}, ${mass(massT, units)}`,
  }
}

/** Each value missed; of those of which one would do, what the best of them fell short by. */
function missedLines(missed: SourceLot['missed']): string[] {
  const best = bestOfRoutes(missed)
  const either = best.filter(
    ({ route }) => 1 < missed.filter((own) => own.route === route && route !== null).length,
  )
  return [...missed.map(missedWords), ...either.map(({ by }) => `any one of these would do: short by ${by}`)]
}
