/** What was drawn from a lot. */
import { compareMoments, isBy, type Moment } from '../../core/measure/moment.ts'
import { defined } from '../../core/measure/defined.ts'
import type { Lot } from '../../records/schema/loaded-records.ts'
import type { ShipmentEntry } from '../shape/edition.ts'

/** Shipments of one lot by the as-of date, in order of date and bill. */
export function shipmentsOf(id: string, record: Lot, asOf: Moment): ShipmentEntry[] {
  return (record.shipments ?? [])
    .filter((shipment) => isBy(shipment.date, asOf))
    .map((shipment) =>
      defined({
        bill: shipment.bill,
        date: shipment.date,
        massT: shipment.mass.value,
        massWritten: shipment.mass.written,
        lot: id,
        consignee: shipment.to,
        project: shipment.project,
        seal: shipment.seal,
      }),
    )
    .sort(byDateAndBill)
}

/** Order of date, then of the bill's number by code unit. */
export function byDateAndBill(a: ShipmentEntry, b: ShipmentEntry): number {
  return compareMoments(a.date, b.date) || (a.bill < b.bill ? -1 : 1)
}
