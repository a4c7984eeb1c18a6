/** Audit check: the shares of a blend that do not add up to the whole. */
import { sum } from '../statistics/descriptive.ts'
import { type Checked, lookedOnce } from './checked.ts'
import { found } from './finding.ts'

/** Percentage points that rounding of the shares explains: own choice. */
const ROUNDING = 0.5

/**
 * A warning for a lot whose shares are not 100 % together.
 * @param lot id as SOURCE/LOT
 * @param shares of its constituents in per cent by mass, by source; none of a lot that is no blend
 */
export function blendTotal(
  lot: string,
  shares: readonly { readonly source: string; readonly percent: number }[],
): Checked[] {
  if (shares.length === 0) return []
  const total = sum(shares.map(({ percent }) => percent))
  const params = { lot, total, shares }
  const isWhole = Math.abs(total - 100) <= ROUNDING
  return [lookedOnce('blend-total', isWhole ? [] : [found(lot, { code: 'blend-total', params })])]
}
