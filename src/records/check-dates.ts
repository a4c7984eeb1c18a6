/** Dates that do not exist, and dates that run backwards. */
import { compareMoments } from '../core/moment.ts'
import type { FileReport } from './report.ts'

/** Reports a date or time that no calendar or clock has. */
export function checkDate(moment: string | undefined, pointer: string, report: FileReport): boolean {
  if (moment === undefined) return true
  const [year, month, day] = [Number(moment.slice(0, 4)), Number(moment.slice(5, 7)), Number(moment.slice(8, 10))]
  const date = new Date(Date.UTC(year, month - 1, day))
  const clock = moment.length <= 10 || (Number(moment.slice(11, 13)) < 24 && Number(moment.slice(14, 16)) < 60)
  if (1900 <= year && date.getUTCMonth() === month - 1 && date.getUTCDate() === day && clock) return true
  report.at(pointer, 'date', `${moment} is not a date of the calendar`, 'check year, month, day and clock time')
  return false
}

/** Reports when `later` lies before `earlier`, both given. */
export function checkOrder({ earlier, later, pointer, sentence }: { earlier: string | undefined; later: string | undefined; pointer: string; sentence: string }, report: FileReport): void {
  if (earlier === undefined || later === undefined || compareMoments(earlier, later) <= 0) return
  report.at(pointer, 'dates-backwards', `${sentence}: ${later} lies before ${earlier}`, 'check both dates; one of them is mistyped')
}
