/** Lots that wait to be issued: by what their records hold today. */
import { isBy } from '../../core/measure/moment.ts'
import { knownSince } from '../../core/result/result.ts'
import type { LotEntry } from '../shape/edition.ts'
import { isProvisional, producersResults } from './certificate-facts.ts'

type Waiting = Pick<LotEntry, 'state' | 'results' | 'planned' | 'revisions'>

/**
 * Whether a lot is due: a draft whose earliest age is fully reported, or a provisional certificate that has
 * nothing left to await, or whose mortars gave a result since while all that it still lacks is overdue. A
 * correction is never due: whoever corrects names the lot.
 */
export function isDue(lot: Waiting): boolean {
  const { state, results, planned } = lot
  if (state === 'provisional') return !isProvisional(lot) || hasLateResult(lot)
  if (state !== 'draft' || results.length === 0) return false
  const ages = results.flatMap(({ age }) => (age === undefined ? [] : [age.hours]))
  const earliest = Math.min(...ages, ...planned.map(({ age }) => age.hours))
  return planned.every(({ age }) => earliest < age.hours)
}

/** What is overdue may never come: a result that came after the newest revision does not wait for it. */
function hasLateResult({ results, planned, revisions }: Waiting): boolean {
  const newest = revisions.at(-1)
  return (
    newest !== undefined &&
    planned.every(({ overdueSince }) => overdueSince !== undefined) &&
    producersResults({ results }).some(
      (result) => result.age !== undefined && !isBy(knownSince(result), newest.date),
    )
  )
}
