/** Everything that an edition's data files say, as one text to search in. */
import type { Edition } from '../../src/edition/shape/edition.ts'
import { partitions } from '../../src/edition/tables/partitions.ts'
import { dataFiles } from '../../src/edition/writers/outputs.ts'

/** Tables are compressed in their files, so that nothing is found there: their columns stand for them. */
export function allData(edition: Edition): string {
  const texts = [...dataFiles(edition)].flatMap(({ path, pieces }) => [
    path,
    ...(path.endsWith('.parquet') ? [] : (pieces() ?? [])),
  ])
  return [...texts, ...[...partitions(edition)].map(({ columns }) => JSON.stringify(columns()))].join('\n')
}
