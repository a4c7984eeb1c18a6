/** The list of all acceptance criteria. */
import { type Criterion, isUnconfirmed, setName } from '../../core/criteria/criterion.ts'
import { kindWords } from '../../words/material-kinds.ts'
import { link, paths } from '../shape/addresses.ts'
import type { Edition } from '../shape/edition.ts'

export interface ListedCriterion {
  readonly name: string
  readonly href: string
  readonly edition: string
  /** The sets that a supplement rests on; null for a set of its own. */
  readonly on: string | null
  readonly classes: string
  readonly kinds: string
  readonly standing: string
}

export function criteriaList(edition: Pick<Edition, 'address' | 'criteria'>): ListedCriterion[] {
  return [...edition.criteria.values()].map((criterion) => {
    const { designation, title, layers } = criterion
    return {
      name: designation === undefined ? title : `${designation}: ${title}`,
      href: link(edition, paths.criterion(criterion.id)),
      edition: criterion.edition,
      on: layers.length < 2 ? null : layers.slice(0, -1).map(setName).join('; '),
      classes: criterion.classes.join(', ') || 'none',
      kinds: criterion.kinds.map(kindWords).join(', '),
      standing: standingWords(criterion),
    }
  })
}

function standingWords(criterion: Criterion): string {
  const later = criterion.supersededBy === undefined ? '' : '; a later edition is on record'
  if (isUnconfirmed(criterion)) return `trial: some limits from memory, unconfirmed${later}`
  return criterion.layers.every(({ confirmed }) => confirmed !== undefined)
    ? `confirmed against the standard${later}`
    : `as read or set; see each clause${later}`
}
