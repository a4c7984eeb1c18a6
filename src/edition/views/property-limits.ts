/** What sets ask of one property at one condition, a line for each clause. */
import { type Comparison, type Group, layerOf, layerTitle } from '../../core/criteria/criterion.ts'
import { propertyWords } from '../../words/property-names.ts'
import { demandWords, statisticSubject } from '../../words/clause-demands.ts'
import { clauseTitle } from '../../words/clause-titles.ts'
import { COMBINED, listedSetName } from '../../words/outcomes.ts'
import { sentence, unbroken } from '../../words/sentences.ts'
import { link, paths } from '../shape/addresses.ts'
import type { Edition } from '../shape/edition.ts'
import { conditionTitle } from '../shape/condition-title.ts'
import type { PropertyLimit } from './limits-by-property.ts'

type TitleOf = (condition: string) => string

export interface PropertyLimits {
  /** Names the table for those who hear it. */
  readonly label: string
  /** Whether any limit belongs to an age. */
  readonly aged: boolean
  readonly lines: readonly PropertyLimitLine[]
}
export interface PropertyLimitLine {
  readonly set: string
  readonly href: string
  readonly age: string
  readonly demand: string
  /** Empty where the demand says all. */
  readonly remarks: string
  readonly basis: string
}

export function propertyLimits(
  edition: Pick<Edition, 'address' | 'conditions' | 'announcedConditions'>,
  limits: readonly PropertyLimit[],
  label: string,
): PropertyLimits {
  return {
    label,
    aged: limits.some(({ clause }) => clause.age !== undefined),
    lines: limits.map((limit) => ({
      set: unbroken(listedSetName(limit.criterion)),
      href: link(edition, paths.criterion(limit.criterion.id)),
      age: limit.clause.age?.text ?? 'any',
      demand: unbroken(sentence(demandWords(limit.clause))),
      remarks: unbroken(sentence(remarksOf(limit, (id) => conditionTitle(edition, id)))),
      basis: basisWords(limit),
    })),
  }
}

const REFERENCES = {
  preceding: 'deviation from the mean of preceding results',
  declared: 'deviation from the declared value',
  control: 'difference from the control',
} as const

function remarksOf({ clause, criterion, group }: PropertyLimit, titleOf: TitleOf): string {
  return [
    subjectWords(clause),
    group === null ? '' : groupWords(group, titleOf),
    clause.classes === undefined ? '' : `for class ${clause.classes.join(', ')}`,
    clause.layer === criterion.id ? '' : `from ${layerTitle(criterion, clause.layer)}`,
  ]
    .filter((part) => part !== '')
    .join(' · ')
}

/** A member of a group is not a limit by itself: either age may be enough. */
function groupWords(group: Group, titleOf: TitleOf): string {
  const titles = group.members.map((member) => clauseTitle(member, titleOf))
  return `${COMBINED[group.combine]}: ${titles.join('; ')}`
}

/** What of the property is judged, where that is not the single result. */
function subjectWords(clause: Comparison): string {
  if (clause.statistic !== undefined) return statisticSubject(clause, propertyWords(clause))
  if (clause.deviation === undefined) return ''
  return `${REFERENCES[clause.deviation.from]}${clause.deviation.relative ? ', as a percentage of it' : ''}`
}

function basisWords({ clause, criterion }: PropertyLimit): string {
  const { basis, setBy, layer } = clause
  if (basis !== undefined) return 'read' in basis ? 'read' : 'from memory, not checked'
  return setBy?.user ?? setBy?.study ?? layerOf(criterion, layer)?.title ?? ''
}
