/** What publishing takes from single sources: rows of the lots that are shown, and the controls that these were tested against. */
import type { Edition, ListedLot, LotEntry } from '../shape/edition.ts'
import type { Publish } from './published-record.ts'
import { lotsNamed } from '../shape/lots-named.ts'
import { producersRecord } from '../shape/producers-results.ts'
import { publicLotFindings } from '../shape/public-findings.ts'

/**
 * Asks a source for all that `forAudience` takes from it, while its lots are held.
 * @param edition that is whole
 */
export function askForShown(edition: Edition, source: string): void {
  rowsShown(edition, source)
  controlsUsed(edition, source)
  lotsNamed(edition, source)
}

export function rowsShown(edition: Edition, source: string): readonly ListedLot[] {
  return edition.ofSource(source, 'rows shown', () =>
    shownOf(edition, source).map((row) => publicRow(row, edition.lot(row.id), publishedBy(edition))),
  )
}

/** Drafts only where the site wants them. */
function shownOf(edition: Edition, source: string): readonly ListedLot[] {
  return edition.lotsOf(source).filter((lot) => edition.site.drafts === 'yes' || lot.state !== 'draft')
}

export function publishedBy({ site }: Edition): Publish {
  return new Set(site.publish ?? [])
}

/** No finding of a lot is left out for the sake of lots that are not shown. */
function publicRow(row: ListedLot, lot: LotEntry, publish: Publish): ListedLot {
  const findingCount = publicLotFindings(lot, { publish, hidden: new Set() }).length
  return { ...withoutProjectOutcomes(row, lot, publish), findingCount }
}

/** What a project asks for tells of the project. */
function withoutProjectOutcomes(row: ListedLot, { ofProjects }: LotEntry, publish: Publish): ListedLot {
  if (ofProjects.length === 0 || publish.has('project')) return row
  return { ...row, outcomes: row.outcomes.filter(({ criterion }) => !ofProjects.includes(criterion)) }
}

interface ControlsUsed {
  /** By what is shown of the lots of a source. */
  readonly shown: readonly string[]
  readonly any: readonly string[]
}

export function controlsUsed(edition: Edition, source: string): ControlsUsed {
  const isAll = publishedBy(edition).has('verification')
  const part = isAll ? (record: LotEntry['record']) => record : producersRecord
  const usedBy = (rows: readonly ListedLot[], of: typeof part) =>
    rows.flatMap(({ id }) => (of(edition.lot(id).record).tests ?? []).flatMap(({ control }) => control ?? []))
  return edition.ofSource(source, 'controls used', () => ({
    shown: usedBy(shownOf(edition, source), part),
    any: usedBy(edition.lotsOf(source), (record) => record),
  }))
}
