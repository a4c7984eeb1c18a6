/** Nothing on record has happened after the day that the records are read on. */
import { lastDayOf, type Moment } from '../../core/measure/moment.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { Control, CriterionRecord, Lot, Source } from '../schema/loaded-records.ts'
import { below } from '../yaml/pointer.ts'
import { answerHappenings } from './answers.ts'

/** A moment at which something happened, where it stands, and what it is where more than the moment written there. */
export type Happening = readonly [moment: Moment | undefined, pointer: string, said?: string]

/** A clock ahead of the site's, or a date east of it, is no fault: own choice. */
const GRACE_DAYS = 1

/** The day that records are read on. */
export interface ReadOn {
  readonly asOf: Moment
  /** site.yaml states it, else it is that of the clock or was asked for. */
  readonly isOfSite: boolean
}

/**
 * Reports what is said to have happened more than a day after the as-of date.
 * @param on undefined where nobody states a day
 */
export function checkHappenings(
  happenings: Iterable<Happening>,
  on: ReadOn | undefined,
  report: FileReport,
): void {
  if (on === undefined) return
  const { asOf, isOfSite } = on
  for (const [moment, pointer, said] of happenings)
    if (moment !== undefined && asOf.day + GRACE_DAYS < moment.day)
      report.at(
        pointer,
        'date-ahead',
        `${said ?? moment} is later than the as-of date, ${asOf}`,
        isOfSite
          ? 'correct the date, or move as-of in site.yaml'
          : 'correct the date; what has not happened yet is written once it has',
      )
}

/** Production, sampling, tests, shipments and revisions; ends of validity and planned tests are exempt. */
export function* lotHappenings(lot: Lot): Generator<Happening> {
  yield [lot.produced.from, '/produced/from']
  yield [lot.produced.to, '/produced/to']
  for (const [place, { taken, on, received }] of lot.samples.entries()) {
    const at = `/samples/${place}`
    yield [taken?.from, `${at}/taken/from`]
    yield [taken?.to, `${at}/taken/to`]
    yield [on, `${at}/on`]
    yield [received, `${at}/received`]
  }
  for (const what of ['analyses', 'verification'] as const)
    for (const [place, analysis] of (lot[what] ?? []).entries()) {
      const at = `/${what}/${place}`
      if ('taken' in analysis) yield [analysis.taken, `${at}/taken`]
      yield [analysis.tested, `${at}/tested`]
      yield [analysis.reported, `${at}/reported`]
      yield* exclusions(analysis.results, `${at}/results`)
    }
  for (const [place, test] of (lot.tests ?? []).entries()) yield* mortarHappenings(test, `/tests/${place}`)
  for (const [place, { date }] of (lot.shipments ?? []).entries()) yield [date, `/shipments/${place}/date`]
  for (const [place, { date }] of (lot.revisions ?? []).entries()) yield [date, `/revisions/${place}/date`]
  yield* answerHappenings(lot.answers)
}

/** Casting and readings of a control. */
export function controlHappenings(control: Control): Iterable<Happening> {
  return mortarHappenings(control, '')
}

/** The day on which somebody held the limits against the standard. */
export function criterionHappenings({ confirmed }: CriterionRecord): Happening[] {
  return [[confirmed?.date, '/confirmed/date']]
}

/** What happened at a source; what is said to end later, or planned for later, may do so. */
export function* sourceHappenings(source: Source): Generator<Happening> {
  for (const what of ['events', 'listing', 'shipments'] as const)
    for (const [place, { date }] of (source[what] ?? []).entries()) yield [date, `/${what}/${place}/date`]
  for (const [place, { on }] of (source.reports?.received ?? []).entries())
    yield [on, `/reports/received/${place}/on`]
  for (const [place, { on, tested }] of (source.diverted ?? []).entries()) {
    yield [on, `/diverted/${place}/on`]
    yield [tested, `/diverted/${place}/tested`]
  }
  // A month is balanced when it is over.
  for (const [place, { month }] of (source.balance ?? []).entries())
    yield [lastDayOf(month), `/balance/${place}/month`, `the end of ${month}`]
  for (const [place, { visits = [] }] of (source['verification-plan'] ?? []).entries())
    for (const [index, { on }] of visits.entries())
      yield [on, `/verification-plan/${place}/visits/${index}/on`]
  for (const [place, { on }] of (source['numbers-not-used'] ?? []).entries())
    yield [on, `/numbers-not-used/${place}/on`]
  yield* answerHappenings(source.answers)
}

function* mortarHappenings(
  mortar: Pick<Control, 'cast' | 'strength' | 'resistivity'>,
  at: string,
): Generator<Happening> {
  yield [mortar.cast, `${at}/cast`]
  for (const what of ['strength', 'resistivity'] as const)
    for (const [place, reading] of (mortar[what] ?? []).entries()) {
      const here = `${at}/${what}/${place}`
      yield [reading.tested, `${here}/tested`]
      yield [reading.reported, `${here}/reported`]
      yield* exclusions(reading.specimens ?? {}, `${here}/specimens`)
    }
}

/** Days of exclusion of specimens or results, by their names. */
function* exclusions(members: Readonly<Record<string, unknown>>, at: string): Generator<Happening> {
  for (const [name, member] of Object.entries(members))
    if (Array.isArray(member)) yield* exclusions({ ...member }, below(at, name))
    else if (typeof member === 'object' && member !== null && 'excluded-on' in member)
      yield [member['excluded-on'] as Moment, `${below(at, name)}/excluded-on`]
}
