/** The order in which shipments stand. */
import { compareMoments } from '../../core/measure/moment.ts'
import type { ShipmentEntry } from './edition.ts'

/** Order of date, then of the bill's number by code unit. */
export function byDateAndBill(a: ShipmentEntry, b: ShipmentEntry): number {
  return compareMoments(a.date, b.date) || (a.bill < b.bill ? -1 : 1)
}
