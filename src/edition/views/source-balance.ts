/** The material balance of a source by month, silos together. */
import type { BalanceSum } from '../../words/source-deliveries.ts'
import type { Edition, SourceEntry } from '../shape/edition.ts'
import { balanceOf } from './balance.ts'

/** Why a month of a balance has no difference. */
export type BalanceLack = 'no-line' | 'no-stock' | 'lots-not-shown'

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

/** What the balance says of a month, or what it lacks. */
export function balanceTeller(
  edition: Edition,
  source: SourceEntry,
): (month: string) => { readonly producedT: number | null; readonly balanceT: number | BalanceLack | null } {
  const { balance } = source.record
  if (balance === undefined) return () => ({ producedT: null, balanceT: null })
  const lines = Map.groupBy(balance, ({ month }) => month)
  const told = balanceByMonth(edition, source)
  return (month) => {
    const own = lines.get(month)
    if (own === undefined) return { producedT: null, balanceT: 'no-line' }
    const lack = 0 < source.unpublished ? 'lots-not-shown' : 'no-stock'
    return {
      producedT: own.reduce((sum, { produced }) => sum + produced.value, 0),
      balanceT: told.get(month)?.differenceT ?? lack,
    }
  }
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
