/** The shipments of a source, each once, with the lots that it came from or may have come from. */
import type { ShipmentEntry } from '../shape/edition.ts'
import { isInForce } from './last-lot.ts'
import type { SourceLot } from './source-lots.ts'

export interface SourceBill {
  readonly shipment: ShipmentEntry
  /** One where it is known. */
  readonly lots: readonly SourceLot[]
}

/** Whether none of the lots that a shipment may be of has a certificate in force. */
export function leftUncertified({ lots }: SourceBill): boolean {
  return !lots.some(({ row }) => isInForce(row))
}

/** @param lots of one source; a shipment that any of them may have gone into is among them */
export function billsOf(lots: readonly SourceLot[]): SourceBill[] {
  const own = lots.flatMap((lot) => lot.shipments.map((shipment) => ({ shipment, lots: [lot] })))
  const shared = new Map<string, { shipment: ShipmentEntry; lots: SourceLot[] }>()
  for (const lot of lots)
    for (const shipment of lot.shared) {
      const key = `${shipment.bill}|${shipment.date.text}`
      const known = shared.get(key)
      if (known === undefined) shared.set(key, { shipment, lots: [lot] })
      else known.lots.push(lot)
    }
  return [...own, ...shared.values()]
}
