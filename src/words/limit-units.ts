/** The unit that a limit is written in, for the value that stands beside it. */
import type { StatedLimit } from '../core/criteria/limits-for-class.ts'
import { isFault, KINDS, type QuantityKind, readQuantity } from '../core/measure/units.ts'
import { withoutDust } from '../core/measure/rounding.ts'
import type { Figure } from '../core/result/working.ts'
import { fixedDigits } from './numbers.ts'

/**
 * A figure as it reads beside its limit: 20400 m2/kg beside "at least 15 m2/g" is 20.4 m2/g.
 * @param figure in its stored unit
 * @returns in the limit's unit, with as few decimals as say it; the figure itself where the limit is written in
 * the stored unit, or in one that is no power of ten of it, where digits of the value would be lost
 */
export function besideLimit(figure: Figure, { written: [limit = ''] }: Pick<StatedLimit, 'written'>): Figure {
  const unit = writtenUnit(limit, figure.unit)
  if (unit === undefined) return figure
  const shift = Math.round(Math.log10(unit.factor))
  const value = withoutDust(figure.value / unit.factor)
  return { value, decimals: fewestDecimals(value, Math.max(0, figure.decimals + shift)), unit: unit.symbol }
}

/** Undefined for the stored unit itself, and for one that is no power of ten of it. */
function writtenUnit(limit: string, stored: string) {
  for (const kind of kindsStoredIn(stored)) {
    const read = readQuantity(limit, kind)
    const unit = isFault(read) ? undefined : KINDS[kind].units.find(({ symbol }) => symbol === read.unit)
    if (unit === undefined || unit.factor === 1 || unit.offset !== undefined) continue
    return Number.isInteger(withoutDust(Math.log10(unit.factor))) ? unit : undefined
  }
  return undefined
}

function kindsStoredIn(stored: string): QuantityKind[] {
  return (Object.keys(KINDS) as QuantityKind[]).filter((kind) => KINDS[kind].stored === stored)
}

function fewestDecimals(value: number, most: number): number {
  const digits = fixedDigits(value, most)
  return digits.includes('.') ? (/\.(\d*?)0*$/.exec(digits)?.[1] ?? '').length : 0
}
