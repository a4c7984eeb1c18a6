/** The governing index of the newest lots over their shipments: a hundred trucks of one lot are one result. */
import { type StepLot, shipmentSteps, type StepsModel } from '../../charts/shipment-steps.ts'
import { plural } from '../../words/numbers.ts'
import { property } from '../../core/measure/properties.ts'
import { conditionTitle } from '../shape/condition-title.ts'
import type { Series } from '../shape/edition.ts'
import { ownLimits } from './source-limits.ts'
import { seriesKey, type SourceLot } from './source-lots.ts'
import type { PanelContext } from './source-panels.ts'
import { isFailed } from './source-strip.ts'

export interface ShippedChart {
  readonly title: string
  readonly note: string
  readonly description: string
  readonly model: StepsModel
  readonly unit: string
}

/** Trucks that a drawing has room for. */
const TRUCKS = 260
const HEIGHT = 190

/** null where nothing of the series was shipped. */
export function shippedChart(
  { edition, source, lots, criteria }: Pick<PanelContext, 'edition' | 'source' | 'lots' | 'criteria'>,
  series: Series | undefined,
): ShippedChart | null {
  if (series === undefined) return null
  const [governing] = criteria
  const scope = { class: source.record.class ?? null, kind: source.record.kind }
  const steps = newestSteps(lots, series)
  const model = shipmentSteps({
    lots: steps,
    limits: governing === undefined ? [] : ownLimits(governing, series, scope),
    height: HEIGHT,
  })
  if (model === null) return null
  const before = model.before.length
  const trucks = steps.reduce((sum, step) => sum + step.trucks.length, 0)
  return {
    title: [property(series.property).title, series.age?.text].filter(Boolean).join(', '),
    note: series.condition === undefined ? '' : conditionTitle(edition, series.condition),
    description: `${plural(steps.length, 'lot', 'lots')}, ${plural(trucks, 'shipment', 'shipments')}, ${before} of them left before the result was known`,
    model,
    unit: series.unit,
  }
}

function newestSteps(lots: readonly SourceLot[], series: Series): StepLot[] {
  const values = new Map(
    series.points.map(({ lot, value, status }) => [lot, status === 'valid' ? value : null]),
  )
  const found: StepLot[] = []
  let trucks = 0
  for (const lot of lots.filter(({ shipments }) => 0 < shipments.length).reverse()) {
    trucks += lot.shipments.length
    if (TRUCKS < trucks && 0 < found.length) break
    found.unshift(stepOf(lot, series, values.get(lot.row.id) ?? null))
  }
  return found
}

function stepOf(lot: SourceLot, series: Series, value: number | null): StepLot {
  const known = lot.origins.get(seriesKey(series))?.knownDay ?? Number.POSITIVE_INFINITY
  return {
    id: lot.row.id,
    label: lot.row.number,
    value,
    failed: isFailed(lot),
    trucks: lot.shipments.map(({ date }) => known <= date.day),
  }
}
