/**
 * A lot's record and the records it refers to as they were known on a date: readings taken later are still
 * planned then.
 */
import type { Age } from '../../core/measure/age.ts'
import { type Excludable, exclusionOn, knownFrom, type Reported } from '../../core/mortar/known-when.ts'
import { isBy, type Moment } from '../../core/measure/moment.ts'
import type { Control, Lot } from '../../records/schema/loaded-records.ts'
import { writtenForm } from '../../records/schema/written.ts'

interface Reading extends Partial<Reported> {
  readonly age: Age
  readonly specimens?: Readonly<Record<string, object>>
}

function knownReadings<T extends Reading>(
  readings: readonly T[] | undefined,
  asOf: Moment,
): (T | { age: Age })[] | undefined {
  return readings?.map((reading) => {
    const { age, tested, specimens } = reading
    if (tested !== undefined && !isBy(knownFrom({ ...reading, tested }), asOf)) return { age }
    return specimens === undefined ? reading : { ...reading, specimens: knownMembers(specimens, asOf) }
  })
}

/** Specimens or results by name, without what was excluded only later. */
function knownMembers<T extends object | undefined>(
  members: Readonly<Record<string, T>>,
  asOf: Moment,
): Record<string, T> {
  return Object.fromEntries(
    Object.entries(members).map(([name, member]) => [name, withoutLaterExclusion(member, asOf)]),
  )
}

function withoutLaterExclusion<T extends object | undefined>(member: T, asOf: Moment): T {
  if (member === undefined || !('excluded-on' in member)) return member
  if (exclusionOn(member as Excludable, asOf) !== undefined) return member
  const { excluded: _excluded, 'excluded-on': _since, ...rest } = member as Excludable
  return rest as T
}

function withKnownReadings<T extends { strength?: Reading[]; resistivity?: Reading[] }>(
  mortar: T,
  asOf: Moment,
): unknown {
  return {
    ...mortar,
    ...(mortar.strength === undefined ? {} : { strength: knownReadings(mortar.strength, asOf) }),
    ...(mortar.resistivity === undefined ? {} : { resistivity: knownReadings(mortar.resistivity, asOf) }),
  }
}

/** A lot's record and those of its control batches, by id, as plain JSON in written form. */
export interface KnownRecord {
  readonly lot: { readonly [member: string]: unknown; readonly tests?: unknown }
  readonly controls: Readonly<Record<string, unknown>>
}

/**
 * The snapshot that an issued document keeps and a later build compares with.
 * @param lot the record, quantities loaded
 * @param controls the control batches it refers to, by id
 * @param asOf calendar date
 * @returns plain JSON, quantities as written; without shipments, verification, revisions and earlier ids,
 * which go on after issue
 */
export function knownRecord(lot: Lot, controls: ReadonlyMap<string, Control>, asOf: Moment): KnownRecord {
  const {
    shipments: _shipments,
    verification: _verification,
    revisions: _revisions,
    formerly: _formerly,
    ...rest
  } = lot
  const known = {
    ...rest,
    ...(lot.analyses === undefined
      ? {}
      : {
          analyses: lot.analyses
            .filter((analysis) => isBy(knownFrom(analysis), asOf))
            .map((analysis) => ({ ...analysis, results: knownMembers(analysis.results, asOf) })),
        }),
    ...(lot.tests === undefined
      ? {}
      : {
          tests: lot.tests
            .filter((test) => isBy(test.cast, asOf))
            .map((test) => withKnownReadings(test, asOf)),
        }),
  }
  const used = [
    ...new Set((lot.tests ?? []).filter((test) => isBy(test.cast, asOf)).map((test) => test.control)),
  ].sort()
  const controlRecords = used.flatMap((id) => {
    const control = controls.get(id)
    return control === undefined ? [] : [[id, withKnownReadings(control, asOf)] as const]
  })
  return {
    lot: writtenForm(known) as KnownRecord['lot'],
    controls: writtenForm(Object.fromEntries(controlRecords)) as KnownRecord['controls'],
  }
}
