/** Days of casting of a programme, its ages and their windows. */
import type { Moment } from '../../core/measure/moment.ts'
import { weekdayOf } from '../../core/studies/programme/planned-mortars.ts'
import { sentence } from '../../words/sentences.ts'
import { checkDate, checkOrder } from '../checks/dates.ts'
import type { AllRecords } from '../checks/references.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { Study } from '../schema/loaded-records.ts'
import { below } from '../yaml/pointer.ts'
import { castConditions, recordOfCondition, toleranceHours, WEEKDAYS } from './programme-of.ts'

type Written = NonNullable<Study['programme']>

const AT = '/programme'

/** No programme goes on for longer, and beyond it a year is a slip. */
const LONGEST_DAYS = 3660

/** Days of casting. */
export function checkCasting({ plan }: Study, { casting }: Written, report: FileReport): void {
  const at = `${AT}/casting`
  for (const [place, day] of (casting.except ?? []).entries())
    checkDate(day, below(`${at}/except`, place), report)
  if (casting.dates !== undefined) checkDates(plan, casting.dates, report)
  else if (casting.first === undefined || casting['mortars-a-day'] === undefined)
    report.atKey(
      at,
      'key-missing',
      'the programme does not say when mortar is cast',
      'add first and mortars-a-day, or dates by batch',
    )
  else if (checkCast(plan.fixed, casting.first, `${at}/first`, report))
    checkWeekday(casting.first, casting.on ?? WEEKDAYS.slice(0, 5), report)
}

/** A day of casting: in the calendar, after the plan was fixed, and not for another generation. */
function checkCast(fixed: Moment, day: Moment, pointer: string, report: FileReport): boolean {
  if (!checkDate(day, pointer, report)) return false
  checkOrder({ earlier: fixed, later: day, pointer, sentence: 'cast before the plan was fixed' }, report)
  if (day.day - fixed.day <= LONGEST_DAYS) return true
  report.at(pointer, 'programme', `${day} is more than ten years after the plan was fixed`, 'check the year')
  return false
}

function checkDates(
  { fixed, batches = 1 }: Study['plan'],
  dates: NonNullable<Written['casting']['dates']>,
  report: FileReport,
): void {
  const at = `${AT}/casting/dates`
  for (const [batch, day] of Object.entries(dates)) checkCast(fixed, day, below(at, batch), report)
  const missing = Array.from({ length: batches }, (_, place) => String(place + 1)).find(
    (batch) => dates[batch] === undefined,
  )
  if (missing !== undefined)
    report.atKey(
      at,
      'key-missing',
      `batch ${missing} has no day of casting, and the plan has ${batches}`,
      'add its day',
    )
}

function checkWeekday(first: Moment, on: readonly (typeof WEEKDAYS)[number][], report: FileReport): void {
  const weekday = WEEKDAYS[weekdayOf(first.day)]
  if (weekday === undefined || on.includes(weekday)) return
  report.at(
    `${AT}/casting/first`,
    'programme',
    `${first} is a ${sentence(weekday)}, on which nobody casts`,
    'name a day of those under on, or add it there',
  )
}

/** Ages, their specimens and their windows. */
export function checkAges(study: Study, programme: Written, all: AllRecords, report: FileReport): void {
  const { ages } = programme
  if (ages.every(({ strength = 0, resistivity = 0 }) => strength + resistivity === 0))
    report.atKey(
      `${AT}/ages`,
      'programme',
      'no specimen is tested at any age',
      'add to an age how many are crushed or read: strength: 3',
    )
  for (const [place, age] of ages.entries()) {
    const pointer = below(`${AT}/ages`, place)
    const first = ages.findIndex((one) => one.age.hours === age.age.hours)
    if (first !== place)
      report.at(
        `${pointer}/age`,
        'duplicate-id',
        `the age ${age.age} stands here twice`,
        'keep one of the two',
        [report.place(`${below(`${AT}/ages`, first)}/age`, 'the first entry of this age')],
      )
    if (age.age.hours <= 0 || 50 * 366 * 24 < age.age.hours)
      report.at(
        `${pointer}/age`,
        'age-unknown',
        `"${age.age}" is not an age at test`,
        'write days or hours: 28 d',
      )
    const untimed = castConditions(study).find(
      (code) => toleranceHours(age, recordOfCondition(study, code, all.conditions)) === null,
    )
    if (untimed !== undefined) {
      const record = study.conditions?.[untimed]?.record
      report.at(
        `${pointer}/age`,
        record === undefined ? 'key-missing' : 'age-unknown',
        record === undefined
          ? `the age ${age.age} has no tolerance, and the condition ${untimed} names no record that could state one`
          : `the condition ${record} has no age ${age.age}, so that no tolerance is known for ${untimed}`,
        'add within, such as 12 h',
      )
    } else if (age.within !== undefined && (age.within.value <= 0 || age.age.hours <= age.within.value))
      report.at(
        `${pointer}/within`,
        'quantity-range',
        `a tolerance of ${age.within.written} leaves no window about ${age.age}`,
        'write the hours or days that a test may be early or late: 12 h',
      )
  }
  checkOverlap(ages, report)
}

function checkOverlap(ages: Written['ages'], report: FileReport): void {
  const inOrder = ages.toSorted((a, b) => a.age.hours - b.age.hours)
  for (const [place, age] of inOrder.entries()) {
    const next = inOrder[place + 1]
    const reach = (age.within?.value ?? 0) + (next?.within?.value ?? 0)
    if (next === undefined || next.age.hours === age.age.hours || reach < next.age.hours - age.age.hours)
      continue
    report.atKey(
      `${AT}/ages`,
      'programme',
      `the windows of ${age.age} and ${next.age} overlap`,
      'write smaller tolerances',
    )
  }
}
