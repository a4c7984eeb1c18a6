/** A clause for proof-reading: a sentence, where its limits come from, what a supplement changed. */
import { type Clause, type ClauseChange, type Criterion, layerTitle } from '../../core/criteria/criterion.ts'
import { originWords } from '../../words/clause-origins.ts'
import { clauseSentence } from '../../words/clause-sentences.ts'
import { demandWords } from '../../words/clause-demands.ts'
import { CHANGE_WORDS } from '../../words/clause-changes.ts'
import { fullSentence } from '../../words/sentences.ts'

export interface ClauseView {
  readonly id: string
  readonly sentence: string
  readonly changes: readonly ClauseChangeView[]
  /** Empty where nothing is said of its origin. */
  readonly remarks: string
  /** Members of a group. */
  readonly members: readonly ClauseView[]
}
export interface ClauseChangeView {
  readonly change: ClauseChange['change']
  readonly words: string
  readonly by: string
  readonly was: string
}

/** @param conditionTitle a reader's name of a condition */
export function clauseView(
  clause: Clause,
  criterion: Criterion,
  conditionTitle: (id: string) => string,
): ClauseView {
  const { basis: _basis, setBy: _setBy, ...demand } = clause
  return {
    id: clause.id,
    sentence: fullSentence(clauseSentence(demand, criterion, conditionTitle)),
    changes: (clause.changes ?? []).map(({ change, layer, former }) => ({
      change,
      words: CHANGE_WORDS[change],
      by: layerTitle(criterion, layer),
      was: demandWords(former),
    })),
    remarks: remarksOf(clause, criterion),
    members:
      clause.form === 'group'
        ? clause.members.map((member) => clauseView(member, criterion, conditionTitle))
        : [],
  }
}

function remarksOf(clause: Clause, criterion: Criterion): string {
  const { setBy, layer } = clause
  return [
    criterion.layers.length < 2 ? undefined : `from: ${layerTitle(criterion, layer)}`,
    originWords(clause, criterion) ?? undefined,
    setBy === undefined ? undefined : `set by ${setBy.user ?? `the study ${setBy.study}`}`,
    clause.form === 'comparison' ? clause.method : undefined,
  ]
    .filter((part) => part !== undefined)
    .join(' · ')
}
