/**
 * The days on which results changed that were known before: a retest replaced them, a specimen was excluded, or
 * the control turned out unfit. On all other days results are only added.
 */
import { isSameAge } from '../measure/age.ts'
import type { Moment } from '../measure/moment.ts'
import { isPropertyKey } from '../measure/properties.ts'
import { isFinishable } from '../measure/ratio-indices.ts'
import { knownFrom } from '../mortar/known-when.ts'
import {
  type Analysis,
  type ControlMortar,
  figuresOf,
  isQuantity,
  type LotEvidence,
  type Mortar,
  type MortarCondition,
  type MortarReading,
} from '../mortar/mortar.ts'
import { controlOf } from '../mortar/stated-control.ts'
import { MORTAR_MEASUREMENTS } from './mortar-measurements.ts'

/**
 * Days on which earlier results of a lot changed.
 * @returns days since 1970-01-01, in order, each once, up to the lot's as-of date; none for most lots
 * Note: on some of them nothing may have changed; on any other day nothing has.
 */
export function disruptiveDays(lot: LotEvidence): number[] {
  return inOrder(daysOf(lot), lot.asOf)
}

/**
 * The same for a control batch by itself.
 * @param asOf calendar date; later days are left out
 */
export function disruptiveDaysOfControl(control: Mortar, asOf: Moment): number[] {
  return inOrder(daysOfMortar(control), asOf)
}

function inOrder(days: Iterable<number>, asOf: Moment): number[] {
  return [...new Set(days)].filter((day) => day <= asOf.day).sort((a, b) => a - b)
}

function* daysOf(lot: LotEvidence): Generator<number> {
  for (const analysis of [...lot.analyses, ...lot.verification])
    yield* exclusionDays(reportedValues(analysis))
  if (lot.analyses.some(isFinishedAnalysis)) yield* daysOfReadings(lot)
  for (const test of lot.tests) {
    yield* daysOfMortar(test)
    const control = controlOf(test, lot)
    if (control === undefined) continue
    yield* daysOfMortar(control)
    yield* daysOfDemand(test, control, lot.conditions.get(test.condition))
  }
}

/**
 * When the strength became known that the condition asks of the control, where an index is not valid without it
 * and a reading of the test mortar was known before.
 */
function* daysOfDemand(
  test: Mortar,
  control: ControlMortar,
  condition: MortarCondition | undefined,
): Generator<number> {
  const { strength, broken } = condition?.control ?? {}
  // A flag is a note: it changes neither value nor validity.
  if (strength === undefined || broken === 'flag') return
  const first = Math.min(...taken(readingsOf(test)).map((reading) => knownFrom(reading).day))
  for (const reading of taken(control.strength ?? [])) {
    const { day } = knownFrom(reading)
    if (isSameAge(strength.age, reading.age) && first < day) yield day
  }
}

/** A retest replaces what it names, and an exclusion changes a mean. */
function* daysOfMortar(mortar: Mortar): Generator<number> {
  for (const reading of taken(readingsOf(mortar))) {
    if (reading['retest-of'] !== undefined) yield knownFrom(reading).day
    for (const specimen of Object.values(reading.specimens ?? {}))
      if (!isQuantity(specimen)) yield* exclusionDays([specimen])
  }
}

interface Excluded {
  readonly 'excluded-on'?: Moment
}

function* exclusionDays(what: Iterable<Excluded>): Generator<number> {
  for (const { 'excluded-on': since } of what) if (since !== undefined) yield since.day
}

function reportedValues({ results }: Analysis): Excluded[] {
  return Object.values(results).flatMap((value) => (value === undefined ? [] : figuresOf(value)))
}

function isFinishedAnalysis({ results }: Analysis): boolean {
  return Object.keys(results).some((key) => isPropertyKey(key) && isFinishable(key))
}

/** A finished figure gives way to the readings of its own test on the day on which they become known. */
function* daysOfReadings(lot: LotEvidence): Generator<number> {
  for (const test of lot.tests) {
    const control = controlOf(test, lot)
    // Water is known from the casting on.
    yield Math.max(test.cast.day, control?.cast.day ?? test.cast.day)
    for (const mortar of control === undefined ? [test] : [test, control])
      for (const reading of taken(readingsOf(mortar))) yield knownFrom(reading).day
  }
}

function readingsOf(mortar: Mortar): MortarReading[] {
  return MORTAR_MEASUREMENTS.flatMap((measurement) => measurement.readingsOf(mortar) ?? [])
}

function taken(readings: readonly MortarReading[]): (MortarReading & { readonly tested: Moment })[] {
  return readings.filter(
    (reading): reading is MortarReading & { readonly tested: Moment } => reading.tested !== undefined,
  )
}
