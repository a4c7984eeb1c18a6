/** Every data file of the site beside its pages, made one at a time. */
import { lotColumns, shipmentColumns } from './columns.ts'
import type { Edition } from './edition.ts'
import { certificateFeed } from './feed.ts'
import { lotData, referenceData } from './lot-data.ts'
import { lotsTable, resultsTable, shipmentsTable } from './tables.ts'
import { paths } from './addresses.ts'

export interface OutputFile { readonly path: string; readonly text: string }

/** Data files in a fixed order; `edition` is already the audience's. */
export function* dataFiles(edition: Edition): Generator<OutputFile> {
  yield json(paths.indexData, lotColumns(edition))
  yield json(paths.shipmentData, shipmentColumns(edition))
  for (const [path, value] of Object.entries(referenceData(edition))) yield json(path, value)
  for (const lot of edition.lots.values()) yield json(paths.lotData(lot.id), lotData(edition, lot))
  yield { path: paths.lotsTable, text: lotsTable(edition) }
  yield { path: paths.resultsTable, text: resultsTable(edition) }
  yield { path: paths.shipmentsTable, text: shipmentsTable(edition) }
  const feed = certificateFeed(edition)
  if (feed !== null) yield { path: paths.feed, text: feed }
}

/** The text of one data file, for the development server; undefined for a path that is none. */
export function dataFile(edition: Edition, path: string): string | undefined {
  const lot = [...edition.lots.values()].find((candidate) => paths.lotData(candidate.id) === path)
  if (lot !== undefined) return json(path, lotData(edition, lot)).text
  for (const file of dataFiles({ ...edition, lots: path.startsWith('data/lots/') ? new Map() : edition.lots })) if (file.path === path) return file.text
  return undefined
}

function json(path: string, value: unknown): OutputFile {
  return { path, text: `${JSON.stringify(value)}\n` }
}
