/** An answer to a finding, part by part. */
import type { Moment } from '../core/measure/moment.ts'
import { date } from './dates.ts'
import { listWords, sentence } from './sentences.ts'
import { NOT_PUBLISHED } from './withheld.ts'

/** As the record of a lot or source has it, without what is not published. */
export interface Answer {
  readonly date: Moment
  readonly by: string
  readonly answer: string
  readonly cause?: string
  readonly containment?: string
  readonly bills?: readonly string[]
  readonly told?: readonly { readonly who: string; readonly on: Moment }[]
  readonly disposition?: string
  readonly 'disposed-by'?: string
  readonly closed?: Moment
}

export interface AnswerPart {
  readonly term: string
  readonly text: string
}

/** What is on record of an answer, in the order in which it is asked. */
export function answerParts(answer: Answer): AnswerPart[] {
  const { cause, containment, bills = [], told = [], disposition, closed } = answer
  const part = (term: string, text: string | undefined) =>
    text === undefined ? [] : [{ term, text: sentence(text) }]
  const toldWords = told.map(({ who, on }) => `${who} on ${date(on)}`)
  return [
    ...part('Answer', `${date(answer.date)}${byWords(answer.by)}: ${answer.answer}`),
    ...part('Cause', cause),
    ...part('Containment', containment),
    ...part('Bills affected', bills.length === 0 ? undefined : listWords(bills, 'and')),
    ...part('Told', toldWords.length === 0 ? undefined : listWords(toldWords, 'and')),
    ...part('Disposition', disposition && `${disposition}${byWords(answer['disposed-by'])}`),
    ...part('Closed', closed && date(closed)),
  ]
}

/** A name that is not published is left out rather than said to be so each time. */
function byWords(name: string | undefined): string {
  return name === undefined || name === NOT_PUBLISHED.name ? '' : ` (${name})`
}
