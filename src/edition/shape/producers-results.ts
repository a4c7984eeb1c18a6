/** What of a lot is its producer's: an agency's tests may stand among the others, on samples that verify. */
import { roleOf } from '../../core/mortar/mortar.ts'
import type { Lot } from '../../records/schema/loaded-records.ts'
import type { Result } from '../../core/result/result.ts'
import type { LotEntry } from './edition.ts'

/** The results that a certificate is about. */
export function producersResults({ results }: Pick<LotEntry, 'results'>): Result[] {
  return results.filter((result) => result.role === 'producer')
}

/** A lot's record without analyses and mortars on samples that verify; itself where there are none. */
export function producersRecord(record: Lot): Lot {
  const { analyses, tests, ...rest } = record
  const isOwn = ({ sample }: { readonly sample: string }) => roleOf(sample, record) === 'producer'
  if ([...(analyses ?? []), ...(tests ?? [])].every(isOwn)) return record
  const [ownAnalyses, ownTests] = [analyses?.filter(isOwn) ?? [], tests?.filter(isOwn) ?? []]
  return {
    ...rest,
    ...(0 < ownAnalyses.length ? { analyses: ownAnalyses } : {}),
    ...(0 < ownTests.length ? { tests: ownTests } : {}),
  }
}
