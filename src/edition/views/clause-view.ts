/** A clause for proof-reading: a sentence, where its limits come from, what a supplement changed. */
import { type Clause, type ClauseChange, type Criterion, layerTitle } from '../../core/criteria/criterion.ts'
import { originWords } from '../../words/clause-origins.ts'
import { clauseSentence } from '../../words/clause-sentences.ts'
import { demandWords } from '../../words/clause-demands.ts'
import { CHANGE_WORDS } from '../../words/clause-changes.ts'
import { fullSentence } from '../../words/sentences.ts'
import type { StudyEvidence } from './study-evidence.ts'

export interface ClauseView {
  readonly id: string
  readonly sentence: string
  readonly changes: readonly ClauseChangeView[]
  /** Empty where nothing is said of its origin. */
  readonly remarks: string
  /** What the study that set its limit says of it; null without one. */
  readonly evidence: StudyEvidence | null
  /** Members of a group. */
  readonly members: readonly ClauseView[]
}
export interface ClauseChangeView {
  readonly change: ClauseChange['change']
  readonly words: string
  readonly by: string
  readonly was: string
}

/** What a clause is seen with: a reader's name of a condition, and the study behind a limit. */
export interface ClauseSeenWith {
  readonly conditionTitle: (id: string) => string
  readonly evidenceOf: (clause: Clause) => StudyEvidence | null
}

/** A clause with its members. @param seen what it is seen with */
export function clauseView(clause: Clause, criterion: Criterion, seen: ClauseSeenWith): ClauseView {
  const { basis: _basis, setBy: _setBy, ...demand } = clause
  return {
    id: clause.id,
    sentence: fullSentence(clauseSentence(demand, criterion, seen.conditionTitle)),
    changes: (clause.changes ?? []).map(({ change, layer, former }) => ({
      change,
      words: CHANGE_WORDS[change],
      by: layerTitle(criterion, layer),
      was: demandWords(former),
    })),
    remarks: remarksOf(clause, criterion),
    // Of a group its members say it.
    evidence: clause.form === 'group' ? null : seen.evidenceOf(clause),
    members:
      clause.form === 'group' ? clause.members.map((member) => clauseView(member, criterion, seen)) : [],
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
