/** Finds certificates for what a reader typed: pure, so that it is tested without a page. */
import { nameInSource } from '../core/measure/lot-id.ts'
import { digitsOf, looseNumberKey, numberKey } from '../core/measure/number-key.ts'
import { shortDate } from '../words/dates.ts'
import {
  governingSetAt,
  governingStandingAt,
  type LotColumns,
  lotAt,
  type ShipmentColumns,
} from './columns.ts'

export interface Found {
  /** The lot; for a shipment of no one lot each that it may be of. */
  readonly lots: readonly string[]
  /** State and outcome of the lot in words, with their mark; of several lots the worst. */
  readonly standing: ReturnType<typeof governingStandingAt>
  /** The set that governs the lot, with its class; empty for several lots, or where none does. */
  readonly under: string
  readonly because: string
  /** What was not known on the day that a shipment left; empty where everything was, and for a lot. */
  readonly left: string
  /** Why no one lot is named; null where one is. */
  readonly note: string | null
}

/**
 * Exact numbers, however they are written; only where there is none, numbers whose digits are those typed, those that
 * differ in noughts, words or a revision alone, then those that begin with the text, then those that hold it elsewhere.
 */
export function matches(query: string, lots: LotColumns, shipments: ShipmentColumns): Found[] {
  const wanted = numberKey(query)
  if (wanted === '') return []
  const loose = looseNumberKey(query)
  const ways: readonly ((text: string) => boolean)[] = [
    (text) => numberKey(text) === wanted,
    (text) => digitsOf(numberKey(text)) === wanted,
    (text) => loose !== '' && looseNumberKey(text) === loose,
  ]
  for (const fits of ways) {
    const answers = found(lots, shipments, fits)
    if (answers.length > 0) return answers
  }
  const beginning = found(lots, shipments, (text) => numberKey(text).startsWith(wanted))
  const holding = found(lots, shipments, (text) => numberKey(text).includes(wanted))
  const known = new Set(beginning.map(answerKey))
  return [...beginning, ...holding.filter((answer) => !known.has(answerKey(answer)))]
}

/** A lot may answer twice, by its number and by a bill; what it was found by tells them apart. */
function answerKey({ lots, because }: Found): string {
  return `${lots.join(' ')} ${because}`
}

/** Lots, then bills, the newest of each first: whoever types a part looks for something that has just come. */
function found(lots: LotColumns, shipments: ShipmentColumns, fits: (text: string) => boolean): Found[] {
  const anyFits = (...texts: readonly string[]) => texts.some(fits)
  const answer = (index: number, because: string): Found => ({
    lots: [lotAt(lots, index).id],
    standing: governingStandingAt(lots, index),
    under: governingSetAt(lots, index),
    because,
    left: '',
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
  const bills = byBill(lots, shipments, { anyFits, answer })
  return [...byLot.reverse(), ...byFormer, ...bills.reverse()]
}

interface Finding {
  readonly anyFits: (...texts: readonly string[]) => boolean
  readonly answer: (lot: number, because: string) => Found
}

function byBill(
  lots: LotColumns,
  { columns, several, left: texts }: ShipmentColumns,
  { anyFits, answer }: Finding,
): Found[] {
  const shared = new Map(several.map((one) => [one.shipment, one]))
  return columns.bill.flatMap((bill, index) => {
    if (!anyFits(bill)) return []
    const date = columns.date[index]
    const because = `bill of lading ${bill}${date === undefined ? '' : ` of ${shortDate(date)}`}`
    const left = texts[columns.left[index] ?? -1] ?? ''
    const own = shared.get(index)
    if (own === undefined) return [{ ...answer(columns.lot[index] ?? -1, because), left }]
    const { mark, standing, note } = own
    const possible = own.lots.map((place) => lotAt(lots, place).id)
    return [{ lots: possible, standing: { mark, text: standing }, under: '', because, left, note }]
  })
}
