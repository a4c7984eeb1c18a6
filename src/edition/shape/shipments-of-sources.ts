/** What is told of the shipments of all sources, of which nobody holds all for long. */
import { yearOf } from '../../core/measure/moment.ts'
import type { Edition, ShipmentEntry } from './edition.ts'
import { partOfSource } from './part-of-source.ts'
import { byDateAndBill } from './shipment-order.ts'
import { asked } from './trace.ts'
import { whenOwnLeft } from './when-it-left.ts'

type YearCount = readonly [year: string, shipments: number]

/** How many shipments of a source left in each year, the latest year first. */
export const shipmentsByYear = asked(
  'shipments-by-year',
  partOfSource('shipments by year', (edition: Edition, source): readonly YearCount[] =>
    [...Map.groupBy(edition.shipmentsOf(source), ({ date }) => yearOf(date))]
      .map(([year, shipments]): YearCount => [year, shipments.length])
      .sort(([a], [b]) => (a < b ? 1 : -1)),
  ),
)

/** Of all sources and years. */
export function shipmentCount(edition: Edition): number {
  const counts = [...edition.sources.keys()].flatMap((source) => shipmentsByYear(edition, source))
  return counts.reduce((sum, [, shipments]) => sum + shipments, 0)
}

export interface ShipmentThatLeft {
  readonly shipment: ShipmentEntry
  /** What is to be said of it on the day that it left. */
  readonly left: readonly string[]
}

/** Every shipment, in order of date, then of bill. */
export function shipmentsInOrder(edition: Edition): ShipmentThatLeft[] {
  return [...edition.sources.keys()]
    .flatMap((source) => {
      const lines = whenOwnLeft(edition, source)
      return edition
        .shipmentsOf(source)
        .map((shipment, place): ShipmentThatLeft => ({ shipment, left: lines[place] ?? [] }))
    })
    .sort((a, b) => byDateAndBill(a.shipment, b.shipment))
}
