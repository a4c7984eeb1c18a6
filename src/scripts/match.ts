/** Finds certificates for what a reader typed: pure, so that it is tested without a page. */
import { nameInSource } from '../core/measure/lot-id.ts'
import { digitsOf, numberKey } from '../core/measure/number-key.ts'
import { shortDate } from '../words/dates.ts'
import { governingStandingAt, type LotColumns, lotAt, type ShipmentColumns } from './columns.ts'

export interface Found {
  /** The lot; for a shipment of no one lot each that it may be of. */
  readonly lots: readonly string[]
  /** State and outcome of the lot in words, with their mark; of several lots the worst. */
  readonly standing: ReturnType<typeof governingStandingAt>
  readonly because: string
  /** Why no one lot is named; null where one is. */
  readonly note: string | null
}

/**
 * Exact numbers, however they are written; only where there is none, numbers whose digits are those typed, then
 * those that begin with the text, then those that hold it elsewhere.
 */
export function matches(query: string, lots: LotColumns, shipments: ShipmentColumns): Found[] {
  const wanted = numberKey(query)
  if (wanted === '') return []
  for (const fits of [(key: string) => key === wanted, (key: string) => digitsOf(key) === wanted]) {
    const answers = found(lots, shipments, fits)
    if (answers.length > 0) return answers
  }
  const beginning = found(lots, shipments, (key) => key.startsWith(wanted))
  const holding = found(lots, shipments, (key) => key.includes(wanted))
  const known = new Set(beginning.map(answerKey))
  return [...beginning, ...holding.filter((answer) => !known.has(answerKey(answer)))]
}

/** A lot may answer twice, by its number and by a bill; what it was found by tells them apart. */
function answerKey({ lots, because }: Found): string {
  return `${lots.join(' ')} ${because}`
}

function found(lots: LotColumns, shipments: ShipmentColumns, fits: (key: string) => boolean): Found[] {
  const anyFits = (...texts: readonly string[]) => texts.some((text) => fits(numberKey(text)))
  const answer = (index: number, because: string): Found => ({
    lots: [lotAt(lots, index).id],
    standing: governingStandingAt(lots, index),
    because,
    note: null,
  })
  const byLot = lots.columns.lot.flatMap((id, index) => {
    const { number } = lotAt(lots, index)
    return anyFits(id, number) ? [answer(index, `lot ${number}`)] : []
  })
  const byFormer = Object.entries(lots.formerly).flatMap(([id, index]) => {
    const { number } = lotAt(lots, index)
    return anyFits(id, nameInSource(id)) ? [answer(index, `lot ${number}, formerly ${id}`)] : []
  })
  return [...byLot, ...byFormer, ...byBill(lots, shipments, { anyFits, answer })]
}

interface Finding {
  readonly anyFits: (...texts: readonly string[]) => boolean
  readonly answer: (lot: number, because: string) => Found
}

function byBill(
  lots: LotColumns,
  { columns, several }: ShipmentColumns,
  { anyFits, answer }: Finding,
): Found[] {
  const shared = new Map(several.map((one) => [one.shipment, one]))
  return columns.bill.flatMap((bill, index) => {
    if (!anyFits(bill)) return []
    const date = columns.date[index]
    const because = `bill of lading ${bill}${date === undefined ? '' : ` of ${shortDate(date)}`}`
    const own = shared.get(index)
    if (own === undefined) return [answer(columns.lot[index] ?? -1, because)]
    const { mark, standing, note } = own
    const possible = own.lots.map((place) => lotAt(lots, place).id)
    return [{ lots: possible, standing: { mark, text: standing }, because, note }]
  })
}
