/** What a study says of a limit that rests on it. */
import type { ErrorsAtThreshold } from '../core/studies/screening/errors-at-threshold.ts'
import type { LimitAtCondition } from '../core/studies/screening/limit-at-condition.ts'
import { printedUnits } from './as-written.ts'
import { number } from './numbers.ts'
import { boundText } from './studies.ts'

/** @param found with the limit as written, and as an index in % */
export function limitEvidenceWords(
  found: LimitAtCondition & { readonly limit: number; readonly written: string },
): string {
  const { threshold, atThreshold, atLimit, limit, written } = found
  if (threshold === null) return `the study gives no threshold there${atLimitWords(atLimit, written)}`
  const own = `its threshold there is ${number(threshold, 0)} %${atThreshold === null ? '' : `, at which ${errorWords(atThreshold)}`}`
  return threshold === limit
    ? `${own}; the limit here is the same`
    : `${own}; the limit here is another, ${written}${atLimitWords(atLimit, written)}`
}

/**
 * @param what is stated differently
 * @param clause,study as each states it
 */
export function conditionDiffersWords(what: string, clause: string, study: string): string {
  return `the conditions differ: ${what} ${printedUnits(clause)} here, ${printedUnits(study)} in the study`
}

export const NOTHING_READ = 'the study has no such index there'

/** Beside every figure of a study that a limit rests on. */
export const EVIDENCE_NOTE =
  '“At most”: one-sided 95 % bound for new materials, which takes those of the study as a sample of all'

function atLimitWords(atLimit: ErrorsAtThreshold | null, written: string): string {
  return atLimit === null ? '' : `; at ${written}, ${errorWords(atLimit)}`
}

/** "inert materials that pass: 0 of 6, at most 39 %; reactive ones that fail: 1 of 8, at most 47 %". */
function errorWords({ inert, reactive }: ErrorsAtThreshold): string {
  return `inert materials that pass are ${own(inert)}, reactive ones that fail ${own(reactive)}`
}

function own({ wrong, undecided, n, newMaterial }: ErrorsAtThreshold['inert']): string {
  const open = undecided.length === 0 ? '' : ` (${undecided.join(', ')} undecided)`
  return `${boundText(wrong.length, n, newMaterial)}${open}`
}
