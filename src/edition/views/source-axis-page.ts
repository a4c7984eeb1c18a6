/** A source's charts on an axis of their own page: lot by lot, or truck by truck. */
import { acrossName } from '../../words/chart-readings.ts'
import type { Edition } from '../shape/edition.ts'
import { paths } from '../shape/addresses.ts'
import { type AxisKind, lotAxis } from './source-axis.ts'
import { sourceLots } from './source-lots.ts'
import { type ChartsOf, type SourceCharts, sourceCharts } from './source-panels.ts'
import { governingKey } from './source-page.ts'
import { type ShippedCharts, shippedCharts } from './source-shipped-panels.ts'
import { ofLastYear } from './source-strip.ts'
import { closestToLimit, judgedSeries } from './judged-series.ts'

export interface AxisPageView {
  readonly name: string
  readonly title: string
  readonly description: string
  readonly kind: AxisKind
  readonly path: string
}

export interface LotAxisView extends AxisPageView {
  readonly charts: SourceCharts | null
}

export interface ShipmentAxisView extends AxisPageView {
  readonly charts: ShippedCharts | null
}

/** One of the axes that a reader chooses from. */
export interface AxisChoice {
  readonly kind: AxisKind
  readonly text: string
  /** Page that has the charts on this axis. */
  readonly path: string
}

/** @throws RangeError for a source that is not in the edition */
export function lotAxisView(edition: Edition, id: string): LotAxisView {
  return { ...headOf(edition, id, 'lot'), charts: sourceCharts(chartsOf(edition, id), lotAxis) }
}

/** @throws RangeError for a source that is not in the edition */
export function shipmentAxisView(edition: Edition, id: string): ShipmentAxisView {
  return { ...headOf(edition, id, 'shipment'), charts: shippedCharts(chartsOf(edition, id)) }
}

export function axisChoices(id: string): AxisChoice[] {
  return [
    { kind: 'date', text: acrossName('date'), path: `${paths.source(id)}#charts` },
    { kind: 'lot', text: acrossName('lot'), path: paths.sourceByLot(id) },
    { kind: 'shipment', text: acrossName('shipment'), path: paths.sourceByShipment(id) },
  ]
}

const PAGES = {
  lot: (id: string, name: string) => ({
    kind: 'lot' as const,
    description: `Charts of ${name} lot by lot`,
    path: paths.sourceByLot(id),
  }),
  shipment: (id: string, name: string) => ({
    kind: 'shipment' as const,
    description: `Charts of ${name} over its shipments`,
    path: paths.sourceByShipment(id),
  }),
}

function headOf(edition: Edition, id: string, kind: keyof typeof PAGES): AxisPageView {
  const { name } = edition.source(id).record
  return { name, title: `${name} by ${acrossName(kind)}`, ...PAGES[kind](id, name) }
}

function chartsOf(edition: Edition, id: string): ChartsOf {
  const source = edition.source(id)
  const lots = sourceLots(edition, id)
  const closest = closestToLimit(judgedSeries(ofLastYear(edition, lots)))
  return { edition, source, lots, governing: governingKey(source, closest?.values.at(-1)?.judged) }
}
