/** Audit check: a laboratory reports a figure finished, and the readings of the same test are on record as well. */
import { stepOfDecimals, withoutDust } from '../measure/rounding.ts'
import { defined } from '../measure/defined.ts'
import type { Bounds } from '../result/bounds.ts'
import type { ResultReasonParams } from '../result/reason.ts'
import type { Result } from '../result/result.ts'
import { type Finding, findingOn } from './finding.ts'

/**
 * A finding for each finished figure that gave way to the readings of its own test: a warning where they differ by
 * more than the figure's rounding, or give no valid value, else for information.
 * @param lot id as SOURCE/LOT, and its results on a date
 */
export function finishedBesideReadings(lot: {
  readonly id: string
  readonly results: readonly Result[]
}): Finding[] {
  return lot.results.flatMap((result) => {
    const stands = result.reasons.find(({ code }) => code === 'readings-stand')
    return stands?.code === 'readings-stand' ? [besideReadings(lot.id, result, stands.params)] : []
  })
}

function besideReadings(
  lot: string,
  result: Result,
  { recomputed, bounds, decimals }: ResultReasonParams['readings-stand'],
): Finding {
  const { property, laboratory, sample, value: finished, unit, decimals: finishedDecimals } = result
  const [condition, age] = [result.condition ?? null, result.age?.text ?? null]
  const test = { lot, property, condition, age, laboratory, sample }
  return findingOn(
    agrees(result, recomputed, bounds) ? 'information' : 'warning',
    lot,
    {
      code: 'finished-beside-readings',
      params: { ...test, finished, recomputed, ...defined({ bounds }), unit, finishedDecimals, decimals },
    },
    ...[property, condition, age, laboratory, sample].filter((part) => part !== null),
  )
}

/** Within half a unit of the figure's last place, as a rounded value must be; or within what the readings leave open. */
function agrees(
  { value, decimals, censored }: Result,
  recomputed: number | null,
  bounds: Bounds | undefined,
): boolean {
  if (recomputed === null) return false
  const half = stepOfDecimals(decimals) / 2
  if (bounds !== undefined)
    return (
      (bounds.low ?? value) <= withoutDust(value + half) &&
      withoutDust(value - half) <= (bounds.high ?? value)
    )
  if (censored !== undefined) return recomputed < value
  return withoutDust(Math.abs(value - recomputed)) <= half
}
