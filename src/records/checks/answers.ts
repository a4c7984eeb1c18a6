/** Answers to findings: each names a check, and is given, told and closed on days in order. */
import { CHECKS } from '../../core/checks/catalogue.ts'
import { nearNames } from '../diagnostics/near-names.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { Answer } from '../schema/loaded-records.ts'
import { checkDate, checkOrder } from './dates.ts'
import type { Happening } from './happenings.ts'

export function checkAnswers(answers: readonly Answer[] | undefined, report: FileReport): void {
  for (const [index, { finding, date, told = [], closed }] of (answers ?? []).entries()) {
    const at = `/answers/${index}`
    checkNameOfCheck(finding.split('/')[0] ?? '', `${at}/finding`, report)
    for (const [place, { on }] of told.entries()) checkDate(on, `${at}/told/${place}/on`, report)
    if (checkDate(date, `${at}/date`, report) && checkDate(closed, `${at}/closed`, report))
      checkOrder(
        {
          ...{ earlier: date, later: closed, pointer: `${at}/closed`, earlierAt: `${at}/date` },
          sentence: 'closed before it was answered',
        },
        report,
      )
  }
}

/** Reports a check that does not exist: the id of a finding begins with its check. */
export function checkNameOfCheck(check: string, pointer: string, report: FileReport): void {
  if (Object.hasOwn(CHECKS, check)) return
  report.at(
    pointer,
    'reference-unknown',
    `there is no audit check "${check}"`,
    nearNames(check, Object.keys(CHECKS)) || 'copy the id of the finding as check prints it',
  )
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
