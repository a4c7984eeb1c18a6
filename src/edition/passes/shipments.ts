/** What was drawn from a lot, and what may have been drawn from any of several. */
import { defined } from '../../core/measure/defined.ts'
import { kept } from '../../core/measure/kept.ts'
import { presentId, sourceOf } from '../../core/measure/lot-id.ts'
import { isBy, type Moment } from '../../core/measure/moment.ts'
import type { Records } from '../../records/load.ts'
import type { Lot, Source } from '../../records/schema/loaded-records.ts'
import type { ShipmentEntry } from '../shape/edition.ts'
import { lotOfShipment } from '../shape/possible-lots.ts'
import { byDateAndBill } from '../shape/shipment-order.ts'

/** Shipments of one lot by the as-of date, in order of date and bill. */
export function shipmentsOf(id: string, record: Lot, asOf: Moment): ShipmentEntry[] {
  return (record.shipments ?? [])
    .filter((shipment) => isBy(shipment.date, asOf))
    .map((shipment) => shipmentEntry(shipment, sourceOf(id), [id]))
    .sort(byDateAndBill)
}

/** Shipments that a source lists itself, by the as-of date, in order of date and bill. */
export interface SharedShipments {
  /** Those of several lots, each once. */
  readonly several: readonly ShipmentEntry[]
  /** The same by each lot that they may have come from. */
  readonly severalOf: (lot: string) => readonly ShipmentEntry[]
  /** Those for which it names one lot, by that. */
  readonly ofOne: (lot: string) => readonly ShipmentEntry[]
}

/**
 * @param records in which the lots are found, by the ids that they have or had
 * @param id of the source
 */
export function sharedShipments(records: Records, id: string, asOf: Moment): SharedShipments {
  const all = (records.sources.get(id)?.shipments ?? [])
    .filter(({ date }) => isBy(date, asOf))
    .map((shipment) => ({
      ...shipmentEntry(shipment, id, []),
      ...possibleLots(records, id, shipment.lots),
    }))
    .sort(byDateAndBill)
  const isOfOne = (shipment: ShipmentEntry) => lotOfShipment(shipment) !== null
  const several = all.filter((shipment) => !isOfOne(shipment))
  return { several, severalOf: byLot(several), ofOne: byLot(all.filter(isOfOne)) }
}

function byLot(shipments: readonly ShipmentEntry[]): SharedShipments['ofOne'] {
  const found = new Map<string, ShipmentEntry[]>()
  for (const shipment of shipments)
    for (const lot of shipment.lots) kept(found, lot, (): ShipmentEntry[] => []).push(shipment)
  return (lot) => found.get(lot) ?? []
}

/** A lot that is not on record by the day cannot be shown, and stays a possible one all the same. */
function possibleLots(
  { lots }: Records,
  source: string,
  names: readonly string[],
): Pick<ShipmentEntry, 'lots' | 'unshown'> {
  const ids = new Set(names.map((name) => presentId(lots, `${source}/${name}`) ?? null))
  const known = [...ids].filter((id) => id !== null)
  return { lots: known, ...(ids.has(null) ? { unshown: true } : {}) }
}

type Recorded = NonNullable<Lot['shipments']>[number] & Pick<NonNullable<Source['shipments']>[number], 'from'>

function shipmentEntry(shipment: Recorded, source: string, lots: readonly string[]): ShipmentEntry {
  return defined({
    bill: shipment.bill,
    date: shipment.date,
    massT: shipment.mass.value,
    massWritten: shipment.mass.written,
    source,
    lots,
    place: shipment.from,
    consignee: shipment.to,
    project: shipment.project,
    purchaseOrder: shipment['purchase-order'],
    seal: shipment.seal,
  })
}
