/** Heading of a clause: its own title, or the property with condition and age. */
import type { Clause, Comparison, Group } from '../core/criteria/criterion.ts'
import { listWords } from './sentences.ts'
import { propertyTitle } from './property-names.ts'
import type { UnitSystem } from './unit-systems.ts'

/**
 * @param conditionTitle a reader's name of a condition
 * @param units of the site, whose customers may know a property by another name
 */
export function clauseTitle(
  clause: Clause,
  conditionTitle: (id: string) => string,
  units: UnitSystem = 'SI',
): string {
  if (clause.title !== undefined) return clause.title
  switch (clause.form) {
    case 'group':
      return groupTitle(clause, conditionTitle, units)
    case 'comparison':
      return comparisonTitle(clause, conditionTitle, units)
    case 'fact':
      return plain(clause.fact)
    case 'document':
      return plain(clause.document)
    case 'class':
      return 'Classes allowed'
    case 'sampling':
      return `Sampling: ${listWords(
        clause.properties.map((key) => propertyTitle(key, units)),
        'and',
      )}`
  }
}

/** An id as a heading. */
function plain(id: string): string {
  const words = id.replaceAll('-', ' ')
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`
}

function groupTitle(group: Group, conditionTitle: (id: string) => string, units: UnitSystem): string {
  return listWords(
    group.members.map((member) => clauseTitle(member, conditionTitle, units)),
    group.combine === 'any-of' ? 'or' : 'and',
  )
}

function comparisonTitle(
  clause: Comparison,
  conditionTitle: (id: string) => string,
  units: UnitSystem,
): string {
  const parts = [
    propertyTitle(clause.property, units),
    clause.condition === undefined ? undefined : conditionTitle(clause.condition),
    clause.age,
  ]
  const title = parts.filter((part) => part !== undefined).join(', ')
  const remark = clause.deviation === undefined ? statisticRemark(clause) : DEVIATIONS[clause.deviation.from]
  return remark === undefined ? title : `${title}, ${remark}`
}

const DEVIATIONS = {
  preceding: 'uniformity',
  declared: 'deviation from the declared value',
  control: 'difference from the control',
} as const

function statisticRemark({ statistic }: Comparison): string | undefined {
  switch (statistic?.of) {
    case 'rolling-mean':
      return `mean of the last ${statistic.count}`
    case 'variables':
    case 'attributes':
      return `conformity over ${statistic.days} d`
    case 'tolerance':
      return 'share within the tolerance'
    case 'variability':
      return 'variability'
    case 'declared':
      return 'declared value'
    case undefined:
      return undefined
  }
}
