/** npm run check -- --explain: a set of criteria for proof-reading, a sentence for each clause. */
import { type Criterion, everyClause, setName } from '../core/criteria/criterion.ts'
import { conditionTitle } from '../edition/shape/condition-title.ts'
import type { Records } from '../records/load.ts'
import { CHANGE_WORDS } from '../words/clause-changes.ts'
import { demandWords } from '../words/clause-demands.ts'
import { mainSourceWords } from '../words/clause-origins.ts'
import { clauseSentence } from '../words/clause-sentences.ts'
import { riskSentence, ruleWords } from '../words/rules.ts'
import { ruleNoteLines } from './check-rule-notes.ts'
import { CommandFailure, EXIT } from './program.ts'

/**
 * The sentences of a set, or of one clause of it with its members. @throws CommandFailure for a set or clause
 * that is not on record
 */
export function explained(records: Records, asked: string): string {
  const [id = '', clauseId] = asked.split('/')
  const criterion = records.criteria.get(id)
  if (criterion === undefined)
    throw new CommandFailure(
      `There is no criterion "${id}", or its record has a fault.`,
      EXIT.wrongUse,
      `name one of ${[...records.criteria.keys()].join(', ')}`,
    )
  const clauses =
    clauseId === undefined
      ? criterion.clauses
      : [...everyClause(criterion.clauses)].filter((clause) => clause.id === clauseId)
  if (clauses.length === 0)
    throw new CommandFailure(
      `The specification ${id} has no clause "${clauseId}".`,
      EXIT.wrongUse,
      `name one of ${[...everyClause(criterion.clauses)].map((clause) => clause.id).join(', ')}`,
    )
  const head = [
    setName(criterion),
    ...(criterion.layers.length < 2
      ? []
      : [`Layers: ${criterion.layers.map((layer) => layer.id).join(', then ')}`]),
    `Decision rule: ${ruleWords(criterion.decisionRule)}; ${riskSentence(criterion)}`,
    ...ruleNoteLines(records, criterion),
    ...readIn(criterion),
  ]
  const lines = clauses.map((clause) => {
    const changes = (clause.changes ?? [])
      .map(
        (change) =>
          `\n    ${CHANGE_WORDS[change.change].toLowerCase()} by ${change.layer}; before: ${demandWords(change.former)}`,
      )
      .join('')
    const layer = clause.layer === criterion.id ? '' : ` (${clause.layer})`
    const asked = clauseSentence(clause, criterion, (condition) => conditionTitle(records, condition))
    return `  ${clause.id}${layer}: ${asked}${changes}`
  })
  const removed =
    clauseId === undefined
      ? criterion.removed.map(
          (clause) => `  ${clause.id}: removed by ${clause.by}; it required: ${demandWords(clause.former)}`,
        )
      : []
  const lacks =
    clauseId === undefined && criterion.lacks.length > 0
      ? ['', 'Left out of this set:', ...criterion.lacks.map((text) => `  ${text}`)]
      : []
  return `${[...head, '', ...lines, ...removed, ...lacks].join('\n')}\n`
}

/** Where the limits were read that say nothing of their own, a line for each layer. */
function readIn(criterion: Criterion): string[] {
  return criterion.layers.flatMap(({ id }) => {
    const main = mainSourceWords(id, criterion)
    return main === null ? [] : [`${id}: limits without a remark of their own were read in ${main}`]
  })
}
