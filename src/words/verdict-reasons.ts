/** Why a verdict came out as it did: sentences without a full stop, from its reasons. */
import type { VerdictParams, VerdictReason } from '../core/criteria/reason.ts'
import type { TitleOf } from './clause-reasons.ts'
import { countWords } from './numbers.ts'
import { listWords } from './sentences.ts'
import { outcomeWords } from './outcomes.ts'
import { type WordsOf, wordsOf } from './reason-words.ts'

/** What the sentences take from the clauses: headings and reasons, by id. */
export interface WordsOfClauses {
  readonly titleOf: TitleOf
  readonly reasonOf: (clause: string) => string
}

const REASONS: WordsOf<VerdictParams, [clauses: WordsOfClauses]> = {
  'no-clause-applies': () => 'no clause of the set gives a limit for this lot',
  'all-met': ({ count }) => `meets ${allOf(count)}`,
  'all-met-some-by-approval': ({ count }) => `meets ${allOf(count)}, some by approval`,
  'history-lacking': ({ uniformityAlone }) =>
    `meets all clauses that can be evaluated; ${uniformityAlone ? 'uniformity' : 'the rest'} not yet evaluable`,
  'others-met': ({ outcome, others }) =>
    `${outcomeWords(outcome)}${others === 0 ? '' : '; all other clauses met'}`,
  'met-so-far': ({ met, of }) => `${met} of ${countWords(of, 'clause')} met so far`,
  'decided-by': ({ clause }, { titleOf, reasonOf }) => `${titleOf(clause)}: ${reasonOf(clause)}`,
  'also-open': ({ outcome, clauses }, { titleOf }) =>
    `also ${outcomeWords(outcome)}: ${listWords(clauses.map(titleOf), 'and')}`,
  'edition-superseded': ({ edition, by }) => `judged under edition ${edition}, which is superseded by ${by}`,
}

export function verdictReasonWords(reason: VerdictReason, clauses: WordsOfClauses): string {
  return wordsOf(REASONS, reason, clauses)
}

function allOf(count: number): string {
  return count === 1 ? 'the one clause that applies' : `all ${count} clauses that apply`
}
