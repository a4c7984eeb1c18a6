/** Finds certificates for what a reader typed: pure, so that it is tested without a page. */
import type { LotColumns, ShipmentColumns } from './columns.ts'

export interface Found { readonly lot: string; readonly state: string; readonly because: string }

/** Answers shown at most. */
const SHOWN = 30

/** Exact numbers first; only where there is none, those that begin with or hold the text. */
export function matches(query: string, lots: LotColumns, shipments: ShipmentColumns): Found[] {
  const wanted = query.trim().toLowerCase()
  if (wanted === '') return []
  const exact = found(lots, shipments, (text) => text === wanted)
  return (exact.length > 0 ? exact : found(lots, shipments, (text) => text.includes(wanted))).slice(0, SHOWN)
}

function found({ columns }: LotColumns, shipments: ShipmentColumns, fits: (text: string) => boolean): Found[] {
  const answer = (index: number, because: string): Found => ({ lot: columns.lot[index] ?? '', state: columns.state[index] ?? '', because })
  const byLot = columns.lot.flatMap((id, index) => (fits(id.toLowerCase()) || fits((columns.number[index] ?? '').toLowerCase()) ? [answer(index, `lot ${columns.number[index]}`)] : []))
  const byBill = shipments.columns.bill.flatMap((bill, index) => (fits(bill.toLowerCase()) ? [answer(shipments.columns.lot[index] ?? -1, `bill of lading ${bill} of ${shipments.columns.date[index]}`)] : []))
  return [...byLot, ...byBill]
}
