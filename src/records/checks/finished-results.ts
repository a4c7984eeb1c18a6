/** Results of mortars that a laboratory reports finished: each belongs to a condition and an age. */
import { type Age, isSameAge } from '../../core/measure/age.ts'
import { isPropertyKey, type PropertyKey } from '../../core/measure/properties.ts'
import { isFinishable, isMortarResult } from '../../core/measure/ratio-indices.ts'
import { checkAge } from '../../core/mortar/age-tolerance.ts'
import { figuresOf, type ReportedFigure, type ReportedValue } from '../../core/mortar/mortar.ts'
import { addHours, daysBetween, type Moment } from '../../core/measure/moment.ts'
import type { Quantity } from '../../core/measure/units.ts'
import { countWords } from '../../words/numbers.ts'
import type { FileReport } from '../diagnostics/report.ts'
import type { Lot } from '../schema/loaded-records.ts'
import { below } from '../yaml/pointer.ts'
import { checkAgeListed } from './readings.ts'
import { type AllRecords, checkReference } from './references.ts'
import { sampledEnd } from './samples.ts'

/** A figure with where it stands. */
interface Placed {
  readonly key: PropertyKey
  readonly figure: ReportedFigure
  readonly pointer: string
}

/**
 * Reports finished results without their condition or age, at one that is not known, or listed twice.
 * @param results of one analysis @param at pointer of them all
 */
export function checkFinished(
  results: Readonly<Record<string, ReportedValue | undefined>>,
  at: string,
  all: AllRecords,
  report: FileReport,
): void {
  for (const [key, value] of Object.entries(results)) {
    if (value === undefined || !isPropertyKey(key) || !isFinishable(key)) continue
    const pointer = below(at, key)
    const figures = figuresOf(value)
    figures.forEach((figure, index) => {
      const placed = { key, figure, pointer: Array.isArray(value) ? below(pointer, index) : pointer }
      checkTest(placed, all, report)
      if (figures.slice(0, index).some((other) => isSameTest(other, figure))) reportTwice(placed, report)
    })
  }
}

function checkTest({ key, figure, pointer }: Placed, all: AllRecords, report: FileReport): void {
  const { condition, age } = figure
  if (isMortarResult(key) && (condition === undefined || age === undefined)) {
    report.at(
      pointer,
      'finished-without-test',
      `${key} is a result of a mortar, and the figure ${missing(condition, age)}`,
      `write ${key}: { value: ${figure.value.written}, condition: ${condition ?? 'ID'}, age: ${age ?? exampleAge(condition, all)} }${condition === undefined ? ', with the id of the condition that the laboratory tested at' : ''}`,
    )
    return
  }
  checkReference('condition', condition, `${pointer}/condition`, all, report)
  if (age !== undefined) checkAgeListed(age, pointer, all.conditions.get(condition ?? ''), report)
}

function missing(condition: string | undefined, age: Age | undefined): string {
  if (condition !== undefined) return 'does not state the age'
  return age !== undefined ? 'does not state the condition' : 'states neither condition nor age'
}

function exampleAge(condition: string | undefined, all: AllRecords): string {
  return all.conditions.get(condition ?? '')?.ages[0]?.age.text ?? '28 d'
}

/** A mortar of a lot, as far as its figures may have come finished. */
export interface Analysed {
  readonly lot: Lot
  readonly analysis: NonNullable<Lot['analyses']>[number]
  /** Pointer of the analysis. */
  readonly at: string
}

/**
 * Reports a figure whose age its mortar had not reached on the day of the test: a fault where its casting is on record.
 * Without one it was cast at the earliest when the sample had been taken, and the day may be that of the other results of
 * the analysis: told, and judged all the same. So is one whose age had passed, unless the day is that of a later age.
 */
export function checkAgesReached(analysed: Analysed, all: AllRecords, report: FileReport): void {
  for (const [key, value] of Object.entries(analysed.analysis.results)) {
    if (value === undefined || !isPropertyKey(key) || !isMortarResult(key)) continue
    const figures = figuresOf(value)
    if (figures.some((figure) => isTooSoon(key, figure, analysed, all, report))) return
    for (const figure of figures)
      if (!figures.some((other) => isLaterAge(other, figure))) checkPassed(key, figure, analysed, all, report)
  }
}

function isTooSoon(
  key: PropertyKey,
  { condition, age }: ReportedFigure,
  { lot, analysis, at }: Analysed,
  all: AllRecords,
  report: FileReport,
): boolean {
  const begun = begunBy(lot, analysis, condition)
  if (age === undefined || begun === undefined) return false
  const soonest = addHours(begun.on, age.hours - (toleranceOf(condition, age, all)?.value ?? 0))
  if (soonest.day <= analysis.tested.day) return false
  const days = daysBetween(begun.on, analysis.tested)
  const when = `${countWords(Math.abs(days), 'day')} ${days < 0 ? 'before' : 'after'}`
  const tooSoon = `${key} at ${age} was tested ${when}`
  if (begun.castAt === null)
    report.warnAt(`${at}/tested`, 'age-unreached', `${tooSoon} the sample was taken`, OWN_DAY)
  else
    report.at(
      `${at}/tested`,
      'dates-backwards',
      `${tooSoon} the mortar was cast`,
      'check the age and both days; one of them is wrong',
      [report.place(begun.castAt, `${begun.on}, the mortar was cast`)],
    )
  return true
}

/** Held against the latest of several castings, by the tolerance that readings are held against. */
function checkPassed(
  key: PropertyKey,
  { condition, age }: ReportedFigure,
  { lot, analysis, at }: Analysed,
  all: AllRecords,
  report: FileReport,
): void {
  const within = age && toleranceOf(condition, age, all)
  const cast = castingsOf(lot, analysis, condition).at(-1)
  if (age === undefined || within === undefined || cast === undefined) return
  const days = daysBetween(cast.on, analysis.tested)
  const { check } = checkAge(cast.on, analysis.tested, age, within.value)
  if (check !== 'outside' || 24 * days < age.hours) return
  report.warnAt(
    `${at}/tested`,
    'age-passed',
    `${key} at ${age} was tested ${countWords(days, 'day')} after the mortar was cast, on ${cast.on}; the condition ${condition} allows ${age} ± ${within.written}`,
    OWN_DAY,
  )
}

/** An analysis states one day, that of its last test. */
function isLaterAge(
  other: ReportedFigure,
  { condition, age }: Pick<ReportedFigure, 'condition' | 'age'>,
): boolean {
  return other.condition === condition && (age?.hours ?? 0) < (other.age?.hours ?? 0)
}

function toleranceOf(condition: string | undefined, age: Age, all: AllRecords): Quantity | undefined {
  return all.conditions.get(condition ?? '')?.ages.find((entry) => isSameAge(entry.age, age))?.within
}

const OWN_DAY = 'write the figure in an analysis of its own, with the day of its test'

interface Begun {
  readonly on: Moment
  /** Pointer of the casting; null for the end of sampling in its place. */
  readonly castAt: string | null
}

/** Of several castings the earliest: a figure does not say from which it came. */
function begunBy(lot: Lot, analysis: Analysed['analysis'], condition: string | undefined): Begun | undefined {
  const [earliest] = castingsOf(lot, analysis, condition)
  if (earliest !== undefined) return earliest
  const taken = sampledEnd(lot, analysis.sample)
  return taken && { on: taken, castAt: null }
}

/** In order of their days. */
function castingsOf(
  lot: Lot,
  { sample, laboratory }: Analysed['analysis'],
  condition: string | undefined,
): { on: Moment; castAt: string }[] {
  return (lot.tests ?? [])
    .flatMap((test, index) =>
      test.condition === condition && test.sample === sample && test.laboratory === laboratory
        ? [{ on: test.cast, castAt: `/tests/${index}/cast` }]
        : [],
    )
    .toSorted((one, other) => one.on.day - other.on.day)
}

function isSameTest(one: ReportedFigure, other: ReportedFigure): boolean {
  return one.condition === other.condition && isSameAge(one.age, other.age) && one.method === other.method
}

function reportTwice({ key, pointer }: Placed, report: FileReport): void {
  report.at(
    pointer,
    'duplicate-id',
    `the list states ${key} twice for one condition and age`,
    'keep one figure, or report the repeated test as an analysis of its own',
  )
}
