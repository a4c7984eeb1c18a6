/** Lots that wait to be issued: by what their records hold today. */
import type { LotEntry } from '../shape/edition.ts'

/**
 * Whether a lot is due: a draft whose earliest age is fully reported, or a provisional certificate whose last
 * awaited result has come. A correction is never due: whoever corrects names the lot.
 */
export function isDue({ state, results, planned }: Pick<LotEntry, 'state' | 'results' | 'planned'>): boolean {
  const awaited = planned.filter((test) => test.overdueSince === undefined)
  if (state === 'provisional') return awaited.length === 0
  if (state !== 'draft' || results.length === 0) return false
  const ages = results.flatMap(({ age }) => (age === undefined ? [] : [age.hours]))
  const earliest = Math.min(...ages, ...planned.map(({ age }) => age.hours))
  return planned.every(({ age }) => earliest < age.hours)
}
