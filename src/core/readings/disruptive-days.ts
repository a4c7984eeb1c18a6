/** Days from which on what was known of a lot before is known otherwise, rather than more is known. */
import { isSameAge } from '../measure/age.ts'
import type { Moment } from '../measure/moment.ts'
import { knownFrom } from '../mortar/known-when.ts'
import {
  type Analysis,
  isQuantity,
  type LotEvidence,
  type Mortar,
  type MortarCondition,
  type MortarReading,
} from '../mortar/mortar.ts'
import { MORTAR_MEASUREMENTS } from './mortar-measurements.ts'

/**
 * Days on which a result of the lot may have changed, by the as-of date: a retest of it or of its control, an
 * exclusion with a day, a control read after the test mortar, whose strength a condition may ask for.
 * @returns days since 1970-01-01, each once, in order; none for most lots
 * Note: on other days results are only added, so that those of an earlier day are those of today that were
 * known then.
 */
export function disruptiveDays(lot: LotEvidence): number[] {
  const days = [...daysOf(lot)].filter((day) => day <= lot.asOf.day)
  return [...new Set(days)].sort((a, b) => a - b)
}

function* daysOf(lot: LotEvidence): Generator<number> {
  for (const analysis of [...lot.analyses, ...lot.verification])
    yield* exclusionDays(reportedValues(analysis))
  for (const test of lot.tests) {
    yield* daysOfMortar(test)
    const control = lot.controls.get(test.control)
    if (control === undefined) continue
    yield* daysOfMortar(control)
    yield* lateControlDays(test, control, lot.conditions.get(test.condition))
  }
}

/**
 * A control read on a later day than the mortar beside it, or whose strength at this age the condition asks for
 * of indices that were known before.
 */
function* lateControlDays(
  test: Mortar,
  control: Mortar,
  condition: MortarCondition | undefined,
): Generator<number> {
  const { strength, broken } = condition?.control ?? {}
  // A flag is a note: it changes neither value nor validity.
  const asked = broken === 'flag' ? undefined : strength?.age
  const own = readingsOf(test).map((reading) => ({ age: reading.age, day: knownFrom(reading).day }))
  for (const reading of readingsOf(control)) {
    const { day } = knownFrom(reading)
    const decides = asked !== undefined && isSameAge(asked, reading.age)
    if (own.some((before) => before.day < day && (decides || isSameAge(before.age, reading.age)))) yield day
  }
}

interface Excluded {
  readonly 'excluded-on'?: Moment
}

function* exclusionDays(what: Iterable<Excluded>): Generator<number> {
  for (const { 'excluded-on': since } of what) if (since !== undefined) yield since.day
}

function reportedValues({ results }: Analysis): Excluded[] {
  return Object.values(results).flatMap((value) => (value === undefined || isQuantity(value) ? [] : [value]))
}

type Taken = MortarReading & { readonly tested: Moment }

function readingsOf(mortar: Mortar): Taken[] {
  return MORTAR_MEASUREMENTS.flatMap((measurement) => measurement.readingsOf(mortar) ?? []).filter(
    (reading): reading is Taken => reading.tested !== undefined,
  )
}

/**
 * The same for a control among the batches of its laboratory: also the days on which a reading became known
 * after its test.
 * @param asOf calendar date; later days are left out
 */
export function disruptiveDaysOfControl(control: Mortar, asOf: Moment): number[] {
  const late = readingsOf(control).flatMap((reading) => {
    const { day } = knownFrom(reading)
    return day === reading.tested.day ? [] : [day]
  })
  return [...daysOfMortar(control), ...late].filter((day) => day <= asOf.day)
}

/** A second reading of an age replaces the first one or stands for it. */
function* daysOfMortar(mortar: Mortar): Generator<number> {
  for (const reading of readingsOf(mortar)) {
    if (reading['retest-of'] !== undefined) yield knownFrom(reading).day
    for (const specimen of Object.values(reading.specimens ?? {}))
      if (!isQuantity(specimen)) yield* exclusionDays([specimen])
  }
}
