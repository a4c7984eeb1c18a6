/** The tables for query engines as files, one for each source or laboratory and year. */
import { defined } from '../../core/measure/defined.ts'
import type { Edition } from '../shape/edition.ts'
import { type Partition, partitions } from '../tables/partitions.ts'
import { parquetFile } from './parquet-file.ts'

/** A file by its path, with the way to its bytes. */
export interface TablePart {
  readonly path: string
  /** The one source that its rows are of; absent where they are of several. */
  readonly source?: string
  /** Which rows are in it, as text. */
  readonly given: string
  readonly bytes: () => Uint8Array
}

/** @param edition already the audience's */
export function* tableParts(edition: Edition): Generator<TablePart> {
  for (const part of partitions(edition))
    yield defined({
      path: part.path,
      source: part.source,
      given: part.given,
      bytes: () => bytesOf(edition, part),
    })
}

/** Whom a file is for stands in the file itself, which has no as-of date: it changes with its rows alone. */
function bytesOf({ audience, site }: Edition, { table, values, columns }: Partition): Uint8Array {
  const keys = Object.fromEntries(table.keys.map((key, place) => [key, values[place] ?? '']))
  return parquetFile(columns(), {
    format: '1',
    table: table.name,
    description: table.description,
    ...keys,
    audience,
    ...(site.notice === undefined ? {} : { notice: site.notice }),
  })
}
