/** Heading of a clause: its own title, or the property with condition and age. */
import type { Clause, Comparison, Group } from './criterion.ts'
import { listWords } from './limit-words.ts'
import { property } from './properties.ts'

/** @param conditionTitle a reader's name of a condition */
export function clauseTitle(clause: Clause, conditionTitle: (id: string) => string): string {
  if (clause.title !== undefined) return clause.title
  return clause.form === 'group' ? groupTitle(clause, conditionTitle) : comparisonTitle(clause, conditionTitle)
}

function groupTitle(group: Group, conditionTitle: (id: string) => string): string {
  return listWords(group.members.map((member) => clauseTitle(member, conditionTitle)), group.combine === 'any-of' ? 'or' : 'and')
}

function comparisonTitle(clause: Comparison, conditionTitle: (id: string) => string): string {
  const parts = [property(clause.property).title, clause.condition === undefined ? undefined : conditionTitle(clause.condition), clause.age]
  const title = parts.filter((part) => part !== undefined).join(', ')
  if (clause.deviation === undefined) return title
  return clause.deviation.from === 'preceding' ? `${title}, uniformity` : `${title}, deviation from the declared value`
}
