/** The list of all acceptance criteria. */
import { type Criterion, isUnconfirmed, setName } from '../../core/criteria/criterion.ts'
import { plural } from '../../words/numbers.ts'
import { scopeWords } from '../../words/outcomes.ts'
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

/** Confirmed is said without reserve only of a set that holds its whole specification. */
function standingWords(criterion: Criterion): string {
  const scope = scopeWords(criterion)
  const lacks = criterion.lacks.length
  return [
    confirmedWords(criterion),
    lacks === 0 ? null : `leaves out ${plural(lacks, 'part', 'parts')} of the specification`,
    scope,
    criterion.supersededBy === undefined ? null : 'a later edition is on record',
  ]
    .filter((part) => part !== null)
    .join('; ')
}

function confirmedWords(criterion: Criterion): string {
  if (isUnconfirmed(criterion)) return 'trial: some limits from memory, unconfirmed'
  return criterion.layers.every(({ confirmed }) => confirmed !== undefined)
    ? 'confirmed against the standard'
    : 'as read or set, not checked against the published standard'
}
