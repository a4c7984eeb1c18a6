/** The results that a certificate is about. */
import type { Result } from '../../core/result/result.ts'
import type { LotEntry } from './edition.ts'

export function producersResults({ results }: Pick<LotEntry, 'results'>): Result[] {
  return results.filter((result) => result.role === 'producer')
}
