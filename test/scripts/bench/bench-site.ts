/** The demo as the bench page gets it: the site's own data files, read back from their text. */
import { resolve } from 'node:path'
import { ROOT } from '../../../src/commands/program.ts'
import {
  type SourceEvidence,
  type UnpackedSource,
  unpackSource,
} from '../../../src/core/evidence/source-evidence.ts'
import { computeEdition } from '../../../src/edition/compute.ts'
import { forAudience } from '../../../src/edition/publishing.ts'
import type { Edition } from '../../../src/edition/shape/edition.ts'
import { paths } from '../../../src/edition/shape/addresses.ts'
import { dataFile } from '../../../src/edition/writers/outputs.ts'
import { loadRecords } from '../../../src/records/load.ts'
import { type SiteRecords, siteRecords } from '../../../src/scripts/bench/bench-records.ts'

export interface BenchSite extends SiteRecords {
  readonly edition: Edition
  readonly source: (id: string) => UnpackedSource
}

let known: BenchSite | undefined

export function benchSite(): BenchSite {
  known ??= madeSite()
  return known
}

function madeSite(): BenchSite {
  const { records } = loadRecords(resolve(ROOT, 'content'))
  const edition = forAudience(computeEdition(records, { program: 'test' }), 'public')
  const file = (path: string) => JSON.parse(String(dataFile(edition, path) ?? 'null'))
  return {
    edition,
    ...siteRecords({
      bench: file(paths.benchData),
      conditions: file(paths.conditionData).conditions,
      controls: file(paths.controlData).controls,
      criteria: file(paths.criterionData).criteria,
    }),
    source: (id) => unpackSource(file(paths.sourceEvidence(id)) as SourceEvidence),
  }
}
