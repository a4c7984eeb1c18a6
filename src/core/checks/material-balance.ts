/** The material balance of a source: produced = certified + diverted + rejected + change of stock. */
import { monthNumber, monthOfNumber } from '../measure/moment.ts'
import { sum } from '../statistics/descriptive.ts'

/** One line of the ledger: a month, and a silo where the source keeps one for each. */
export interface BalanceLine {
  /** "2026-03" */
  readonly month: string
  readonly silo?: string
  /** All in tonnes. */
  readonly produced: number
  readonly diverted: number
  readonly rejected: number
  /** At the end of the month; absent where it was not recorded. */
  readonly stock?: number
}

/** A mass with the month and silo that it belongs to, in tonnes. */
export interface Placed {
  readonly month: string
  readonly silo?: string
  readonly tonnes: number
}

export interface BalanceRow extends BalanceLine {
  /** Mass of lots produced in the month that have a certificate. */
  readonly certified: number
  /** Mass of the diversions on record, which the line's own sum is read against. */
  readonly divertedOnRecord: number
  /** Less the stock of the month before; null where one of the two is not recorded. */
  readonly stockChange: number | null
  /** What is produced and not accounted for, negative where more is; null without the change of stock. */
  readonly difference: number | null
}

/**
 * The balance, line by line.
 * @param lines of the ledger, in any order
 * @param certified lots with a certificate, tonnes
 * @param diverted diversions on record, tonnes
 * @returns in order of month, then silo; masses in tonnes
 * Notes: 1. a line without a silo takes all of its month; 2. a difference is a figure and no fault: scales, moisture
 * and the cut between two months all make one.
 */
export function materialBalance(
  lines: readonly BalanceLine[],
  certified: readonly Placed[],
  diverted: readonly Placed[],
): BalanceRow[] {
  const [certifiedIn, divertedIn] = [massesIn(certified), massesIn(diverted)]
  const stocks = new Map(lines.map((line) => [key(line.month, line.silo), line.stock]))
  return lines
    .toSorted((a, b) => (key(a.month, a.silo) < key(b.month, b.silo) ? -1 : 1))
    .map((line) => {
      const before = stocks.get(key(monthOfNumber(monthNumber(line.month) - 1), line.silo))
      const stockChange = before === undefined || line.stock === undefined ? null : line.stock - before
      const certifiedTonnes = certifiedIn(line)
      const known = certifiedTonnes + line.diverted + line.rejected
      return {
        ...line,
        certified: certifiedTonnes,
        divertedOnRecord: divertedIn(line),
        stockChange,
        difference: stockChange === null ? null : line.produced - known - stockChange,
      }
    })
}

/** Masses by month and silo, each looked at once. */
function massesIn(placed: readonly Placed[]): (line: BalanceLine) => number {
  const bySilo = Map.groupBy(placed, ({ month, silo }) => key(month, silo))
  const byMonth = Map.groupBy(placed, ({ month }) => month)
  return ({ month, silo }) => {
    const own = silo === undefined ? byMonth.get(month) : bySilo.get(key(month, silo))
    return sum((own ?? []).map(({ tonnes }) => tonnes))
  }
}

function key(month: string, silo: string | undefined): string {
  return `${month}|${silo ?? ''}`
}
