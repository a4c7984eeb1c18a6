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
  /** Text or bytes in order, made as they are asked for. */
  readonly pieces: Iterable<Piece>
}

/** Files of the whole site by path; null where the site has no such file. */
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
  [paths.dueCalendar]: (edition) => {
    const text = dueCalendar(edition)
    return text === null ? null : [text]
  },
  [paths.feed]: (edition) => {
    const text = certificateFeed(edition)
    return text === null ? null : [text]
  },
}

/** Data files in a fixed order; `edition` is already the audience's. */
export function* dataFiles(edition: Edition): Generator<OutputFile> {
  for (const [path, make] of Object.entries(SITE_FILES)) {
    const pieces = make(edition)
    if (pieces !== null) yield { path, pieces }
  }
  for (const { id, sql } of sqlFiles(edition)) yield { path: paths.query(id), pieces: [sql] }
  for (const { path, bytes } of tableParts(edition)) yield { path, pieces: made(bytes) }
  for (const id of edition.sources.keys())
    yield { path: paths.sourceEvidence(id), pieces: json(edition, sourceEvidenceData(edition, id)) }
  for (const id of edition.sources.keys()) {
    const text = sourceFeed(edition, id)
    if (text !== null) yield { path: paths.sourceFeed(id), pieces: [text] }
  }
  for (const id of edition.studies.keys()) {
    yield { path: paths.studyTable(id), pieces: studyTable(edition, id) }
    yield { path: paths.studyData(id), pieces: json(edition, studyData(edition.study(id))) }
    const calendar = programmeCalendarFile(edition, id)
    if (calendar !== null) yield { path: paths.studyCalendarFile(id), pieces: [calendar] }
  }
  for (const id of edition.lots.keys())
    yield { path: paths.lotData(id), pieces: json(edition, lotData(edition, edition.lot(id))) }
}

/** One data file, for the development server; undefined for a path that is none. */
export function dataFile(edition: Edition, path: string): Uint8Array | undefined {
  const pieces = piecesAt(edition, path)
  if (pieces === null) return undefined
  return Buffer.concat([...pieces].map((piece) => (typeof piece === 'string' ? Buffer.from(piece) : piece)))
}

function piecesAt(edition: Edition, path: string): Iterable<Piece> | null {
  if (Object.hasOwn(SITE_FILES, path)) return SITE_FILES[path]?.(edition) ?? null
  const query = sqlFiles(edition).find(({ id }) => paths.query(id) === path)
  if (query !== undefined) return [query.sql]
  if (path.startsWith(paths.tables)) {
    const part = [...tableParts(edition)].find((one) => one.path === path)
    return part === undefined ? null : [part.bytes()]
  }
  const source = /^data\/evidence\/([^/]+)\.json$/.exec(path)?.[1] ?? ''
  if (edition.sources.has(source)) return json(edition, sourceEvidenceData(edition, source))
  const followed = /^sources\/([^/]+)\/feed\.xml$/.exec(path)?.[1] ?? ''
  if (edition.sources.has(followed)) {
    const text = sourceFeed(edition, followed)
    return text === null ? null : [text]
  }
  const [, study = '', kind] = /^data\/studies\/([^/]+)\.(csv|json)$/.exec(path) ?? []
  if (edition.studies.has(study))
    return kind === 'csv' ? studyTable(edition, study) : json(edition, studyData(edition.study(study)))
  const planned = /^studies\/([^/]+)\/calendar\.ics$/.exec(path)?.[1] ?? ''
  if (edition.studies.has(planned)) {
    const text = programmeCalendarFile(edition, planned)
    return text === null ? null : [text]
  }
  const lot = /^data\/lots\/(.+)\.json$/.exec(path)?.[1] ?? ''
  return edition.lots.has(lot) ? json(edition, lotData(edition, edition.lot(lot))) : null
}

/** What names the tables for an engine, and the queries. */
function sqlFiles(edition: Edition): { readonly id: string; readonly sql: string }[] {
  return [...tableSources(edition), ...queriesOf(edition)]
}

/** One piece, made when it is asked for. */
function* made(bytes: () => Uint8Array): Generator<Uint8Array> {
  yield bytes()
}

/** Whom a file is for stands in the file itself: it may be passed on without the site. */
function json({ audience }: Edition, value: object): [string] {
  return [`${JSON.stringify({ ...value, audience })}\n`]
}
