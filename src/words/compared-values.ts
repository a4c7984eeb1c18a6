/** A judged value as it stands beside its limit: as compared with it, so that no reader can see it otherwise. */
import type { ClauseOutcome } from '../core/criteria/verdict.ts'
import { withoutDust } from '../core/measure/rounding.ts'
import { fixedDigits } from './numbers.ts'

/** What of a clause's outcome tells how its value is printed: numbers in the unit that values are stored in. */
export type Judged = Pick<ClauseOutcome, 'compared' | 'decimals'> & {
  readonly value: number
  readonly limit: Pick<NonNullable<ClauseOutcome['limit']>, 'values'> | null
}

export interface ComparedFigure {
  readonly value: number
  readonly decimals: number
  /** The value as reported or computed, where rounding it for the comparison changed it. */
  readonly unrounded?: { readonly value: number; readonly decimals: number }
}

/** More digits than this no comparison keeps: core/measure/rounding.ts takes the rest for binary dust. */
const MOST_DECIMALS = 12

/**
 * The figure that was held against the limit. A value that was not rounded for it has as many digits as it takes
 * to see on which side of the limit it lies.
 * @param reported decimals that the value is reported or computed with
 */
export function comparedFigure(
  { value, compared, decimals, limit }: Judged,
  reported: number,
): ComparedFigure {
  const ends = limit?.values ?? []
  const held = compared ?? value
  if (withoutDust(held) === withoutDust(value)) {
    const short =
      decimals !== null && decimals < reported && Number(fixedDigits(held, decimals)) === withoutDust(held)
    return { value: held, decimals: short ? decimals : decimalsApart(held, reported, ends) }
  }
  const shown = decimalsApart(held, decimals ?? reported, ends)
  const plain = Math.max(reported, decimals ?? 0)
  return Number(fixedDigits(value, plain)) === withoutDust(held)
    ? { value: held, decimals: shown }
    : { value: held, decimals: shown, unrounded: { value, decimals: plain } }
}

/** Decimals from `least` on with which the printed figure stands on the same side of each end as the value. */
function decimalsApart(value: number, least: number, ends: readonly number[]): number {
  const exact = withoutDust(value)
  for (let decimals = least; decimals < MOST_DECIMALS; decimals++) {
    const printed = Number(fixedDigits(value, decimals))
    if (ends.every((end) => Math.sign(printed - end) === Math.sign(exact - end))) return decimals
  }
  return MOST_DECIMALS
}
