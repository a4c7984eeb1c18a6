/** Shipments of lots that do not meet: they head the lot's page, and stand among the facts of the source. */
import { onShipping } from '../../core/checks/on-shipping.ts'
import { numberKey } from '../../core/measure/number-key.ts'
import { yearOf } from '../../core/measure/moment.ts'
import { shortDate } from '../../words/dates.ts'
import { affectedWords } from '../../words/on-shipping.ts'
import { NO_ONE_LOT } from '../../words/possible-lots.ts'
import { paths } from '../shape/addresses.ts'
import type { Edition, ListedLot, LotEntry, ShipmentEntry } from '../shape/edition.ts'
import { lotOfShipment } from '../shape/possible-lots.ts'
import { byDateAndBill } from '../shape/shipment-order.ts'
import { type Linked, linked } from './linked.ts'

export interface AffectedShipments {
  readonly sentence: string
  /** The first ones, as many as a head has room for, each leading to its line. */
  readonly bills: readonly (Linked & { readonly date: string; readonly note: string | null })[]
  readonly more: number
}

/** Bills named over a certificate; the list of shipments has them all. */
const SHOWN = 12

/** null for a lot that meets, or that nothing left of. */
export function affectedShipments(edition: Edition, lot: LotEntry): AffectedShipments | null {
  const { failed } = lot.overTime
  const shipments = [...lot.shipments, ...lot.sharedShipments].sort(byDateAndBill)
  if (failed === null || shipments.length === 0) return null
  const before = shipments.filter(
    ({ date }) => onShipping(lot.overTime, date).failure === 'afterwards',
  ).length
  return {
    sentence: affectedWords(failed, before, shipments.length - before),
    bills: shipments.slice(0, SHOWN).map((shipment) => ({
      ...linked(edition, shipment.bill, billPath(shipment)),
      date: shortDate(shipment.date),
      note: lotOfShipment(shipment) === null ? NO_ONE_LOT : null,
    })),
    more: Math.max(0, shipments.length - SHOWN),
  }
}

/** The line of a shipment among those of its source and year. */
export function billPath({ source, date, bill }: ShipmentEntry): string {
  return `${paths.shipmentYear(source, yearOf(date))}#bill-${numberKey(bill)}`
}

export interface AffectedLot extends AffectedShipments {
  readonly lot: Linked
}

/** The same of every lot of a source that does not meet, the newest first. */
export function affectedLots(edition: Edition, source: string): AffectedLot[] {
  return edition
    .lotsOf(source)
    .filter(doesNotMeet)
    .toReversed()
    .flatMap((row) => {
      const affected = affectedShipments(edition, edition.lot(row.id))
      const lot = linked(edition, row.number, paths.certificate(row.id))
      return affected === null ? [] : [{ lot, ...affected }]
    })
}

function doesNotMeet({ outcomes }: ListedLot): boolean {
  const [governing] = outcomes
  return governing?.outcome === 'does-not-meet' && governing.soFar !== true
}
