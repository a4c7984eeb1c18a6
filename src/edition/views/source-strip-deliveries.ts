/** The statements of a source on what is late or missing, and on what was shipped. */
import { plain } from '../../words/said.ts'
import {
  type BillCount,
  gapsWords,
  lateWords,
  type ShippedCounts,
  shippedRest,
  shippedWords,
  unshownWords,
} from '../../words/source-deliveries.ts'
import type { SourceEntry } from '../shape/edition.ts'
import { isInForce } from './last-lot.ts'
import { balanceSince } from './source-balance.ts'
import { billsOf, leftUncertified, type SourceBill } from './source-bills.ts'
import type { SourceLot } from './source-lots.ts'
import { monthsOf } from './source-months.ts'
import { isFailed, type StripInput, type StripLine } from './source-strip.ts'
import { monthCells } from './source-strip-figures.ts'

/** Gaps that a line has room for. */
const GAPS = 3

export function lateLine({ edition, source, lots }: StripInput): StripLine {
  const months = monthsOf(edition, source, lots)
  const { gaps } = months
  const awaited = lots.flatMap(({ row }) => row.awaited)
  const overdue = awaited.filter(({ overdueSince }) => overdueSince !== undefined)
  return {
    label: 'Late',
    section: 'completeness',
    says: lateWords({
      late: months.late,
      overdue: overdue.length,
      awaited: awaited.length - overdue.length,
      gaps: gaps?.reduce((sum, { missing }) => sum + missing, 0) ?? null,
      monthsWithout: months.without,
    }),
    rest: gaps === null || gaps.length === 0 ? [] : [plain(gapsWords(gaps, GAPS))],
    figure: { kind: 'months', cells: monthCells(months) },
  }
}

/** @param recent lots sampled in the last twelve months */
export function shippedLine({ edition, source, lots }: StripInput, recent: readonly SourceLot[]): StripLine {
  const [all, year] = [shippedOf(lots, lots), shippedOf(lots, recent)]
  const { units } = edition.site
  const months = monthsOf(edition, source, lots).lines
  const balance = balanceSince(edition, source, months[0]?.month ?? '')
  return {
    label: 'Shipped',
    section: 'by-shipment',
    says: shippedWords(year, units),
    rest: [...shippedRest(all, year, balance, units), ...unshown(source)],
    figure:
      year.certifiedT === 0
        ? null
        : {
            kind: 'share',
            share: Math.round(1000 * Math.min(1, year.shippedT / year.certifiedT)),
            label: 'shipped of lots with a certificate in force',
          },
  }
}

function unshown({ record, unpublished }: SourceEntry) {
  return unshownWords({ lots: unpublished, balance: record.balance !== undefined })
}

/** A bill of several possible lots counts where one of them does. */
function shippedOf(lots: readonly SourceLot[], within: readonly SourceLot[]): ShippedCounts {
  const asked = new Set(within)
  const bills = billsOf(lots).filter((bill) => bill.lots.some((lot) => asked.has(lot)))
  const certified = within.filter(({ row }) => isInForce(row))
  const others = bills.filter(leftUncertified)
  return {
    shippedT: massOf(bills) - massOf(others),
    certifiedT: tonnesOf(certified),
    failedT: tonnesOf(certified.filter(isFailed)),
    otherT: massOf(others),
    beforeCompletion: count(bills, ({ completeDay }, day) => completeDay === null || day < completeDay),
    fromFailing: count(bills, (lot) => isFailed(lot) || lot.row.state === 'withdrawn'),
    neverIssued: count(bills, ({ row }) => row.state === 'draft'),
    severalLots: bills.filter(isOfSeveral).length,
  }
}

/** @param holds of a lot that the bill may be of, and of the day of shipping */
function count(bills: readonly SourceBill[], holds: (lot: SourceLot, day: number) => boolean): BillCount {
  const possible = bills.filter(({ shipment, lots }) => lots.some((lot) => holds(lot, shipment.date.day)))
  const certain = possible.filter(
    ({ shipment, lots }) => shipment.unshown !== true && lots.every((lot) => holds(lot, shipment.date.day)),
  )
  return { certain: certain.length, possible: possible.length }
}

function isOfSeveral({ shipment }: SourceBill): boolean {
  return 1 < shipment.lots.length || shipment.unshown === true
}

function massOf(bills: readonly SourceBill[]): number {
  return bills.reduce((sum, { shipment }) => sum + shipment.massT, 0)
}

function tonnesOf(lots: readonly SourceLot[]): number {
  return lots.reduce((sum, { row }) => sum + row.tonnes, 0)
}
