/** What the bench page lets one choose from. */
import { listedSetName } from '../../words/outcomes.ts'
import type { Edition } from '../shape/edition.ts'

interface Choice {
  readonly id: string
  readonly name: string
}

export interface BenchView {
  readonly sources: readonly Choice[]
  readonly sets: readonly Choice[]
}

export function benchView({ sources, criteria }: Pick<Edition, 'sources' | 'criteria'>): BenchView {
  return {
    sources: [...sources.values()].map(({ id, name }) => ({ id, name })),
    sets: [...criteria.values()].map((criterion) => ({ id: criterion.id, name: listedSetName(criterion) })),
  }
}
