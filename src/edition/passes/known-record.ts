/**
 * Records as they were known on a date, for editions as of an earlier day and for what an issued document holds:
 * what happened later is not in them, and readings taken later are still planned.
 */
import { type Excludable, exclusionOn, knownFrom, type Reported } from '../../core/mortar/known-when.ts'
import { defined } from '../../core/measure/defined.ts'
import { isBy, lastDayOf, type Moment } from '../../core/measure/moment.ts'
import { isQuantity } from '../../core/mortar/mortar.ts'
import type { Records } from '../../records/records.ts'
import type { Control, Laboratory, Lot, Source } from '../../records/schema/loaded-records.ts'
import { writtenForm } from '../../records/schema/written.ts'
import { producersRecord } from '../shape/producers-results.ts'
import { sampledAt } from './computed-lot.ts'

/**
 * The records as they were known on a date.
 * @param asOf calendar date
 * @param known gives a lot as it was known, or as `make` makes it
 * @returns lots sampled by then, and all controls, sources and laboratories, each the same object where nothing
 * happened later
 */
export function knownRecords(
  records: Records,
  asOf: Moment,
  known: (lot: Lot, make: () => Lot) => Lot = (_lot, make) => make(),
): Records {
  const cut = <T>(all: ReadonlyMap<string, T>, knownOf: (record: T, asOf: Moment) => T) =>
    new Map([...all].map(([id, record]) => [id, knownOf(record, asOf)] as const))
  return {
    ...records,
    laboratories: cut(records.laboratories, (laboratory) =>
      knownLaboratory(laboratory, records.controls, asOf),
    ),
    sources: cut(records.sources, knownSource),
    controls: cut(records.controls, knownMortar<Control>),
    lots: cut(new Map([...records.lots].filter(([, lot]) => isBy(sampledAt(lot), asOf))), (lot) =>
      known(lot, () => knownLot(lot, asOf)),
    ),
  }
}

function knownLaboratory(laboratory: Laboratory, controls: Records['controls'], asOf: Moment): Laboratory {
  return changed(laboratory, {
    proficiency: each(laboratory.proficiency, (round) => knownRound(round, asOf)),
    equipment: each(laboratory.equipment, (device) => knownDevice(device, asOf)),
    'cement-bridges': each(laboratory['cement-bridges'], (bridge) => knownBridge(bridge, controls, asOf)),
  })
}

type Bridge = NonNullable<Laboratory['cement-bridges']>[number]

/** Two batches join two cements once something is known of both. */
function knownBridge(bridge: Bridge, controls: Records['controls'], asOf: Moment): Bridge | null {
  const isRead = (id: string) => {
    const { strength = [], resistivity = [] } = controls.get(id) ?? {}
    return [...strength, ...resistivity].some(
      ({ tested, ...reading }) => tested !== undefined && isBy(knownFrom({ ...reading, tested }), asOf),
    )
  }
  const pairs = each(bridge.pairs, (pair) => (isRead(pair.earlier) && isRead(pair.later) ? pair : null))
  return pairs === undefined ? null : changed(bridge, { pairs })
}

type Round = NonNullable<Laboratory['proficiency']>[number]

function knownRound(round: Round, asOf: Moment): Round | null {
  if (!isBy(round.date, asOf)) return null
  return round.closed === undefined || isBy(round.closed, asOf)
    ? round
    : changed(round, { closed: undefined, cause: undefined })
}

type Device = NonNullable<Laboratory['equipment']>[number]

/** A device first verified later was not on record; what its latest verification showed was known with it. */
function knownDevice(device: Device, asOf: Moment): Device | null {
  const verified = each(device.verified, (day) => (isBy(day, asOf) ? day : null))
  if (verified === undefined) return null
  const isLatest = verified.length === device.verified.length
  return isLatest
    ? changed(device, { verified })
    : changed(device, { verified, due: undefined, record: undefined, correction: undefined })
}

function knownSource(source: Source, asOf: Moment): Source {
  const approvals = each(source.approvals, (approval) => (isBy(approval.from, asOf) ? approval : null))
  const dated = <T extends { date: Moment }>(one: T) => (isBy(one.date, asOf) ? one : null)
  return changed(source, {
    approvals,
    events: each(source.events, dated),
    listing: each(source.listing, dated),
    shipments: each(source.shipments, dated),
    answers: each(source.answers, (answer) => knownAnswer(answer, asOf)),
    diverted: each(source.diverted, (entry) => knownDiverted(entry, asOf)),
    balance: each(source.balance, (line) => (hasEnded(line.month, asOf) ? line : null)),
    'numbers-not-used': each(source['numbers-not-used'], (one) =>
      one.on === undefined || isBy(one.on, asOf) ? one : null,
    ),
    'verification-plan': each(source['verification-plan'], (plan) =>
      changed(plan, { visits: each(plan.visits, (visit) => (isBy(visit.on, asOf) ? visit : null)) }),
    ),
    ...defined({ reports: source.reports && knownReports(source.reports, asOf) }),
  })
}

/** A month is balanced when it is over. */
function hasEnded(month: string, asOf: Moment): boolean {
  return isBy(lastDayOf(month), asOf)
}

type Answer = NonNullable<Source['answers']>[number]

/** An answer given by the date; what was decided later is still open. */
function knownAnswer(answer: Answer, asOf: Moment): Answer | null {
  if (!isBy(answer.date, asOf)) return null
  const { closed } = answer
  const told = each(answer.told, (one) => (isBy(one.on, asOf) ? one : null))
  if (closed === undefined || isBy(closed, asOf)) return changed(answer, { told })
  return changed(answer, { told, closed: undefined, disposition: undefined, 'disposed-by': undefined })
}

type Diverted = NonNullable<Source['diverted']>[number]

/** Material diverted by the date, with its results once they were known. */
function knownDiverted(entry: Diverted, asOf: Moment): Diverted | null {
  if (!isBy(entry.on, asOf)) return null
  const { tested } = entry
  return tested === undefined || isBy(tested, asOf)
    ? entry
    : changed(entry, { tested: undefined, results: undefined, laboratory: undefined })
}

function knownReports(reports: NonNullable<Source['reports']>, asOf: Moment): typeof reports {
  return changed(reports, { received: each(reports.received, (one) => (isBy(one.on, asOf) ? one : null)) })
}

function knownLot(lot: Lot, asOf: Moment): Lot {
  const dated = <T extends { date: Moment }>(one: T) => (isBy(one.date, asOf) ? one : null)
  return changed(lot, {
    samples: each(lot.samples, (sample) => knownSample(sample, asOf)) ?? [],
    analyses: each(lot.analyses, (analysis) => knownAnalysis(analysis, asOf)),
    tests: each(lot.tests, (test) => (isBy(test.cast, asOf) ? knownMortar(test, asOf) : null)),
    shipments: each(lot.shipments, dated),
    verification: each(lot.verification, (analysis) => knownAnalysis(analysis, asOf)),
    revisions: each(lot.revisions, dated),
    answers: each(lot.answers, (answer) => knownAnswer(answer, asOf)),
  })
}

type Sample = Lot['samples'][number]

function knownSample(sample: Sample, asOf: Moment): Sample | null {
  const { taken, on = taken?.to, received } = sample
  if (on !== undefined && !isBy(on, asOf)) return null
  return changed(sample, {
    received: received === undefined || isBy(received, asOf) ? received : undefined,
  })
}

type Values = Readonly<Record<string, object | undefined>>
interface Analysis extends Reported {
  readonly results: Values
  readonly 'control-results'?: Values
}

function knownAnalysis<T extends Analysis>(analysis: T, asOf: Moment): T | null {
  if (!isBy(knownFrom(analysis), asOf)) return null
  return changed<Analysis>(analysis, {
    results: knownMembers(analysis.results, asOf),
    'control-results': knownMembers(analysis['control-results'], asOf),
  }) as T
}

type Mortar = Pick<Control, 'strength' | 'resistivity'>

function knownMortar<T extends Mortar>(mortar: T, asOf: Moment): T {
  return changed<Mortar>(mortar, {
    strength: knownReadings(mortar.strength, asOf),
    resistivity: knownReadings(mortar.resistivity, asOf),
  }) as T
}

type Reading = NonNullable<Mortar['strength'] | Mortar['resistivity']>[number]

/** An age at which nothing is known yet is planned, once; a later test beside what is known was no plan. */
function knownReadings<T extends Reading>(readings: T[] | undefined, asOf: Moment): T[] | undefined {
  const isKnown = ({ tested, ...reading }: Reading) =>
    tested === undefined || isBy(knownFrom({ ...reading, tested }), asOf)
  return each(readings, (reading) => {
    if (isKnown(reading))
      return changed<Reading>(reading, { specimens: knownMembers(reading.specimens, asOf) }) as T
    const ofAge = readings?.filter(({ age }) => age.hours === reading.age.hours) ?? []
    return ofAge[0] === reading && !ofAge.some(isKnown) ? ({ age: reading.age } as T) : null
  })
}

/**
 * Specimens or results by name, without what was excluded only later. One of which nothing but its quantity is
 * on record is that quantity, however it was written.
 */
function knownMembers<T extends Values | undefined>(members: T, asOf: Moment): T {
  if (members === undefined) return members
  const known = Object.entries(members).map(([name, member]) => {
    const own = member && (Array.isArray(member) ? knownList(member, asOf) : knownMember(member, asOf))
    return { name, own, isAsWas: own === member }
  })
  if (known.every(({ isAsWas }) => isAsWas)) return members
  return changed<Values>(members, Object.fromEntries(known.map(({ name, own }) => [name, own]))) as T
}

/** Several figures of one property: none of them was unknown, each may have been excluded only later. */
function knownList(members: object[], asOf: Moment): object[] {
  return each(members, (member) => withoutLaterExclusion(member, asOf)) ?? []
}

function knownMember(member: object, asOf: Moment): object {
  return plainQuantity(withoutLaterExclusion(member, asOf))
}

function withoutLaterExclusion(member: Excludable, asOf: Moment): object {
  if (member['excluded-on'] === undefined || exclusionOn(member, asOf) !== undefined) return member
  const { excluded: _excluded, 'excluded-on': _since, ...rest } = member
  return rest
}

function plainQuantity(member: object): object {
  if (isQuantity(member)) return member
  const [only, ...others] = Object.values(member)
  return others.length === 0 && typeof only === 'object' && isQuantity(only) ? only : member
}

/**
 * Each entry as it was known, without those that were not.
 * @returns the list itself where all of it was known; undefined where none of it was
 */
function each<T>(list: T[] | undefined, known: (entry: T) => T | null): T[] | undefined {
  const left = list?.map(known).filter((entry) => entry !== null)
  if (left?.length === list?.length && left?.every((entry, place) => entry === list?.[place])) return list
  return left?.length === 0 ? undefined : left
}

/** The record with other members, without those that are undefined; itself where they are what it has. */
function changed<T extends object>(
  record: T,
  members: { readonly [Key in keyof T]?: T[Key] | undefined },
): T {
  const others = Object.entries(members).filter(([key, member]) => member !== record[key as keyof T])
  if (others.length === 0) return record
  return Object.fromEntries(
    Object.entries({ ...record, ...Object.fromEntries(others) }).filter(([, member]) => member !== undefined),
  ) as T
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
 * @returns plain JSON, quantities as written; without shipments, an agency's results, revisions, answers, earlier
 * ids and the files it was imported from, which go on after issue
 */
export function knownRecord(lot: Lot, controls: ReadonlyMap<string, Control>, asOf: Moment): KnownRecord {
  const {
    shipments: _shipments,
    verification: _verification,
    revisions: _revisions,
    formerly: _formerly,
    answers: _answers,
    imported: _imported,
    ...known
  } = knownLot(producersRecord(lot), asOf)
  const used = [...new Set((known.tests ?? []).flatMap((test) => test.control ?? []))].sort()
  const controlRecords = used.flatMap((id) => {
    const { imported: _, ...control } = controls.get(id) ?? {}
    return controls.has(id) ? [[id, knownMortar(control, asOf)] as const] : []
  })
  return {
    lot: writtenForm(known) as KnownRecord['lot'],
    controls: writtenForm(Object.fromEntries(controlRecords)) as KnownRecord['controls'],
  }
}
