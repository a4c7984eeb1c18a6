/**
 * The column files behind the register's filter and the look-up: one array a column, so that ten thousand
 * lots stay small.
 */
import { dateOf } from '../../core/measure/moment.ts'
import { OUTCOMES } from '../../core/criteria/outcome.ts'
import type { Edition, ListedLot, Series } from '../shape/edition.ts'

/** Digits of a value in a column, enough to sort and to draw by. */
const DIGITS = 6

/** data/index.json: lots in order of source and sampling. */
export function lotColumns(edition: Edition): unknown {
  const lots = [...edition.lots.values()]
  const criteria = [...new Set(lots.flatMap((lot) => lot.outcomes.map(({ criterion }) => criterion)))].sort()
  const sources = placesOf(edition.sources)
  return {
    format: 1,
    asOf: edition.asOf.text,
    criteria,
    sources: [...sources.keys()],
    outcomes: OUTCOMES,
    columns: {
      lot: lots.map((lot) => lot.id),
      number: lots.map((lot) => lot.number),
      source: lots.map((lot) => sources.get(lot.source) ?? -1),
      sampled: lots.map((lot) => dateOf(lot.sampled).text),
      issued: lots.map((lot) => lot.issued?.date.text ?? null),
      state: lots.map((lot) => lot.state),
      class: lots.map((lot) => lot.class ?? null),
      outcome: outcomeColumns(lots, criteria),
      values: valueColumns(edition),
    },
    formerly: Object.fromEntries(lots.flatMap((lot, index) => lot.formerly.map((id) => [id, index]))),
  }
}

/** Each id's place in the order of a map. */
function placesOf(map: ReadonlyMap<string, unknown>): Map<string, number> {
  return new Map([...map.keys()].map((id, place) => [id, place]))
}

/** By criterion, each lot's outcome as its place among the outcomes; −1 where the lot is not judged under it. */
function outcomeColumns(
  lots: readonly ListedLot[],
  criteria: readonly string[],
): Record<string, readonly number[]> {
  const places = new Map(OUTCOMES.map((outcome, place) => [outcome, place]))
  const columns = new Map(criteria.map((id) => [id, new Array<number>(lots.length).fill(-1)]))
  for (const [index, lot] of lots.entries())
    for (const { criterion, outcome } of lot.outcomes) {
      const column = columns.get(criterion)
      if (column !== undefined) column[index] = places.get(outcome) ?? -1
    }
  return Object.fromEntries(columns)
}

type ValueColumn = (number | null)[]

function valueColumns(edition: Edition): Record<string, ValueColumn> {
  const places = placesOf(edition.lots)
  const columns = new Map<string, ValueColumn>()
  for (const id of edition.sources.keys())
    for (const series of edition.source(id).series) {
      const name = `${series.property}|${series.condition ?? ''}|${series.age?.text ?? ''}`
      const column = columns.get(name) ?? new Array<number | null>(places.size).fill(null)
      columns.set(name, column)
      fillColumn(column, series, places)
    }
  return Object.fromEntries(columns)
}

function fillColumn(column: ValueColumn, { points }: Series, places: ReadonlyMap<string, number>): void {
  for (const { lot, status, value } of points) {
    const index = places.get(lot)
    if (index !== undefined && status === 'valid' && value !== null)
      column[index] = Number(value.toPrecision(DIGITS))
  }
}

/** data/shipments.json: bills of lading with the lot's place in data/index.json. */
export function shipmentColumns({ lots, shipments }: Edition): unknown {
  const places = placesOf(lots)
  return {
    format: 1,
    columns: {
      bill: shipments.map((shipment) => shipment.bill),
      date: shipments.map((shipment) => shipment.date.text),
      mass: shipments.map((shipment) => Number(shipment.massT.toPrecision(DIGITS))),
      lot: shipments.map((shipment) => places.get(shipment.lot) ?? -1),
    },
  }
}
