/** Finds certificates for what a reader typed: pure, so that it is tested without a page. */
import { nameInSource } from '../core/measure/lot-id.ts'
import { governingStandingAt, type LotColumns, lotAt, type ShipmentColumns } from './columns.ts'
import { shortDate } from '../words/dates.ts'

export interface Found {
  readonly lot: string
  /** State and outcome of the lot in words, with their mark. */
  readonly standing: ReturnType<typeof governingStandingAt>
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

function found(lots: LotColumns, { columns }: ShipmentColumns, fits: (text: string) => boolean): Found[] {
  const anyFits = (...texts: readonly string[]) => texts.some((text) => fits(text.toLowerCase()))
  const answer = (index: number, because: string): Found => {
    return { lot: lotAt(lots, index).id, standing: governingStandingAt(lots, index), because }
  }
  const byLot = lots.columns.lot.flatMap((id, index) => {
    const { number } = lotAt(lots, index)
    return anyFits(id, number) ? [answer(index, `lot ${number}`)] : []
  })
  const byFormer = Object.entries(lots.formerly).flatMap(([id, index]) => {
    const { number } = lotAt(lots, index)
    return anyFits(id, nameInSource(id)) ? [answer(index, `lot ${number}, formerly ${id}`)] : []
  })
  const byBill = columns.bill.flatMap((bill, index) => {
    if (!anyFits(bill)) return []
    const date = columns.date[index]
    const because = `bill of lading ${bill}${date === undefined ? '' : ` of ${shortDate(date)}`}`
    return [answer(columns.lot[index] ?? -1, because)]
  })
  return [...byLot, ...byFormer, ...byBill]
}
