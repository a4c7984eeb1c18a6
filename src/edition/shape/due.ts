/** Lots that wait to be issued: by what their records hold today. */
import { isBy, type Moment } from '../../core/measure/moment.ts'
import { knownSince, type Result } from '../../core/result/result.ts'
import type { Edition, ListedLot, LotEntry } from './edition.ts'
import { producersResults } from './producers-results.ts'

type Waiting = Pick<LotEntry, 'state' | 'results' | 'planned' | 'revisions' | 'unstated'>

/** Something is still awaited, in time or overdue, so that the certificate is provisional. */
export function isProvisional({ planned }: Pick<LotEntry, 'planned'>): boolean {
  return 0 < planned.length
}

/**
 * Whether a lot is due: a draft whose earliest age is fully reported, or a provisional certificate that has
 * nothing left to await, or whose mortars gave a result since while all that it still lacks is overdue, or a complete
 * one that a laboratory's finished figure of a further test came for. A correction is never due: whoever corrects names
 * the lot.
 */
export function isDue(lot: Waiting): boolean {
  const { state, results, planned } = lot
  if (state === 'provisional') return !isProvisional(lot) || hasLateResult(lot)
  if (state === 'complete') return finishedSince(lot)
  if (state !== 'draft' || results.length === 0) return false
  const ages = results.flatMap(({ age }) => (age === undefined ? [] : [age.hours]))
  const earliest = Math.min(...ages, ...planned.map(({ age }) => age.hours))
  return planned.every(({ age }) => earliest < age.hours)
}

/** What is overdue may never come: a result that came after the newest revision does not wait for it. */
function hasLateResult(lot: Waiting): boolean {
  return (
    lot.planned.every(({ overdueSince }) => overdueSince !== undefined) &&
    resultsSince(lot).some(({ age }) => age !== undefined)
  )
}

/** No planned test announces a finished figure, so that nothing was awaited when the certificate was issued. */
function finishedSince(lot: Waiting): boolean {
  return resultsSince(lot).some(({ finished, age }) => finished === true && age !== undefined)
}

/**
 * What became known after the newest revision, or was written into the record after it with an earlier date; nothing
 * before the first one.
 */
export function resultsSince({
  results,
  revisions,
  unstated,
}: Pick<Waiting, 'results' | 'revisions' | 'unstated'>): Result[] {
  const newest = revisions.at(-1)
  if (newest === undefined) return []
  return producersResults({ results }).filter(
    (result) => !isBy(knownSince(result), newest.date) || unstated.includes(result.key),
  )
}

/**
 * The day of the records beside a lot: null where nothing of the lot is awaited, so that its pages and its data say the
 * same until a record changes.
 */
export function dayBeside(
  edition: Pick<Edition, 'asOf'>,
  { awaited }: Pick<ListedLot, 'awaited'>,
): Moment | null {
  return awaited.length > 0 ? edition.asOf : null
}

/** The same beside several lots: where something of any is awaited. */
export function dayBesideAny(
  edition: Pick<Edition, 'asOf'>,
  lots: Iterable<Pick<ListedLot, 'awaited'>>,
): Moment | null {
  for (const lot of lots) if (lot.awaited.length > 0) return edition.asOf
  return null
}
