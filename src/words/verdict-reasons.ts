/** Why a verdict came out as it did: sentences without a full stop, from its reasons. */
import type { Outcome } from '../core/criteria/outcome.ts'
import type { VerdictParams, VerdictReason } from '../core/criteria/reason.ts'
import { lateRoutesWords, type TitleOf } from './clause-reasons.ts'
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
  'no-clause-applies': () => 'no clause of this specification sets a limit for this lot',
  'all-met': ({ count }) => `meets ${allOf(count)}`,
  'all-met-some-by-approval': ({ count }) => `meets ${allOf(count)}, some by approval`,
  'history-lacking': ({ uniformityAlone }) =>
    `meets all clauses that can be evaluated; ${uniformityAlone ? 'uniformity' : 'the rest'} cannot be evaluated yet`,
  'others-met': ({ outcome, count, others, soFar = 0 }) => {
    const clauses = others === 0 ? allOf(count) : countWords(count, 'clause')
    const said = `${outcomeFor(outcome, clauses)}${soFarWords(soFar, count)}`
    return others === 0 ? said : `${said}; meets the other ${others === 1 ? 'one' : others}`
  },
  'met-so-far': ({ met, failed, of }) =>
    failed === 0
      ? `${met} of ${countWords(of, 'clause')} met so far`
      : `fails ${failed}${met === 0 ? '' : ` and meets ${met}`} of ${countWords(of, 'clause')}; the others are still open`,
  'late-routes-of': ({ clause, routes }, { titleOf }) =>
    `${lateRoutesWords(routes, titleOf)} ${titleOf(clause)}`,
  'decided-by': ({ clause }, { titleOf, reasonOf }) => `${titleOf(clause)}: ${reasonOf(clause)}`,
  'without-uncertainty': ({ clauses }, { titleOf }) =>
    `no uncertainty stated, which the decision rule needs: ${listWords(clauses.map(titleOf), 'and')}`,
  'also-open': ({ outcome, clauses }, { titleOf }) =>
    `also ${outcomeWords(outcome)}: ${listWords(clauses.map(titleOf), 'and')}`,
  'edition-superseded': ({ edition, by }) => `judged under edition ${edition}, which is superseded by ${by}`,
}

export function verdictReasonWords(reason: VerdictReason, clauses: WordsOfClauses): string {
  return wordsOf(REASONS, reason, clauses)
}

/** "fails 2 clauses", "pending for the only clause that applies". */
function outcomeFor(outcome: Outcome, clauses: string): string {
  switch (outcome) {
    case 'does-not-meet':
      return `fails ${clauses}`
    case 'not-reported':
      return `results not reported for ${clauses}`
    case 'not-valid':
      return `a test is not valid for ${clauses}`
    default:
      return `${outcomeWords(outcome)} for ${clauses}`
  }
}

/** What an overdue result can still change: a failed lot would otherwise be read where a report is late. */
function soFarWords(soFar: number, count: number): string {
  if (soFar === 0) return ''
  return soFar === count ? ' so far' : `, ${soFar} of them only so far`
}

function allOf(count: number): string {
  return count === 1 ? 'the only clause that applies' : `all ${count} clauses that apply`
}
