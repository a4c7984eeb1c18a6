/** Audit check: lots sampled while the unit stood still. */
import type { Moment } from '../measure/moment.ts'
import type { AuditedLot, Period } from './audited.ts'
import type { Checked } from './checked.ts'
import { type Finding, found } from './finding.ts'

/** An outage as the source's record tells of it. */
export interface Outage {
  readonly date: Moment
  /** The first day alone without it. */
  readonly to?: Moment
  readonly title: string
}

/**
 * A warning for each lot all of whose production, or all of a sample, lies within an outage.
 * @param lots of one source, in order of sampling
 * @param outages of the source
 */
export function sampledInOutage(lots: readonly AuditedLot[], outages: readonly Outage[]): Checked {
  const findings = lots.flatMap((lot): Finding[] => {
    for (const outage of outages) {
      const what = within(lot, outage)
      if (what === null) continue
      const { date: from, to = from, title } = outage
      const params = { lot: lot.id, what, title, from: from.text, to: to.text }
      return [found(lot.id, { code: 'sampled-in-outage', params }, from.text)]
    }
    return []
  })
  return { check: 'sampled-in-outage', looked: outages.length === 0 ? 0 : lots.length, findings }
}

/** What of a lot lies within an outage; null where nothing does. */
function within(
  { record: { produced, samples } }: AuditedLot,
  outage: Outage,
): 'produced' | 'sampled' | null {
  if (isWithin(produced, outage)) return 'produced'
  const own = samples.filter(({ kind }) => kind === 'grab' || kind === 'composite')
  const periods = own.flatMap(({ taken, on }) => taken ?? (on === undefined ? [] : [{ from: on, to: on }]))
  return periods.some((period) => isWithin(period, outage)) ? 'sampled' : null
}

function isWithin({ from, to }: Period, { date, to: end = date }: Outage): boolean {
  return date.day <= from.day && to.day <= end.day
}
