/** What the bench page lets one choose from. */
import { listedSetName } from '../../words/outcomes.ts'
import type { Edition } from '../shape/edition.ts'
import { shippedSets } from '../shape/shipped-sets.ts'

interface Choice {
  readonly id: string
  readonly name: string
}

export interface BenchView {
  readonly sources: readonly Choice[]
  readonly sets: readonly Choice[]
  /** Sets that the program ships and the site does not have. */
  readonly shipped: readonly Choice[]
}

export function benchView(
  edition: Pick<Edition, 'sources' | 'criteria' | 'conditions' | 'shipped'>,
): BenchView {
  return {
    sources: [...edition.sources.values()].map(({ id, name }) => ({ id, name })),
    sets: choices(edition.criteria),
    shipped: choices(shippedSets(edition).criteria),
  }
}

function choices(criteria: Edition['criteria']): Choice[] {
  return [...criteria.values()].map((criterion) => ({ id: criterion.id, name: listedSetName(criterion) }))
}
