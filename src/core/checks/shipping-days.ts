/** Audit checks: the days on which a lot was shipped against those of its results, certificates and withdrawal. */
import type { ClauseOutcome } from '../criteria/verdict.ts'
import { daysBetween, isBy, type Moment, momentOfDay } from '../measure/moment.ts'
import { knownSince, type Result } from '../result/result.ts'
import { type AuditedLot, type AuditedShipment, shippedThen } from './audited.ts'
import type { CheckId } from './catalogue.ts'
import { type Checked, lookedOnce } from './checked.ts'
import { type Finding, type FindingReason, found } from './finding.ts'
import { onShipping } from './on-shipping.ts'

/** Six months: an age after which practice tests again (read in guide specifications of a public works agency). */
const OLD_DAYS = 183
/** A certificate that nothing was shipped under for so long: own choice. */
const UNSHIPPED_DAYS = 365

/**
 * Findings of one lot on when it was shipped.
 * @param lot with shipments of its own or shared with other lots, or without any: then nothing is looked at
 * Notes: 1. a shipment of the same day as a certificate, a first result or a withdrawal is not held against them, since
 * neither states its hour for certain; 2. failing is under the governing set, and one of the day on which that was
 * known left "on or after" it, as pages say.
 */
export function shippingDays(lot: AuditedLot): Checked[] {
  if (lot.shipments.length + lot.sharedShipments.length === 0) return []
  const reports: readonly [CheckId, Finding[]][] = [
    ['shipped-without-certificate', uncertified(lot)],
    ['shipped-before-results', beforeResults(lot)],
    ['shipped-after-withdrawal', afterWithdrawal(lot)],
    ['shipped-on-old-certificate', onOldCertificate(lot)],
    ...aroundFailure(lot),
  ]
  return reports.map(([check, findings]) => lookedOnce(check, findings))
}

/** @param reason made where there are such shipments */
function reported(
  lot: AuditedLot,
  shipments: readonly AuditedShipment[],
  reason: (shipped: NonNullable<ReturnType<typeof shippedThen>>) => FindingReason,
): Finding[] {
  const shipped = shippedThen(shipments)
  return shipped === null ? [] : [found(lot.id, reason(shipped))]
}

function uncertified(lot: AuditedLot): Finding[] {
  const first = lot.revisions[0]?.date
  const without = lot.shipments.filter(({ date }) => first === undefined || date.day < first.day)
  return reported(lot, without, (shipped) => ({
    code: 'shipped-without-certificate',
    params: { lot: lot.id, shipped, issued: first?.text ?? null },
  }))
}

function beforeResults(lot: AuditedLot): Finding[] {
  const days = lot.results.filter(isOwn).map((result) => knownSince(result).day)
  const known = days.length === 0 ? null : momentOfDay(Math.min(...days))
  const early = lot.shipments.filter(({ date }) => known === null || date.day < known.day)
  return reported(lot, early, (shipped) => ({
    code: 'shipped-before-results',
    params: { lot: lot.id, shipped, known: known?.text ?? null },
  }))
}

function isOwn({ role }: Result): boolean {
  return role === 'producer'
}

function afterWithdrawal(lot: AuditedLot): Finding[] {
  const { withdrawn } = lot
  if (withdrawn === undefined) return []
  const after = lot.shipments.filter(({ date }) => withdrawn.day < date.day)
  return reported(lot, after, (shipped) => ({
    code: 'shipped-after-withdrawal',
    params: { lot: lot.id, shipped, withdrawn: withdrawn.text },
  }))
}

function onOldCertificate(lot: AuditedLot): Finding[] {
  const inForce = ({ date }: AuditedShipment) => lot.revisions.findLast((line) => isBy(line.date, date))?.date
  const old = lot.shipments.filter((shipment) => {
    const issued = inForce(shipment)
    return issued !== undefined && OLD_DAYS < daysBetween(issued, shipment.date)
  })
  const last = old.at(-1)
  const issued = last && inForce(last)
  if (last === undefined || issued === undefined) return []
  return reported(lot, old, (shipped) => ({
    code: 'shipped-on-old-certificate',
    params: { lot: lot.id, shipped, issued: issued.text, days: daysBetween(issued, last.date) },
  }))
}

function aroundFailure(lot: AuditedLot): [CheckId, Finding[]][] {
  return (
    [
      ['failed-after-shipping', 'afterwards'],
      ['shipped-after-failure', 'known'],
    ] as const
  ).map(([code, failure]) => {
    const left = (shipments: readonly AuditedShipment[]) =>
      shippedThen(shipments.filter(({ date }) => onShipping(lot.overTime, date).failure === failure))
    const [shipped, shared] = [left(lot.shipments), left(lot.sharedShipments)]
    const params = { ...failureOf(lot), shipped, shared }
    return [code, shipped === null && shared === null ? [] : [found(lot.id, { code, params })]]
  })
}

/** What the governing set says today that the lot does not meet, and since when that has been known. */
function failureOf({ id: lot, overTime, verdicts: [governing] }: AuditedLot) {
  const failing = overTime.failing.map(({ clause, known }) => ({ clause, known: known?.text ?? null }))
  const clauses = failing.map(({ clause }) => clause)
  return {
    lot,
    criterion: governing?.criterion ?? '',
    clauses,
    known: overTime.failed?.text ?? '',
    failing,
  }
}

/**
 * Of a source: what left while the governing verdict awaited results, for information.
 * @param source id
 * @param lots in order of sampling
 */
export function beforeCompletion(source: string, lots: readonly AuditedLot[]): Checked {
  const early = lots.map((lot) => {
    const complete = completeOn(lot)
    return lot.shipments.filter(({ date }) => complete === null || date.day < complete)
  })
  const left = early.flat()
  const of = lots.reduce((total, { shipments }) => total + shipments.length, 0)
  const tonnes = left.reduce((total, { massT }) => total + massT, 0)
  const fromLots = early.filter((one) => 0 < one.length).length
  const params = { source, count: left.length, of, tonnes, lots: fromLots }
  const findings = left.length === 0 ? [] : [found(source, { code: 'shipped-before-completion', params })]
  return { check: 'shipped-before-completion', looked: of, findings }
}

/**
 * The day of the last result that the governing verdict rests on.
 * @param lot with the governing verdict first
 * @returns days since 1970-01-01; null while a result is awaited, or where the verdict rests on none
 */
export function completeOn({
  verdicts: [governing],
  results,
  planned,
}: Pick<AuditedLot, 'verdicts' | 'results' | 'planned'>): number | null {
  if (governing === undefined || governing.outcome === 'pending' || 0 < planned.length) return null
  const keys = judgedKeys(governing.clauses)
  const days = results.filter(({ key }) => keys.has(key)).map((result) => knownSince(result).day)
  return days.length === 0 ? null : Math.max(...days)
}

/** Keys of the results that clauses judge, within groups too. */
export function judgedKeys(clauses: readonly ClauseOutcome[]): Set<string> {
  const keys = new Set<string>()
  const add = ({ result, clauses: members = [] }: ClauseOutcome) => {
    if (result !== null) keys.add(result)
    members.forEach(add)
  }
  clauses.forEach(add)
  return keys
}

/**
 * Information on a certificate that nothing was shipped under.
 * @param asOf calendar date
 * @param lots of one source; nothing is looked at where no shipment of the source is on record
 */
export function unshipped(lots: readonly AuditedLot[], asOf: Moment): Checked {
  const isRecorded = lots.some(({ shipments }) => 0 < shipments.length)
  const certified = isRecorded ? lots.filter((lot) => isCertified(lot)) : []
  const findings = certified.flatMap(({ id: lot, shipments, revisions }) => {
    const issued = revisions[0]?.date
    if (issued === undefined || 0 < shipments.length) return []
    const days = daysBetween(issued, asOf)
    if (days <= UNSHIPPED_DAYS) return []
    return [found(lot, { code: 'certificate-unshipped', params: { lot, issued: issued.text, days } })]
  })
  return { check: 'certificate-unshipped', looked: certified.length, findings }
}

function isCertified({ withdrawn, revisions, verdicts: [governing] }: AuditedLot): boolean {
  return 0 < revisions.length && withdrawn === undefined && governing?.outcome !== 'does-not-meet'
}
