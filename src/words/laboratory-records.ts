/** What the record of a laboratory holds beside its results: rounds, devices, closed days, bridges between cements. */
import type { Moment } from '../core/measure/moment.ts'
import { momentOfDay } from '../core/measure/moment.ts'
import { property, type PropertyKey } from '../core/measure/properties.ts'
import { printedUnits } from './as-written.ts'
import { period, shortDate } from './dates.ts'
import { plainNumber, plural } from './numbers.ts'

/** Where a record holds nothing. */
export const NONE_RECORDED = 'none recorded'

/** In the place of a cement lot. */
export const CEMENT_NOT_RECORDED = 'not recorded'

/** "all of ASTM C311; Loss on ignition, Moisture content": what an accreditation covers. */
export function scopeOfAccreditation({
  standards = [],
  scope = [],
}: {
  readonly standards?: readonly string[]
  readonly scope?: readonly PropertyKey[]
}): string {
  return [
    standards.map((standard) => `all of ${standard}`).join(', '),
    scope.map((key) => property(key).title).join(', '),
  ]
    .filter((part) => part !== '')
    .join('; ')
}

export interface Device {
  readonly mark: string
  readonly kind: string
  /** Longest time between verifications, in hours. */
  readonly every?: { readonly value: number }
  readonly verified: readonly Moment[]
  /** Last day of the latest verification, where one is stated. */
  readonly due?: Moment
  readonly used?: { readonly from?: Moment; readonly to?: Moment }
  readonly record?: string
  readonly correction?: string
}

/** "ML-P1, compression machine: verified 19 May 2025, next due 19 May 2026"; "was due" once that day is past. */
export function deviceWords(device: Device, asOf: Moment): string {
  const { mark, kind, verified, record, correction } = device
  const last = verified.reduce<Moment | undefined>(
    (a, b) => (a === undefined || a.day < b.day ? b : a),
    undefined,
  )
  if (last === undefined) return `${mark}, ${kind}: no verification recorded`
  const evidence = [record, correction === undefined ? undefined : `correction ${printedUnits(correction)}`]
    .filter((part) => part !== undefined)
    .join(', ')
  const done = `${mark}, ${kind}: verified ${shortDate(last)}${evidence === '' ? '' : ` (${evidence})`}`
  return `${done}, ${dueWords(device, last, asOf)}`
}

/** What was taken out of use is no longer due. */
function dueWords({ every, due: stated, used }: Device, last: Moment, asOf: Moment): string {
  if (used?.to !== undefined && used.to.day < asOf.day) return `in use until ${shortDate(used.to)}`
  const due =
    stated ?? (every === undefined ? undefined : momentOfDay(last.day + Math.floor(every.value / 24)))
  if (due === undefined) return 'no interval recorded'
  return `${due.day < asOf.day ? 'next was due' : 'next due'} ${shortDate(due)}`
}

export interface Round {
  readonly round: string
  readonly date: Moment
  readonly property: PropertyKey
  readonly z: number
  readonly cause?: string
  readonly closed?: Moment
}

/** "Board round 32, 13 Jun 2025, Residue on 45 µm, wet: z −3.2 (sieve worn; closed 4 Jul 2025)". */
export function roundWords({ round, date: on, property: key, z, closed, cause }: Round): string {
  const end = [cause, closed && `closed ${shortDate(closed)}`].filter((part) => part !== undefined)
  return `${round}, ${shortDate(on)}, ${property(key).title}: z ${plainNumber(z, 1)}${end.length === 0 ? '' : ` (${end.join('; ')})`}`
}

/** "24 to 26 December 2025". */
export function closedWords({ from, to }: { readonly from: Moment; readonly to: Moment }): string {
  return period(from, to)
}

/** "MC-2 to MC-3: 4 pairs of control batches". */
export function bridgeWords(bridge: {
  readonly from: string
  readonly to: string
  readonly pairs: readonly unknown[]
}): string {
  return `${bridge.from} to ${bridge.to}: ${plural(bridge.pairs.length, 'pair', 'pairs')} of control batches`
}

/** "settled production after the outage: 2 March to 30 June 2025", with the properties that it sets limits for. */
export function phaseWords(phase: {
  readonly title: string
  readonly from: Moment
  readonly to: Moment
  readonly properties?: readonly PropertyKey[]
}): string {
  const of = phase.properties?.map((key) => property(key).title).join(', ')
  return `${phase.title}: ${period(phase.from, phase.to)}${of === undefined ? '' : `, for ${of}`}`
}
