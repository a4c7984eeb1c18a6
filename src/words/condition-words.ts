/** What is particular to a condition, as it stands in a sentence. */
import type { Quantity } from '../core/measure/units.ts'
import { written } from './as-written.ts'

/** "20 % of the cement replaced by mass". */
export function replacementWords({
  replacement,
}: {
  readonly replacement: { readonly amount: Quantity; readonly by: string }
}): string {
  return `${written(replacement.amount)} of the cement replaced by ${replacement.by}`
}
