/** Answers to findings: each is given, told and closed on days in order. */
import type { FileReport } from '../diagnostics/report.ts'
import type { Answer } from '../schema/loaded-records.ts'
import { checkDate, checkOrder } from './dates.ts'
import type { Happening } from './happenings.ts'

export function checkAnswers(answers: readonly Answer[] | undefined, report: FileReport): void {
  for (const [index, { date, told = [], closed }] of (answers ?? []).entries()) {
    const at = `/answers/${index}`
    for (const [place, { on }] of told.entries()) checkDate(on, `${at}/told/${place}/on`, report)
    if (checkDate(date, `${at}/date`, report) && checkDate(closed, `${at}/closed`, report))
      checkOrder(
        { earlier: date, later: closed, pointer: `${at}/closed`, sentence: 'closed before it was answered' },
        report,
      )
  }
}

/** Days on which somebody answered, was told, or closed the question. */
export function* answerHappenings(answers: readonly Answer[] | undefined): Generator<Happening> {
  for (const [index, { date, told = [], closed }] of (answers ?? []).entries()) {
    const at = `/answers/${index}`
    yield [date, `${at}/date`]
    yield [closed, `${at}/closed`]
    for (const [place, { on }] of told.entries()) yield [on, `${at}/told/${place}/on`]
  }
}
