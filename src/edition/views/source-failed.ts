/** Lots that do not meet, were withdrawn, or were issued again with a changed value. */
import { shortDate } from '../../words/dates.ts'
import { plural } from '../../words/numbers.ts'
import { mass, missedWords } from '../../words/source-strip.ts'
import type { LotStanding } from '../../words/standing.ts'
import type { Edition } from '../shape/edition.ts'
import type { SourceLot } from './source-lots.ts'
import { isFailed } from './source-strip.ts'

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
  /** The newest first. */
  readonly lots: readonly FailedLot[]
  readonly more: number
}

const SHOWN = 60

export function failedLots({ site }: Pick<Edition, 'site'>, lots: readonly SourceLot[]): FailedLots {
  const found = lots.filter((lot) => isFailed(lot) || lot.row.state === 'withdrawn' || 0 < lot.changed.length)
  return {
    lots: found
      .slice(-SHOWN)
      .reverse()
      .map((lot) => failedLot(lot, site.units)),
    more: Math.max(0, found.length - SHOWN),
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
    missed: missed.map(missedWords),
    changed: [
      ...revisions.slice(1).map(({ date, reason }) => `${shortDate(date)}: ${reason}`),
      ...changed.map((text) => `differs today: ${text}`),
    ],
    bills:
      shipments.length === 0 ? 'none' : `${plural(shipments.length, 'bill', 'bills')}, ${mass(massT, units)}`,
  }
}
