/** Every data file of the site beside its pages, made one at a time. */
import { paths } from '../shape/addresses.ts'
import type { Edition } from '../shape/edition.ts'
import { benchData } from './bench-data.ts'
import { queriesOf } from '../tables/queries.ts'
import { tableSources } from '../tables/table-sources.ts'
import { lotColumns, shipmentColumns } from './columns.ts'
import { dataPackage } from './data-package.ts'
import { dueCalendar } from './due-calendar.ts'
import { certificateFeed, sourceFeed } from './feed.ts'
import { criterionData } from './criterion-data.ts'
import { conditionData, controlData, lotData, sourceEvidenceData } from './lot-data.ts'
import { programmeCalendarFile } from './programme-calendar.ts'
import { studyData } from './study-data.ts'
import { studyTable } from './study-table.ts'
import { tableParts } from './table-parts.ts'
import { lotsTable, resultsTable, shipmentsTable } from './tables.ts'

/** Text, which is written as UTF-8, or the bytes of what is no text. */
export type Piece = string | Uint8Array

export interface OutputFile {
  readonly path: string
  /** The one source that it is of; absent for a file of several or none. */
  readonly source?: string
  /** What it is made of beside the edition, as text: the same file comes of the same text and edition. */
  readonly given?: string
  /** Text or bytes in order, made as they are asked for; null where the site has no such file. */
  readonly pieces: () => Iterable<Piece> | null
}

/** Files of the whole site by path. */
const SITE_FILES: Readonly<Record<string, (edition: Edition) => Iterable<string> | null>> = {
  [paths.indexData]: (edition) => json(edition, lotColumns(edition)),
  [paths.shipmentData]: (edition) => json(edition, shipmentColumns(edition)),
  [paths.conditionData]: (edition) => json(edition, conditionData(edition)),
  [paths.controlData]: (edition) => json(edition, controlData(edition)),
  [paths.criterionData]: (edition) => json(edition, criterionData(edition)),
  [paths.benchData]: (edition) => json(edition, benchData(edition)),
  [paths.lotsTable]: lotsTable,
  [paths.resultsTable]: resultsTable,
  [paths.shipmentsTable]: shipmentsTable,
  [paths.dataPackage]: (edition) => [`${JSON.stringify(dataPackage(edition), null, 1)}\n`],
  [paths.dueCalendar]: (edition) => whole(dueCalendar(edition)),
  [paths.feed]: (edition) => whole(certificateFeed(edition)),
}

/** Data files in a fixed order, none made before its pieces are asked for; `edition` is already the audience's. */
export function* dataFiles(edition: Edition): Generator<OutputFile> {
  for (const [path, make] of Object.entries(SITE_FILES)) yield { path, pieces: () => make(edition) }
  for (const { id, sql } of sqlFiles(edition))
    yield { path: paths.query(id), given: sql, pieces: () => [sql] }
  for (const { bytes, ...part } of tableParts(edition)) yield { ...part, pieces: () => [bytes()] }
  for (const id of edition.sources.keys()) {
    const pieces = () => json(edition, sourceEvidenceData(edition, id))
    yield { path: paths.sourceEvidence(id), source: id, pieces }
    yield { path: paths.sourceFeed(id), source: id, pieces: () => whole(sourceFeed(edition, id)) }
  }
  for (const id of edition.studies.keys()) {
    yield { path: paths.studyTable(id), pieces: () => studyTable(edition, id) }
    yield { path: paths.studyData(id), pieces: () => json(edition, studyData(edition.study(id))) }
    yield { path: paths.studyCalendarFile(id), pieces: () => whole(programmeCalendarFile(edition, id)) }
  }
  for (const { id, source } of edition.lots.values())
    yield { path: paths.lotData(id), source, pieces: () => json(edition, lotData(edition, edition.lot(id))) }
}

/** One data file, for the development server; undefined for a path that is none. */
export function dataFile(edition: Edition, path: string): Uint8Array | undefined {
  for (const file of dataFiles(edition)) {
    if (file.path !== path) continue
    const pieces = file.pieces()
    return pieces === null ? undefined : Buffer.concat([...pieces].map((piece) => Buffer.from(piece)))
  }
  return undefined
}

/** What names the tables for an engine, and the queries. */
function sqlFiles(edition: Edition): { readonly id: string; readonly sql: string }[] {
  return [...tableSources(edition), ...queriesOf(edition)]
}

/** Whom a file is for stands in the file itself: it may be passed on without the site. */
function json({ audience }: Edition, value: object): [string] {
  return [`${JSON.stringify({ ...value, audience })}\n`]
}

function whole(text: string | null): [string] | null {
  return text === null ? null : [text]
}
