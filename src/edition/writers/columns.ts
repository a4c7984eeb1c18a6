/**
 * The column files behind the register's filter and the look-up: one array a column, so that ten thousand
 * lots stay small.
 */
import { OUTCOMES } from '../../core/criteria/outcome.ts'
import type { Edition, LotEntry } from '../shape/edition.ts'

/** data/index.json: lots in order of source and sampling. */
export function lotColumns(edition: Edition): unknown {
  const lots = [...edition.lots.values()]
  const criteria = [
    ...new Set(lots.flatMap((lot) => lot.verdicts.map((verdict) => verdict.criterion))),
  ].sort()
  const sources = [...edition.sources.keys()]
  return {
    format: 1,
    asOf: edition.asOf,
    criteria,
    sources,
    outcomes: OUTCOMES,
    columns: {
      lot: lots.map((lot) => lot.id),
      number: lots.map((lot) => lot.number),
      source: lots.map((lot) => sources.indexOf(lot.source)),
      sampled: lots.map((lot) => lot.sampled.slice(0, 10)),
      issued: lots.map((lot) => lot.revisions.at(-1)?.date ?? null),
      state: lots.map((lot) => lot.state),
      class: lots.map((lot) => lot.class ?? null),
      outcome: Object.fromEntries(criteria.map((id) => [id, lots.map((lot) => outcomeIndex(lot, id))])),
      values: valueColumns(edition, lots),
    },
    formerly: Object.fromEntries(lots.flatMap((lot, index) => lot.formerly.map((id) => [id, index]))),
  }
}

function outcomeIndex(lot: LotEntry, criterion: string): number {
  const outcome = lot.verdicts.find((verdict) => verdict.criterion === criterion)?.outcome
  return outcome === undefined ? -1 : OUTCOMES.indexOf(outcome)
}

function valueColumns(edition: Edition, lots: readonly LotEntry[]): Record<string, (number | null)[]> {
  const place = new Map(lots.map((lot, index) => [lot.id, index]))
  const columns: Record<string, (number | null)[]> = {}
  for (const source of edition.sources.values()) {
    for (const series of source.series) {
      const name = `${series.property}|${series.condition ?? ''}|${series.age ?? ''}`
      const column = columns[name] ?? new Array<number | null>(lots.length).fill(null)
      columns[name] = column
      for (const point of series.points) {
        const index = place.get(point.lot)
        if (index !== undefined && point.status === 'valid' && point.value !== null)
          column[index] = Number(point.value.toPrecision(6))
      }
    }
  }
  return columns
}

/** data/shipments.json: bills of lading with the lot's place in data/index.json. */
export function shipmentColumns(edition: Edition): unknown {
  const place = new Map([...edition.lots.keys()].map((id, index) => [id, index]))
  return {
    format: 1,
    columns: {
      bill: edition.shipments.map((shipment) => shipment.bill),
      date: edition.shipments.map((shipment) => shipment.date),
      mass: edition.shipments.map((shipment) => Number(shipment.massT.toPrecision(6))),
      lot: edition.shipments.map((shipment) => place.get(shipment.lot) ?? -1),
    },
  }
}
