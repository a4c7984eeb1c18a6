/** What a study says of a limit that rests on it. */
import type { ErrorsAtThreshold } from '../core/studies/screening/errors-at-threshold.ts'
import type { LimitAtCondition } from '../core/studies/screening/limit-at-condition.ts'
import { printedUnits } from './as-written.ts'
import { number } from './numbers.ts'
import { shareText } from './studies.ts'

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

/** "0 of 6 inert materials pass, at most 39 % of new ones, and 1 of 8 reactive ones fail, at most 47 % of new ones". */
function errorWords({ inert, reactive }: ErrorsAtThreshold): string {
  return `${own(inert, 'inert materials pass')}, and ${own(reactive, 'reactive ones fail')}`
}

function own({ wrong, undecided, n, newMaterial }: ErrorsAtThreshold['inert'], what: string): string {
  const open = undecided.length === 0 ? '' : ` (${undecided.join(', ')} undecided)`
  return `${wrong.length} of ${n} ${what}${open}, at most ${shareText(newMaterial)} of new ones`
}
