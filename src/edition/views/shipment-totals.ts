/** What was shipped in a year, by month, silo, project and lot: each shipment counts once, whatever lots it may be of. */
import { nameInSource } from '../../core/measure/lot-id.ts'
import { monthOf } from '../../core/measure/moment.ts'
import { sum } from '../../core/statistics/descriptive.ts'
import { NO_ONE_LOT } from '../../words/possible-lots.ts'
import { quantity } from '../../words/units.ts'
import type { Edition, ShipmentEntry } from '../shape/edition.ts'
import { lotOfShipment } from '../shape/possible-lots.ts'

/** Totals of one kind; a kind of which nothing is on record is left out. */
export interface TotalsBy {
  readonly by: string
  readonly lines: readonly TotalLine[]
}

export interface TotalLine {
  /** Month, silo, project or lot. */
  readonly name: string
  readonly shipments: number
  /** With its unit. */
  readonly mass: string
}

/** @param shipments of one source, those of the public without what is withheld */
export function shipmentTotals(edition: Edition, shipments: readonly ShipmentEntry[]): TotalsBy[] {
  const silos = silosOf(edition, shipments)
  return [
    totals(edition, 'Month', shipments, ({ date }) => monthOf(date)),
    totals(edition, 'Silo or terminal', shipments, (one) => silos(one)),
    totals(edition, 'Project', shipments, ({ project }) => project),
    totals(edition, 'Lot', shipments, (shipment) => {
      const lot = lotOfShipment(shipment)
      return lot === null ? NO_ONE_LOT : nameInSource(lot)
    }),
  ].filter(({ lines }) => 0 < lines.length)
}

function totals(
  { site }: Edition,
  by: string,
  shipments: readonly ShipmentEntry[],
  nameOf: (shipment: ShipmentEntry) => string | undefined,
): TotalsBy {
  const groups = Map.groupBy(shipments, nameOf)
  const lines = [...groups].flatMap(([name, own]): TotalLine[] =>
    name === undefined
      ? []
      : [
          {
            name,
            shipments: own.length,
            mass: quantity(sum(own.map(({ massT }) => massT)), 1, 't', site.units),
          },
        ],
  )
  return { by, lines: lines.sort((a, b) => (a.name < b.name ? -1 : 1)) }
}

/** Where it was loaded, else the silo of its lot; each lot is asked once. */
function silosOf(
  edition: Edition,
  shipments: readonly ShipmentEntry[],
): (shipment: ShipmentEntry) => string | undefined {
  const lots = new Set(shipments.flatMap((shipment) => lotOfShipment(shipment) ?? []))
  const silos = new Map(
    [...lots].map((id) => [id, edition.lots.has(id) ? edition.lot(id).record.silo : undefined]),
  )
  return (shipment) => {
    const lot = lotOfShipment(shipment)
    return shipment.place ?? (lot === null ? NO_ONE_LOT : silos.get(lot))
  }
}
