/** Audit check: a laboratory reports a figure finished, and the readings of the same test are on record as well. */
import type { Result } from '../result/result.ts'
import type { Finding } from './finding.ts'

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
    return stands?.code === 'readings-stand' ? [findingOn(lot.id, result, stands.params)] : []
  })
}

function findingOn(
  lot: string,
  result: Result,
  { recomputed, decimals }: { readonly recomputed: number | null; readonly decimals: number },
): Finding {
  const { property, laboratory, sample, value, unit } = result
  const [condition, age] = [result.condition ?? null, result.age?.text ?? null]
  const place = [property, condition, age?.replace(' ', '-'), laboratory, sample].filter(
    (part) => part !== null,
  )
  return {
    id: `finished-beside-readings/${lot}/${place.join('/')}`,
    severity: agrees(result, recomputed) ? 'information' : 'warning',
    about: lot,
    reason: {
      code: 'finished-beside-readings',
      params: {
        lot,
        property,
        condition,
        age,
        laboratory,
        sample,
        finished: value,
        recomputed,
        unit,
        finishedDecimals: result.decimals,
        decimals,
      },
    },
  }
}

/** Within half a unit of the figure's last place, as a rounded value must be; a hair more for binary fractions. */
function agrees({ value, decimals, censored }: Result, recomputed: number | null): boolean {
  if (recomputed !== null && censored !== undefined) return recomputed < value
  return recomputed !== null && Math.abs(value - recomputed) <= 0.5 * 10 ** -decimals * (1 + 1e-9)
}
