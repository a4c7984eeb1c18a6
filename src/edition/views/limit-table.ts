/** Every limit of a set at a glance, a column for each class; the clauses' sentences say the rest. */
import {
  type Comparison,
  type Criterion,
  EVERY_CLASS,
  type Group,
  includesClass,
  type Limit,
} from '../../core/criteria/criterion.ts'
import { quantitiesFor, statedLimit } from '../../core/criteria/limits-for-class.ts'
import { COMBINED } from '../../words/outcomes.ts'
import { clauseTitle } from '../../words/clause-titles.ts'
import { limitText } from '../../words/limits.ts'
import { unbroken } from '../../words/sentences.ts'
import { placedClauses } from './placed-clauses.ts'

export interface LimitTable {
  readonly columns: readonly string[]
  readonly rows: readonly LimitTableRow[]
}
export interface LimitTableRow {
  readonly title: string
  /** The condition, where the title leaves it out. */
  readonly condition: string
  readonly optional: boolean
  /** The set that the clause comes from, where it is not this one. */
  readonly layer: string | null
  readonly relaxed: boolean
  readonly information: boolean
  /** Opens a group: its heading and what its members have to do with each other. */
  readonly opens: { readonly title: string; readonly demand: string } | null
  readonly member: boolean
  /** In the order of the columns. */
  readonly cells: readonly string[]
}

/** @param conditionTitle a reader's name of a condition */
export function limitTable(criterion: Criterion, conditionTitle: (id: string) => string): LimitTable {
  const classes = columnsOf(criterion)
  return {
    columns: classes.map((name) => (name === EVERY_CLASS ? 'Limit' : `Class ${name}`)),
    rows: placedClauses(criterion.clauses).map(({ clause, group }, place, placed) => ({
      title: unbroken(clauseTitle(clause, conditionTitle)),
      opens: group === null || placed[place - 1]?.group === group ? null : opening(group, conditionTitle),
      member: group !== null,
      condition: unbroken(missingCondition(clause, conditionTitle)),
      optional: clause.optional,
      layer: clause.layer === criterion.id ? null : clause.layer,
      relaxed: clause.changes?.some(({ change }) => change === 'relax') === true,
      information: clause.information,
      cells: classes.map((name) => cell(clause, name) || 'not for this class'),
    })),
  }
}

function opening(group: Group, conditionTitle: (id: string) => string): LimitTableRow['opens'] {
  return { title: unbroken(clauseTitle(group, conditionTitle)), demand: COMBINED[group.combine] }
}

/** Categories that multiply have a column each, not their products. */
function columnsOf({ classes, axes }: Criterion): readonly string[] {
  return classes.length === 0 ? [EVERY_CLASS] : (axes?.flat() ?? classes)
}

/** A title of its writer's own may leave out the condition, without which an index says nothing. */
function missingCondition(clause: Comparison, conditionTitle: (id: string) => string): string {
  if (clause.condition === undefined || clause.title === undefined) return ''
  const condition = conditionTitle(clause.condition)
  return clause.title.includes(condition) ? '' : `, ${condition}`
}

/** An outer limit that holds by approval stands behind the plain one; empty where the clause is for others. */
function cell(clause: Comparison, column: string): string {
  const { approval, bands, limits } = clause
  if (!speaksOf(clause, column)) return ''
  const plain = limitsText(limits, column) || (bands === undefined ? 'none' : 'classified')
  const outer =
    approval === undefined || !approvedFor(approval, column) ? '' : limitsText([approval.limit], column)
  return outer === '' ? plain : `${plain}; by ${approval?.by ?? 'approval'} ${outer}`
}

function speaksOf({ classes }: Comparison, column: string): boolean {
  return classes === undefined || column === EVERY_CLASS || includesClass(classes, column)
}

function approvedFor({ classes }: NonNullable<Comparison['approval']>, column: string): boolean {
  return classes === undefined || includesClass(classes, column)
}

function limitsText(limits: readonly Limit[], column: string): string {
  return limits
    .flatMap((limit) => {
      const quantities = quantitiesFor(limit, column)
      return quantities === undefined
        ? []
        : [limitText(statedLimit({ operator: limit.operator, quantities }))]
    })
    .filter((text) => text !== '')
    .join(' and ')
}
