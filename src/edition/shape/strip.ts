/** What the drawing of a value against its limit is made from. */
import { admitted } from '../../core/criteria/decision-rule.ts'
import type { AppliedLimit } from '../../core/criteria/verdict.ts'
import { defined } from '../../core/measure/defined.ts'
import type { PrintedStrip } from './printed-certificate.ts'
import { toSignificant } from '../../core/measure/rounding.ts'

/** Digits enough to draw: the text beside it says the value. */
const DRAWN = 5

/**
 * @param value in the unit of the limit; null where there is none yet
 * @param u standard uncertainty of the value
 * @returns undefined without a limit
 */
export function printedStrip(
  limit: AppliedLimit | null,
  value: number | null,
  u?: number,
): PrintedStrip | undefined {
  if (limit === null) return undefined
  const { low, high } = admitted(limit.operator, limit.values)
  const strip = { value: drawn(value ?? undefined), from: drawn(low), to: drawn(high), u: drawn(u) }
  return strip.from === undefined && strip.to === undefined ? undefined : defined(strip)
}

function drawn(number: number | undefined): number | undefined {
  return number === undefined || !Number.isFinite(number) ? undefined : toSignificant(number, DRAWN)
}
