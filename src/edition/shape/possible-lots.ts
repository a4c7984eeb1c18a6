/** The lots that a shipment may have come from, and the worst of how they stand. */
import { combineGroup, isNeutral, severity } from '../../core/criteria/combining.ts'
import { nameInSource } from '../../core/measure/lot-id.ts'
import { notOneLot } from '../../words/possible-lots.ts'
import type { LotStanding } from '../../words/standing.ts'
import type { Edition, ListedLot, ShipmentEntry } from './edition.ts'
import { type NamesConditions, standingOf } from './standing.ts'

/** The lot that a shipment was drawn from; null where it may be any of several, or one that is not shown. */
export function lotOfShipment({ lots, unshown }: Pick<ShipmentEntry, 'lots' | 'unshown'>): string | null {
  return unshown === true || lots.length !== 1 ? null : (lots[0] ?? null)
}

/**
 * How the lot of a shipment stands; of several possible lots the worst.
 * @returns undefined where a possible lot is not in the edition: nobody can say what is the worst
 */
export function standingOfShipment(
  edition: NamesConditions & Pick<Edition, 'lots'>,
  shipment: ShipmentEntry,
): LotStanding | undefined {
  const rows = shipment.lots.map((id) => edition.lots.get(id))
  const known = rows.filter((row) => row !== undefined)
  const worst = known.length < rows.length || shipment.unshown === true ? undefined : worstOf(known)
  return worst && standingOf(edition, worst)
}

/** Why no one lot is named, and which of the possible ones are withdrawn; null where one lot is named. */
export function notOneLotOf({ lots }: Pick<Edition, 'lots'>, shipment: ShipmentEntry): string | null {
  if (lotOfShipment(shipment) !== null) return null
  const withdrawn = shipment.lots.filter((id) => lots.get(id)?.state === 'withdrawn').map(nameInSource)
  return notOneLot({ ...shipment, withdrawn })
}

/** States that a reader must know of first, where lots come to one outcome. */
const STATES: readonly ListedLot['state'][] = ['withdrawn', 'draft', 'provisional', 'complete']

/** The lot whose outcome all of them together come to, joined as clauses that must all hold. */
export function worstOf(lots: readonly ListedLot[]): ListedLot | undefined {
  const outcomeOf = (lot: ListedLot) => lot.outcomes[0]?.outcome ?? 'reported'
  const joined = combineGroup('all-of', lots.map(outcomeOf))
  const place = (lot: ListedLot) => severity(outcomeOf(lot)) * STATES.length + STATES.indexOf(lot.state)
  return lots
    .filter((lot) => outcomeOf(lot) === joined || isNeutral(joined))
    .toSorted((a, b) => place(a) - place(b))[0]
}
