/** What the checks found of one source, for lists of the findings of several. */
import type { Finding } from '../../core/checks/finding.ts'
import type { Edition } from './edition.ts'
import { partOfSource } from './part-of-source.ts'

export interface FoundOfSource {
  readonly ofSource: readonly Finding[]
  /** Of each lot that has any. */
  readonly ofLots: readonly (readonly [lot: string, findings: readonly Finding[]])[]
}

/** What the checks found of a source and of its lots, without reading them again. */
export const foundOf = partOfSource(
  'findings',
  (edition: Edition, source): FoundOfSource => ({
    ofSource: edition.source(source).findings,
    ofLots: edition
      .lotsOf(source)
      .flatMap(({ id, findingCount }): FoundOfSource['ofLots'][number][] =>
        findingCount === 0 ? [] : [[id, edition.lot(id).findings]],
      ),
  }),
)
