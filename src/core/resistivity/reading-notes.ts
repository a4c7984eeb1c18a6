/** What is worth saying of a resistance reading that still counts: saturation, cooling, directions, meter, history. */
import type { Age } from '../measure/age.ts'
import { hoursBetween, isSurelyBefore } from '../measure/moment.ts'
import type { Quantity } from '../measure/units.ts'
import type { MortarCondition, ResistivityReading } from '../mortar/mortar.ts'
import type { ResultReason } from '../result/reason.ts'
import { resistancesOf } from './bulk-resistivity.ts'

type Condition = Pick<MortarCondition, 'resistivity' | 'before-test'>
type Asked = NonNullable<MortarCondition['resistivity']>

/** Binary dust of a time must not break a limit that is met exactly. */
const DUST_HOURS = 1e-9

/** What a reading says of itself. */
export function readingNotes(reading: ResistivityReading, condition: Condition): ResultReason[] {
  const { resistivity: asked } = condition
  return [
    ...(asked?.saturation === 'stated' && reading.saturation === undefined
      ? [{ code: 'saturation-not-stated', params: {} } as const]
      : []),
    ...cooledTooShort(reading, condition['before-test']?.for),
    ...directionsDiffer(reading, asked?.directions),
    ...beyondResistors(reading, asked?.meter?.['check-resistors']),
  ]
}

/**
 * Specimens that come back from the bath after a reading, and such as are read for the first time, have different
 * histories.
 * @param all readings of the mortar, in any order, this one among them
 * @returns empty where the condition does not say which it asks for
 * Note: a retest at one age is no reading at a later age.
 */
export function historyNotes(
  reading: ResistivityReading,
  all: readonly ResistivityReading[],
  { resistivity: asked }: Pick<MortarCondition, 'resistivity'>,
): ResultReason[] {
  const rule = asked?.handling?.['after-reading']
  const earlier = all
    .filter((other) => isEarlier(other, reading))
    .toSorted((a, b) => b.age.hours - a.age.hours)
  const last = earlier[0]?.age
  if (rule === undefined || last === undefined) return []
  const marks = Object.keys(reading.specimens ?? {})
  const isReadBefore = (mark: string) => earlier.some(({ specimens = {} }) => mark in specimens)
  if (rule === 'returned')
    return told(
      'not-read-before',
      marks.filter((mark) => !isReadBefore(mark)),
      last,
    )
  const again = marks.filter(isReadBefore)
  const first = earlier.find(({ specimens = {} }) => again.some((mark) => mark in specimens))
  return told('read-before', again, first?.age ?? last)
}

function told(code: 'read-before' | 'not-read-before', marks: readonly string[], age: Age): ResultReason[] {
  return marks.length === 0 ? [] : [{ code, params: { marks, age: age.text } }]
}

/** Read at a younger age; one that gives a mean alone names no specimens. */
function isEarlier(other: ResistivityReading, reading: ResistivityReading): boolean {
  if (other.specimens === undefined || other.tested === undefined || reading.tested === undefined)
    return false
  return other.age.hours < reading.age.hours && isSurelyBefore(other.tested, reading.tested)
}

/**
 * Control and test that were not handled alike, beyond what the condition allows.
 * @returns notes on the index; their temperatures have a limit of their own, which makes an index not valid
 * Note: what one of them does not say is not compared.
 */
export function handledApart(
  { test, control }: { readonly test: ResistivityReading; readonly control: ResistivityReading },
  condition: Condition,
): ResultReason[] {
  return [
    ...cooledApart(test, control, condition['before-test']?.['control-and-test-within']),
    ...outApart(test, control, condition.resistivity?.handling?.['control-and-test-within']),
  ]
}

function cooledApart(
  test: ResistivityReading,
  control: ResistivityReading,
  limit: Quantity | undefined,
): ResultReason[] {
  const [testHours, controlHours] = [cooledHours(test), cooledHours(control)]
  if (limit === undefined || testHours === null || controlHours === null) return []
  return Math.abs(testHours - controlHours) <= limit.value + DUST_HOURS
    ? []
    : [{ code: 'cooled-apart', params: { testHours, controlHours, writtenLimit: limit.written } }]
}

function outApart(
  { 'out-of-liquid': test }: ResistivityReading,
  { 'out-of-liquid': control }: ResistivityReading,
  limit: Quantity | undefined,
): ResultReason[] {
  if (limit === undefined || test === undefined || control === undefined) return []
  if (Math.abs(test.value - control.value) <= limit.value + DUST_HOURS) return []
  const params = { writtenTest: test.written, writtenControl: control.written, writtenLimit: limit.written }
  return [{ code: 'out-of-liquid-apart', params }]
}

/** From the bath to the reading; null where a clock time is missing. */
function cooledHours({ 'left-bath': left, tested }: ResistivityReading): number | null {
  return left === undefined || tested === undefined ? null : hoursBetween(left, tested)
}

/** A note only: what matters is the temperature that it was read at, which has its own limit. */
function cooledTooShort(reading: ResistivityReading, least: Quantity | undefined): ResultReason[] {
  const hours = cooledHours(reading)
  return least === undefined || hours === null || least.value <= hours + DUST_HOURS
    ? []
    : [{ code: 'cooled-too-short', params: { cooledHours: hours, writtenLimit: least.written } }]
}

/** A specimen stated as a resistivity does not say how often it was read. */
function directionsDiffer({ specimens }: ResistivityReading, asked: Asked['directions']): ResultReason[] {
  const read = Object.values(specimens ?? {})
    .map((specimen) => resistancesOf(specimen).length)
    .filter((count) => count !== 0 && count !== asked)
  return asked === undefined || read.length === 0
    ? []
    : [{ code: 'directions-differ', params: { read: [...new Set(read)], asked } }]
}

/** The first reading beyond them; between them the meter is known to read well. */
function beyondResistors(
  { specimens }: ResistivityReading,
  resistors: readonly Quantity[] | undefined,
): ResultReason[] {
  const ordered = (resistors ?? []).toSorted((a, b) => a.value - b.value)
  const [smallest, largest] = [ordered[0], ordered.at(-1)]
  if (smallest === undefined || largest === undefined) return []
  const beyond = Object.values(specimens ?? {})
    .flatMap(resistancesOf)
    .find(({ value, above }) => above !== true && (value < smallest.value || largest.value < value))
  if (beyond === undefined) return []
  const params = { writtenSmallest: smallest.written, writtenLargest: largest.written }
  return [{ code: 'beyond-check-resistors', params: { written: beyond.written, ...params } }]
}
