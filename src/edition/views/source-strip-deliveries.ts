/** The statements of a source on what is late or missing, and on what was shipped. */
import { plain } from '../../words/said.ts'
import {
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
import { billsOf } from './source-bills.ts'
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
            label: 'shipped of lots with a certificate',
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
  return {
    shippedT: bills.reduce((sum, { shipment }) => sum + shipment.massT, 0),
    certifiedT: tonnesOf(certified),
    failedT: tonnesOf(certified.filter(isFailed)),
    beforeCompletion: bills.filter(({ shipment, lots: from }) =>
      from.some((lot) => shipment.date.day < completeDay(lot)),
    ).length,
    fromFailing: bills.filter(({ lots: from }) =>
      from.some((lot) => isFailed(lot) || lot.row.state === 'withdrawn'),
    ).length,
    neverIssued: bills.filter(({ lots: from }) => from.some(({ row }) => row.state === 'draft')).length,
    severalLots: bills.filter(({ shipment }) => 1 < shipment.lots.length || shipment.unshown === true).length,
  }
}

function tonnesOf(lots: readonly SourceLot[]): number {
  return lots.reduce((sum, { row }) => sum + row.tonnes, 0)
}

/** First day on which a revision says that nothing is awaited; never where there is none. */
function completeDay({ revisions }: SourceLot): number {
  const complete = revisions.find(({ state }) => state === 'complete')
  return complete?.date.day ?? Number.POSITIVE_INFINITY
}
