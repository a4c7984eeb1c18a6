/** Audit checks on shipments: the mass of a bill, what was shipped of a lot, and a bill's number that stands twice. */
import { kept } from '../measure/kept.ts'
import { numberKey } from '../measure/number-key.ts'
import { sum } from '../statistics/descriptive.ts'
import { type Finding, warningOn } from './finding.ts'

/** Tonnes on one bill, from a van to a rail car: own choice. */
const BILL: readonly [low: number, high: number] = [0.5, 120]
/** Scales of silo and truck agree to about so much: own choice. */
const SCALES = 0.01

export interface ShippedLot {
  readonly id: string
  /** Whose bills are numbered together. */
  readonly producer: string
  readonly quantityTonnes: number
  readonly shipments: readonly {
    readonly bill: string
    readonly massT: number
    readonly massWritten: string
  }[]
}

/**
 * Bills that are listed more than once, by producer and number: lots, and sources that list shipments themselves, one entry
 * for each time.
 */
export type BillIndex = ReadonlyMap<string, readonly string[]>

/** Looks once at every bill of the edition, by its number as the look-up reads it. */
export function billIndex(lots: Iterable<Pick<ShippedLot, 'id' | 'producer' | 'shipments'>>): BillIndex {
  const first = new Map<string, string>()
  const index = new Map<string, string[]>()
  for (const { id, producer, shipments } of lots)
    for (const { bill } of shipments) {
      const key = billKey(producer, bill)
      const earlier = first.get(key)
      if (earlier === undefined) first.set(key, id)
      else kept(index, key, () => [earlier]).push(id)
    }
  return index
}

function billKey(producer: string, bill: string): string {
  return `${producer}|${numberKey(bill)}`
}

/**
 * Warnings on what was shipped of a lot.
 * @param bills that are listed more than once
 * Note: a bill's number is all that is told of a shipment; consignees are nobody's evidence.
 */
export function shippedFindings(lot: ShippedLot, bills: BillIndex): Finding[] {
  return [
    ...lot.shipments.flatMap((shipment) => massOf(lot.id, shipment)),
    ...sumOf(lot),
    ...twice(lot, bills),
  ]
}

/** What a source lists as drawn from one of several lots. */
export interface SharedShipments {
  /** Of the source. */
  readonly id: string
  readonly producer: string
  readonly shipments: ShippedLot['shipments']
}

/**
 * Warnings on shipments that a source lists itself: they are about the source, for no one lot shipped them.
 * @param bills that are listed more than once
 */
export function sharedShipmentFindings(source: SharedShipments, bills: BillIndex): Finding[] {
  return [...source.shipments.flatMap((shipment) => massOf(source.id, shipment)), ...twice(source, bills)]
}

function massOf(lot: string, { bill, massT, massWritten }: ShippedLot['shipments'][number]): Finding[] {
  const [low, high] = BILL
  if (low <= massT && massT <= high) return []
  const params = { lot, bill, written: massWritten, low, high, unit: 't' }
  return [warningOn(lot, { code: 'shipment-mass', params }, bill)]
}

function sumOf({ id, quantityTonnes, shipments }: ShippedLot): Finding[] {
  const shippedTonnes = sum(shipments.map(({ massT }) => massT))
  if (shippedTonnes <= quantityTonnes * (1 + SCALES)) return []
  const params = { lot: id, shippedTonnes, quantityTonnes }
  return [warningOn(id, { code: 'shipped-above-quantity', params })]
}

function twice({ id, producer, shipments }: SharedShipments, bills: BillIndex): Finding[] {
  const said = new Set<string>()
  return shipments.flatMap(({ bill }) => {
    const key = billKey(producer, bill)
    const listed = bills.get(key)
    if (listed === undefined || said.has(key)) return []
    said.add(key)
    const others = listed.toSpliced(listed.indexOf(id), 1)
    return [
      warningOn(id, { code: 'bill-twice', params: { lot: id, bill, others: [...new Set(others)] } }, bill),
    ]
  })
}
