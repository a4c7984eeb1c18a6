/** The edition that a check reads: one source after the other, so that no more lots are held than are looked at. */
import { defined } from '../core/measure/defined.ts'
import { sourceOf } from '../core/measure/lot-id.ts'
import type { Moment } from '../core/measure/moment.ts'
import { computeEdition } from '../edition/compute.ts'
import type { Edition } from '../edition/shape/edition.ts'
import { foundOf } from '../edition/shape/found-of-source.ts'
import type { PerSource } from '../edition/shape/once-per-source.ts'
import { shipmentsByYear } from '../edition/shape/shipments-of-sources.ts'
import { answersOf } from '../edition/views/answers.ts'
import type { CheckedFaults } from '../edition/views/check-lots.ts'
import { faultyRecords } from '../records/checks/faulty-records.ts'
import { hasSite, type LoadedContent, type Records } from '../records/load.ts'
import { blocksIn } from './issuable.ts'
import { leftForAll, leftForLot } from './left-texts.ts'
import { countWords } from '../words/numbers.ts'
import { hasAnswers } from './answer-warnings.ts'
import { memoryWatch } from './memory-watch.ts'
import { PROGRAM, today } from './program.ts'
import { progress } from './progress.ts'

/** Of more lots, the few that are at hand: a computed lot takes 75 KB, its results alone 20. */
const HELD = { results: 10_000, whole: 2_000 }

export interface CheckedAs {
  readonly asOf?: Moment
  /** Folder of a site that the edition is held against. */
  readonly against?: string
}

/**
 * @param ofSource what is asked of each source, while it is held
 * @returns null without a site, whose criteria and grace are not known
 */
export function checkedEdition(
  records: Records,
  { asOf, against }: CheckedAs,
  ofSource: readonly PerSource<unknown>[],
): Edition | null {
  if (!hasSite(records)) return null
  const asked = [foundOf, shipmentsByYear, ...(hasAnswers(records) ? [answersOf] : []), ...ofSource]
  const atSource: PerSource<void> = (edition, source) => {
    for (const ask of asked) ask(edition, source)
  }
  // What the public sees, which is held against a site, is made of the whole edition.
  const held = against === undefined ? HELD : undefined
  const telling = progress()
  telling.at(`Computing ${countWords(records.lots.size, 'lot')}`)
  const edition = computeEdition(
    records,
    defined({ program: PROGRAM, asOf, today: today(), atLot: memoryWatch(), held, atSource }),
  )
  telling.end()
  return edition
}

/** What a check tells of lots whose records have faults. */
export function faultsOf(
  content: Pick<LoadedContent, 'records' | 'diagnostics' | 'datedFaultyLots'>,
): CheckedFaults {
  const errors = content.diagnostics.filter(({ severity }) => severity === 'error')
  const unjudged = faultyRecords(errors)
    .filter(({ kind, id }) => kind === 'source' || (kind === 'lot' && !id.endsWith('/')))
    .map(({ kind, id }) => ({
      id,
      errors: errors.filter((one) =>
        faultyRecords([one]).some((other) => other.kind === kind && other.id === id),
      ).length,
      lots:
        kind === 'lot' ? 0 : [...content.records.lots.keys()].filter((lot) => sourceOf(lot) === id).length,
    }))
  const ofAll = leftForAll(content.records)
  return {
    unjudged,
    blocks: blocksIn(content),
    left: (lot) => ofAll ?? leftForLot(content.records, lot),
  }
}
