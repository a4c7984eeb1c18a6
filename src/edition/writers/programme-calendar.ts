/** studies/ID/calendar.ics: days of casting and of tests of a programme, for a laboratory's calendar. */
import { momentOfDay } from '../../core/measure/moment.ts'
import type { MortarGroup } from '../../core/studies/programme/planned-mortars.ts'
import { testsOf } from '../../core/studies/programme/programme-totals.ts'
import { type LaidOut, laidOut } from '../../records/studies/programme-of.ts'
import { countWords } from '../../words/numbers.ts'
import { windowText } from '../../words/programme.ts'
import { plainSpaces } from '../../words/sentences.ts'
import { fullAddress, paths } from '../shape/addresses.ts'
import type { Edition } from '../shape/edition.ts'
import { calendarHost, calendarText, type DayEvent } from './calendar.ts'

/**
 * The calendar's text; null for a study without a programme.
 * @param id of a study of the edition
 * Note: a uid names study, laboratory, condition, batch and age and no day, so that a calendar which takes the file in
 * again moves an entry rather than doubling it.
 */
export function programmeCalendarFile(edition: Edition, id: string): string | null {
  const { record } = edition.study(id)
  const laid = laidOut(record, edition.conditions)
  if (laid === null) return null
  const url = fullAddress(edition, paths.studyCalendar(id))
  return calendarText(
    { name: `${id}: casting and tests`, url },
    laid.groups.flatMap((group) => groupEvents(edition, id, laid, group)),
    edition.asOf.text,
  )
}

function groupEvents(edition: Edition, id: string, { programme }: LaidOut, group: MortarGroup): DayEvent[] {
  const { condition, batch, laboratory, materials } = group
  const mortars = materials.length + 1
  const name = `${condition.code}, batch ${batch}${programme.laboratories.length === 1 ? '' : `, laboratory ${laboratory}`}`
  const url = fullAddress(edition, paths.studySheets(id))
  const event = (what: string, day: number, summary: string, description: string): DayEvent => ({
    uid: `${id}/${laboratory}/${condition.code}/${batch}/${what}@${calendarHost(edition)}`,
    day: momentOfDay(day).text,
    summary: plainSpaces(`${id}: ${summary}`),
    description: plainSpaces(description),
    ...(url === null ? {} : { url }),
  })
  return [
    event(
      'cast',
      group.day,
      `cast ${name}`,
      `${countWords(mortars, 'mortar')}: control, ${materials.join(', ')}.`,
    ),
    ...testsOf(programme, group).map(({ due }) =>
      event(
        due.planned.age.text.replaceAll(' ', '-'),
        due.day,
        `${due.planned.age.text} test of ${name}`,
        `${windowText(due)}. ${countWords(mortars, 'mortar')}: ${due.planned.resistivity} read and ${due.planned.strength} crushed of each.`,
      ),
    ),
  ]
}
