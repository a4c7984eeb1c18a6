/** The material balance of a source by month, silos together. */
import type { BalanceSum } from '../../words/source-deliveries.ts'
import type { Edition, SourceEntry } from '../shape/edition.ts'
import { balanceOf } from './balance.ts'

interface MonthBalance {
  readonly differenceT: number
  readonly producedT: number
}

/** Months whose lines all have a difference; none where lots are not shown, for they are not counted. */
export function balanceByMonth(edition: Edition, source: SourceEntry): Map<string, MonthBalance> {
  if (0 < source.unpublished) return new Map()
  const found = new Map<string, MonthBalance>()
  for (const [month, lines] of Map.groupBy(balanceOf(edition, source), (line) => line.month)) {
    const differences = lines.flatMap(({ difference }) => (difference === null ? [] : [difference]))
    if (differences.length < lines.length) continue
    found.set(month, {
      differenceT: differences.reduce((sum, difference) => sum + difference, 0),
      producedT: lines.reduce((sum, { produced }) => sum + produced, 0),
    })
  }
  return found
}

/** null where no balance is kept, or where it cannot be told. @param from the first month, "2025-05" */
export function balanceSince(edition: Edition, source: SourceEntry, from: string): BalanceSum | null {
  if (source.record.balance === undefined || 0 < source.unpublished) return null
  const own = [...balanceByMonth(edition, source)].filter(([month]) => from <= month)
  return {
    months: own.length,
    differenceT: own.reduce((sum, [, { differenceT }]) => sum + differenceT, 0),
    producedT: own.reduce((sum, [, { producedT }]) => sum + producedT, 0),
  }
}
