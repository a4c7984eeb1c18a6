/** Shipments by source and year, each leading to the certificate of its lot, or of every lot that it may be of. */
import { yearOf } from '../../core/measure/moment.ts'
import { nameInSource } from '../../core/measure/lot-id.ts'
import { numberKey } from '../../core/measure/number-key.ts'
import { number } from '../../words/numbers.ts'
import { printedUnit, type UnitSystem } from '../../words/unit-systems.ts'
import type { LotStanding } from '../../words/standing.ts'
import { paths } from '../shape/addresses.ts'
import type { Edition, ShipmentEntry } from '../shape/edition.ts'
import { notOneLotOf, standingOfShipment } from '../shape/possible-lots.ts'
import { shipmentsByYear } from '../shape/shipments-of-sources.ts'
import { whenItLeft } from '../shape/when-it-left.ts'
import { type Linked, linked } from './linked.ts'
import type { SourceByYear } from './register.ts'
import { shipmentTotals, type TotalsBy } from './shipment-totals.ts'

export interface ShipmentsView {
  /** The latest first; none without a shipment. */
  readonly years: readonly string[]
  readonly sources: readonly SourceByYear[]
}

export function shipmentsView(edition: Edition): ShipmentsView {
  const sources = [...edition.sources.values()].map(({ id, name }) => {
    return { id, name, counts: new Map(shipmentsByYear(edition, id)) }
  })
  const years = [...new Set(sources.flatMap(({ counts }) => [...counts.keys()]))].sort().reverse()
  return {
    years,
    sources: sources.map(({ counts, ...source }) => ({
      ...source,
      counts: years.map((year) => counts.get(year) ?? 0),
    })),
  }
}

/** A source and a year whose shipments have a page. */
export interface ShipmentYear {
  readonly source: string
  readonly year: string
}

/** Every source and year that has a page. */
export function shipmentYears(edition: Edition): ShipmentYear[] {
  return [...edition.sources.keys()].flatMap((source) =>
    shipmentsByYear(edition, source).map(([year]) => ({ source, year })),
  )
}

export interface ShipmentLine extends ShipmentEntry {
  /** Of the page, for the first line of a bill; null for another that writes it alike. */
  readonly anchor: string | null
  readonly certificates: readonly Linked[]
  /** Of its lot, or the worst of the possible ones. */
  readonly standing: LotStanding | undefined
  /** Where it cannot be told which lot it was drawn from. */
  readonly notOne: string | null
  /** What was not known on the day that it left, and whether there was a certificate; a line for each lot. */
  readonly onShipping: readonly string[]
  /** In both systems of units, the site's own first. */
  readonly masses: readonly string[]
}

export interface ShipmentYearView {
  readonly name: string
  /** Newest first, each with how its lot stands. */
  readonly shipments: readonly ShipmentLine[]
  readonly totals: readonly TotalsBy[]
  readonly massHeads: readonly string[]
  /** Columns that any of these shipments fills. */
  readonly has: Readonly<
    Record<'onShipping' | 'place' | 'consignee' | 'project' | 'purchaseOrder' | 'seal', boolean>
  >
}

/** Of the columns of masses. */
const MASS_HEADS = { SI: ['Mass, t', 'short tons'], US: ['Mass, short tons', 't'] } as const

export function shipmentYearView(edition: Edition, { source, year }: ShipmentYear): ShipmentYearView {
  const shipments = edition.shipmentsOf(source).filter(({ date }) => yearOf(date) === year)
  const { units } = edition.site
  const anchors = anchorsOf(shipments)
  const standing = shipmentStandings(edition)
  const lines = shipments.map((shipment, place) => ({
    ...shipment,
    ...standing(shipment),
    anchor: anchors[place] ?? null,
    masses: massesOf(shipment, units),
  }))
  return {
    name: edition.sources.get(source)?.name ?? source,
    massHeads: MASS_HEADS[units],
    shipments: lines.toReversed(),
    totals: shipmentTotals(edition, shipments),
    has: {
      onShipping: lines.some((line) => 0 < line.onShipping.length),
      place: shipments.some(({ place }) => place !== undefined),
      consignee: shipments.some(({ consignee }) => consignee !== undefined),
      project: shipments.some(({ project }) => project !== undefined),
      purchaseOrder: shipments.some(({ purchaseOrder }) => purchaseOrder !== undefined),
      seal: shipments.some(({ seal }) => seal !== undefined),
    },
  }
}

/** What a list says of a shipment: where it leads, how that stands, and whether it may be any of several. */
export function shipmentStandings(
  edition: Edition,
): (shipment: ShipmentEntry) => Pick<ShipmentLine, 'certificates' | 'standing' | 'notOne' | 'onShipping'> {
  const onDay = whenItLeft(edition)
  return (shipment) => ({
    certificates: shipment.lots.map((id) => linked(edition, nameInSource(id), paths.certificate(id))),
    standing: standingOfShipment(edition, shipment),
    notOne: notOneLotOf(edition, shipment),
    onShipping: onDay(shipment),
  })
}

/** "bill-bl88454", so that a link or a typed address leads to the line. */
function anchorsOf(shipments: readonly ShipmentEntry[]): (string | null)[] {
  const taken = new Set<string>()
  return shipments.map(({ bill }) => {
    const anchor = `bill-${numberKey(bill)}`
    if (taken.has(anchor)) return null
    taken.add(anchor)
    return anchor
  })
}

function massesOf({ massT }: ShipmentEntry, units: UnitSystem): string[] {
  const columns: readonly UnitSystem[] = units === 'SI' ? ['SI', 'US'] : ['US', 'SI']
  return columns.map((column) => number(printedUnit('t', 1, column).of(massT), 1, units))
}
