/** Days of casting and test windows of a programme. */
import { daysBetween, momentOfDay } from '../../../core/measure/moment.ts'
import type { PlannedTests, ProgrammeDay } from '../../../core/studies/programme/programme-totals.ts'
import type { MortarGroup } from '../../../core/studies/programme/planned-mortars.ts'
import { laidOut } from '../../../records/studies/programme-of.ts'
import { date } from '../../../words/dates.ts'
import { countWords, number } from '../../../words/numbers.ts'
import { dayText, windowText } from '../../../words/programme.ts'
import type { Edition } from '../../shape/edition.ts'
import type { StudyEntry } from '../../shape/study-entry.ts'

export interface ProgrammeCalendar {
  readonly lead: string
  readonly days: readonly CalendarDay[]
  /** The hour of casting is planned, so that windows have clock times. */
  readonly hasClock: boolean
}

export interface CalendarDay {
  readonly day: string
  readonly cast: readonly string[]
  readonly tests: readonly string[]
  readonly mortars: string
  readonly crushed: string
  readonly read: string
  readonly isPast: boolean
}

/** null for a study without a programme. */
export function programmeCalendar(
  edition: Pick<Edition, 'conditions' | 'asOf'>,
  study: StudyEntry,
): ProgrammeCalendar | null {
  const laid = laidOut(study.record, edition.conditions)
  if (laid === null) return null
  const several = 1 < laid.programme.laboratories.length
  const behind = laid.days.filter(({ day }) => isPast(edition, day))
  const castBehind = behind.filter(({ cast }) => 0 < cast.length).length
  const testsBehind = behind.filter(({ tests }) => 0 < tests.length).length
  return {
    lead: `By ${date(edition.asOf)} the plan has ${castBehind} of ${countWords(laid.totals.castingDays, 'casting day')} and ${countWords(testsBehind, 'test day')} behind it. ${study.readings === 0 ? 'No reading is on record yet' : `${countWords(study.readings, 'reading')} on record`}.`,
    days: laid.days.map((day) => calendarDay(day, several, isPast(edition, day.day))),
    hasClock: laid.programme.castMinute !== null,
  }
}

function isPast({ asOf }: Pick<Edition, 'asOf'>, day: number): boolean {
  return daysBetween(momentOfDay(day), asOf) >= 0
}

function calendarDay(day: ProgrammeDay, several: boolean, past: boolean): CalendarDay {
  const count = (value: number) => (value === 0 ? '' : number(value, 0))
  return {
    day: dayText(day.day),
    cast: day.cast.map(
      (group) => `${groupName(group, several)}: ${countWords(group.materials.length + 1, 'mortar')}`,
    ),
    tests: day.tests.map((test) => testText(test, several)),
    mortars: count(day.mortars),
    crushed: count(day.strength),
    read: count(day.resistivity),
    isPast: past,
  }
}

function testText({ group, due }: PlannedTests, several: boolean): string {
  return `${due.planned.age.text} of ${groupName(group, several)}: ${windowText(due)}`
}

function groupName({ condition, batch, laboratory }: MortarGroup, several: boolean): string {
  return `${condition.code}, batch ${batch}${several ? `, laboratory ${laboratory}` : ''}`
}
