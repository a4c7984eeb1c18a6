/** Shipments by source and year, each leading to the certificate of its lot. */
import { yearOf } from '../../core/measure/moment.ts'
import { sourceOf } from '../../core/measure/lot-id.ts'
import { number } from '../../words/numbers.ts'
import { printedUnit, type UnitSystem } from '../../words/unit-systems.ts'
import type { LotStanding } from '../../words/standing.ts'
import type { Edition, ShipmentEntry } from '../shape/edition.ts'
import { standingOfId } from '../shape/standing.ts'
import type { SourceByYear } from './register.ts'
import { countByYear, yearsOf } from './years.ts'

export interface ShipmentsView {
  /** The latest first; none without a shipment. */
  readonly years: readonly string[]
  readonly sources: readonly SourceByYear[]
}

export function shipmentsView({ shipments, sources }: Edition): ShipmentsView {
  const years = yearsOf(shipments.map(({ date }) => date))
  const bySource = Map.groupBy(shipments, ({ lot }) => sourceOf(lot))
  return {
    years,
    sources: [...sources.values()].map(({ id, name }) => ({
      id,
      name,
      counts: countByYear(
        (bySource.get(id) ?? []).map(({ date }) => date),
        years,
      ),
    })),
  }
}

/** Shipments of one source in one year, in order of date. */
export interface ShipmentYear {
  readonly source: string
  readonly year: string
  readonly shipments: readonly ShipmentEntry[]
}

/** Every source and year that has a page. */
export function shipmentYears({ shipments }: Pick<Edition, 'shipments'>): ShipmentYear[] {
  const groups = Map.groupBy(shipments, ({ lot, date }) => `${sourceOf(lot)}/${yearOf(date)}`)
  return [...groups].map(([key, own]) => {
    const [source = '', year = ''] = key.split('/')
    return { source, year, shipments: own }
  })
}

export interface ShipmentLine extends ShipmentEntry {
  readonly standing: LotStanding | undefined
  /** In both systems of units, the site's own first. */
  readonly masses: readonly string[]
}

export interface ShipmentYearView {
  readonly name: string
  /** Newest first, each with how its lot stands. */
  readonly shipments: readonly ShipmentLine[]
  readonly massHeads: readonly string[]
  /** Columns that any of these shipments fills. */
  readonly has: Readonly<Record<'consignee' | 'project' | 'seal', boolean>>
}

/** Of the columns of masses. */
const MASS_HEADS = { SI: ['Mass, t', 'short tons'], US: ['Mass, short tons', 't'] } as const

export function shipmentYearView(edition: Edition, { source, shipments }: ShipmentYear): ShipmentYearView {
  const { units } = edition.site
  return {
    name: edition.sources.get(source)?.name ?? source,
    massHeads: MASS_HEADS[units],
    shipments: shipments
      .map((shipment) => ({
        ...shipment,
        standing: standingOfId(edition, shipment.lot),
        masses: massesOf(shipment, units),
      }))
      .reverse(),
    has: {
      consignee: shipments.some(({ consignee }) => consignee !== undefined),
      project: shipments.some(({ project }) => project !== undefined),
      seal: shipments.some(({ seal }) => seal !== undefined),
    },
  }
}

function massesOf({ massT }: ShipmentEntry, units: UnitSystem): string[] {
  const columns: readonly UnitSystem[] = units === 'SI' ? ['SI', 'US'] : ['US', 'SI']
  return columns.map((column) => number(printedUnit('t', 1, column).of(massT), 1, units))
}
