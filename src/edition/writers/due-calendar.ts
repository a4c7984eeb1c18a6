/** data/due.ics: one day for each result that is awaited, for a laboratory's calendar. */
import { addHours, compareMoments, dateOf } from '../../core/measure/moment.ts'
import { date } from '../../words/dates.ts'
import { plainSpaces, sentence } from '../../words/sentences.ts'
import { overdueWords, testName } from '../../words/standing.ts'
import { fullAddress, paths } from '../shape/addresses.ts'
import type { Edition, ListedLot } from '../shape/edition.ts'
import { namedTest } from '../shape/standing.ts'
import { calendarHost, calendarText, type DayEvent } from './calendar.ts'

/**
 * The calendar's text; null where nothing is awaited.
 * Note: a uid names lot, property, condition and age, so that a calendar which takes the file in again moves an
 * entry rather than doubling it.
 */
export function dueCalendar(edition: Edition): string | null {
  const events = [...edition.lots.values()]
    .flatMap((lot) => lot.awaited.map((test) => ({ lot, test })))
    .sort((a, b) => compareMoments(a.test.due, b.test.due) || (a.lot.id < b.lot.id ? -1 : 1))
    .map(({ lot, test }) => dueEvent(edition, lot, test))
  return events.length === 0
    ? null
    : calendarText(
        { name: `${edition.site.title}: results due`, url: fullAddress(edition, paths.due) },
        events,
        edition.asOf.text,
      )
}

function dueEvent(edition: Edition, lot: ListedLot, test: ListedLot['awaited'][number]): DayEvent {
  const { property, condition, age, due, overdueSince } = test
  const url = fullAddress(edition, paths.certificate(lot.id))
  const name = testName(namedTest(edition, test))
  const awaited =
    overdueSince === undefined
      ? `awaited until ${date(addHours(due, edition.site.grace.value))}`
      : overdueWords(overdueSince)
  return {
    uid: `${lot.id}/${property}/${condition}/${age.text.replaceAll(' ', '-')}@${calendarHost(edition)}`,
    day: dateOf(due).text,
    summary: plainSpaces(`${name} of ${lot.number} due`),
    description: plainSpaces(`${sentence(awaited)}.`),
    ...(url === null ? {} : { url }),
  }
}
