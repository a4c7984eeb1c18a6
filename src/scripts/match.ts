/** Finds certificates for what a reader typed: pure, so that it is tested without a page. */
import { nameInSource } from '../core/measure/lot-id.ts'
import type { LotColumns, ShipmentColumns } from './columns.ts'
import { shortDate } from '../words/print.ts'

export interface Found {
  readonly lot: string
  readonly state: string
  readonly because: string
}

/**
 * Exact numbers; only where there is none, those that begin with the text, then those that hold it elsewhere.
 */
export function matches(query: string, lots: LotColumns, shipments: ShipmentColumns): Found[] {
  const wanted = query.trim().toLowerCase()
  if (wanted === '') return []
  const exact = found(lots, shipments, (text) => text === wanted)
  if (exact.length > 0) return exact
  const beginning = found(lots, shipments, (text) => text.startsWith(wanted))
  const holding = found(lots, shipments, (text) => text.includes(wanted))
  const known = new Set(beginning.map(answerKey))
  return [...beginning, ...holding.filter((answer) => !known.has(answerKey(answer)))]
}

/** A lot may answer twice, by its number and by a bill; what it was found by tells them apart. */
function answerKey({ lot, because }: Found): string {
  return `${lot} ${because}`
}

function found(
  { columns, formerly }: LotColumns,
  shipments: ShipmentColumns,
  fits: (text: string) => boolean,
): Found[] {
  const answer = (index: number, because: string): Found => ({
    lot: columns.lot[index] ?? '',
    state: columns.state[index] ?? '',
    because,
  })
  const byLot = columns.lot.flatMap((id, index) =>
    fits(id.toLowerCase()) || fits((columns.number[index] ?? '').toLowerCase())
      ? [answer(index, `lot ${columns.number[index]}`)]
      : [],
  )
  const byBill = shipments.columns.bill.flatMap((bill, index) =>
    fits(bill.toLowerCase())
      ? [
          answer(
            shipments.columns.lot[index] ?? -1,
            `bill of lading ${bill} of ${shortDate(shipments.columns.date[index] ?? '')}`,
          ),
        ]
      : [],
  )
  const byFormer = Object.entries(formerly).flatMap(([id, index]) =>
    fits(id.toLowerCase()) || fits(nameInSource(id).toLowerCase())
      ? [answer(index, `lot ${columns.number[index]}, formerly ${id}`)]
      : [],
  )
  return [...byLot, ...byFormer, ...byBill]
}
