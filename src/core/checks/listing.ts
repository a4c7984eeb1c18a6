/** Audit check: shipments on days on which the source was on no agency's list. */
import type { Moment } from '../measure/moment.ts'
import { type AuditedShipment, shippedThen } from './audited.ts'
import { CHECKS } from './catalogue.ts'
import type { Checked } from './checked.ts'
import { type Finding, findingOn } from './finding.ts'
import type { ShippingParams } from './shipping-findings.ts'

type Unlisted = ShippingParams['shipped-while-unlisted']

export interface ListedMaterial {
  readonly source: string
  /** The earliest first. */
  readonly listing: readonly {
    readonly date: Moment
    readonly by: string
    readonly action: string
    readonly to?: Moment
  }[]
  /** Approvals of the source as a whole: they stand in where no listing is on record. */
  readonly approvals: readonly { readonly from: Moment; readonly to?: Moment; readonly by: string }[]
  /** In order of date. */
  readonly shipments: readonly AuditedShipment[]
}

/** How the source stood on a day, and since when. */
export type UnlistedStanding = Pick<Unlisted, 'by' | 'state' | 'since'>

/**
 * A warning for each action of an agency after which the source shipped without being listed; information on what it
 * shipped before the first.
 * Notes: 1. one agency that lists it is enough; 2. nothing is looked at where neither a listing nor an approval of the
 * source is on record.
 */
export function shippedUnlisted(of: ListedMaterial): Checked {
  const { source, shipments } = of
  if (of.listing.length + of.approvals.length === 0)
    return { check: 'shipped-while-unlisted', looked: 0, findings: [] }
  const outside = shipments.flatMap((shipment) => {
    const standing = unlistedOn(of, shipment.date)
    return standing === null ? [] : [{ shipment, standing }]
  })
  const byReason = Map.groupBy(outside, ({ standing }) => `${standing.state}|${standing.since ?? 'first'}`)
  const findings = [...byReason.values()].flatMap((own) => findingOf(source, own))
  return { check: 'shipped-while-unlisted', looked: shipments.length, findings }
}

function findingOf(
  source: string,
  own: readonly { readonly shipment: AuditedShipment; readonly standing: UnlistedStanding }[],
): Finding[] {
  const shipped = shippedThen(own.map(({ shipment }) => shipment))
  const [first] = own
  if (first === undefined || shipped === null) return []
  const { state, since } = first.standing
  const params = { source, shipped, ...first.standing }
  // Nothing says that a source has to be listed before it sells; once listed, it may have to stay so.
  const severity = since === null ? 'information' : CHECKS['shipped-while-unlisted'].severity
  return [findingOn(severity, source, { code: 'shipped-while-unlisted', params }, state, since ?? 'first')]
}

/**
 * How a source stood with the agencies on a day.
 * @param of its listing and its approvals as a whole, the earliest first
 * @param date calendar date
 * @returns null where an agency lists it on the day, or where neither listing nor approval is on record
 */
export function listingOn(
  of: Pick<ListedMaterial, 'listing' | 'approvals'>,
  date: Moment,
): UnlistedStanding | null {
  return of.listing.length + of.approvals.length === 0 ? null : unlistedOn(of, date)
}

function unlistedOn(
  { listing, approvals }: Pick<ListedMaterial, 'listing' | 'approvals'>,
  date: Moment,
): UnlistedStanding | null {
  if (listing.length === 0) return unapprovedOn(approvals, date)
  const byAgency = [...Map.groupBy(listing, ({ by }) => agencyKey(by)).values()]
  const standings = byAgency.map((actions) => standingOn(actions, date))
  return standings.includes(null) ? null : (standings.find((one) => one !== null) ?? null)
}

/** One agency, however its name is written. */
function agencyKey(by: string): string {
  return by.normalize('NFKC').trim().toLowerCase().replace(/\s+/g, ' ')
}

function standingOn(actions: ListedMaterial['listing'], date: Moment): UnlistedStanding | null {
  let [standing, until]: [UnlistedStanding | null, Moment | undefined] = [
    { by: actions[0]?.by ?? null, state: 'never', since: null },
    undefined,
  ]
  for (const { date: from, by, action, to } of actions) {
    if (date.day < from.day) break
    const since = from.text
    if (action === 'suspended' || action === 'removed') standing = { by, state: action, since }
    else if (action === 'listed' || action === 'renewed' || action === 'reinstated') standing = null
    until = to ?? until
  }
  const hasEnded = standing === null && until !== undefined && until.day < date.day
  return hasEnded ? { by: actions[0]?.by ?? null, state: 'ended', since: until?.text ?? null } : standing
}

function unapprovedOn(approvals: ListedMaterial['approvals'], date: Moment): UnlistedStanding | null {
  const holds = approvals.some(
    ({ from, to }) => from.day <= date.day && (to === undefined || date.day <= to.day),
  )
  const ended = approvals.findLast(({ to }) => to !== undefined && to.day < date.day)
  return holds
    ? null
    : { by: approvals[0]?.by ?? null, state: 'not-approved', since: ended?.to?.text ?? null }
}
