/** Every data file of the site beside its pages, made one at a time. */
import { lotColumns, shipmentColumns } from './columns.ts'
import type { Edition } from '../shape/edition.ts'
import { certificateFeed } from './feed.ts'
import { conditionData, controlData, criterionData, lotData, sourceEvidenceData } from './lot-data.ts'
import { lotsTable, resultsTable, shipmentsTable } from './tables.ts'
import { paths } from '../shape/addresses.ts'

export interface OutputFile {
  readonly path: string
  readonly text: string
}

/** Files of the whole site by path; null where the site has no such file. */
const SITE_FILES: Readonly<Record<string, (edition: Edition) => string | null>> = {
  [paths.indexData]: (edition) => json(lotColumns(edition)),
  [paths.shipmentData]: (edition) => json(shipmentColumns(edition)),
  [paths.conditionData]: (edition) => json(conditionData(edition)),
  [paths.controlData]: (edition) => json(controlData(edition)),
  [paths.criterionData]: (edition) => json(criterionData(edition)),
  [paths.lotsTable]: lotsTable,
  [paths.resultsTable]: resultsTable,
  [paths.shipmentsTable]: shipmentsTable,
  [paths.feed]: certificateFeed,
}

/** Data files in a fixed order; `edition` is already the audience's. */
export function* dataFiles(edition: Edition): Generator<OutputFile> {
  for (const [path, make] of Object.entries(SITE_FILES)) {
    const text = make(edition)
    if (text !== null) yield { path, text }
  }
  for (const source of edition.sources.values())
    yield { path: paths.sourceEvidence(source.id), text: json(sourceEvidenceData(edition, source)) }
  for (const lot of edition.lots.values())
    yield { path: paths.lotData(lot.id), text: json(lotData(edition, lot)) }
}

/** The text of one data file, for the development server; undefined for a path that is none. */
export function dataFile(edition: Edition, path: string): string | undefined {
  if (Object.hasOwn(SITE_FILES, path)) return SITE_FILES[path]?.(edition) ?? undefined
  const source = edition.sources.get(/^data\/evidence\/([^/]+)\.json$/.exec(path)?.[1] ?? '')
  if (source !== undefined) return json(sourceEvidenceData(edition, source))
  const lot = edition.lots.get(/^data\/lots\/(.+)\.json$/.exec(path)?.[1] ?? '')
  return lot === undefined ? undefined : json(lotData(edition, lot))
}

function json(value: unknown): string {
  return `${JSON.stringify(value)}\n`
}
