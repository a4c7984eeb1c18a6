/** What was known on the day that a shipment left, in words. */
import type { UnlistedStanding } from '../core/checks/listing.ts'
import type { OnShipping } from '../core/checks/on-shipping.ts'
import { type Moment, readMoment } from '../core/measure/moment.ts'
import { date } from './dates.ts'
import { plural } from './numbers.ts'
import { listWords, sentence } from './sentences.ts'

/** "before the 28 d result was known, without a certificate"; null where nothing is to be said. */
export function onShippingWords({ unknown, certificate, failure }: OnShipping): string | null {
  const ages = unknown.map(({ text }) => text)
  const parts = [
    ...(ages.length === 0
      ? []
      : [`before the ${listWords(ages, 'and')} ${ages.length === 1 ? 'result was' : 'results were'} known`]),
    ...(certificate === 'none' ? ['without a certificate'] : []),
    ...(certificate === 'withdrawn' ? ['after the certificate was withdrawn'] : []),
    ...(failure === 'known' ? ['on or after the day when the lot was known not to meet'] : []),
  ]
  return parts.length === 0 ? null : sentence(parts.join(', '))
}

/** "While the source was suspended by Varrow Vale Roads Authority, since 7 July 2025". */
export function unlistedWords({ by, state, since }: UnlistedStanding): string {
  const day = since === null ? null : date(readMoment(since))
  const agency = by === null ? '' : ` by ${by}`
  switch (state) {
    case 'never':
      return `Before the source was listed${agency}`
    case 'suspended':
      return `While the source was suspended by ${by ?? 'its agency'}, since ${day ?? 'a day that is not recorded'}`
    case 'removed':
      return `After the source was taken off the list${agency}${day === null ? '' : ` on ${day}`}`
    case 'ended':
      return `After the listing of the source${agency} ended${day === null ? '' : ` on ${day}`}`
    case 'not-approved':
      return day === null
        ? 'While no approval of the source was on record'
        : `After the approval of the source had ended on ${day}`
  }
}

/**
 * "This lot has not met since 3 December 2025: 2 shipments had left before, 1 left on that day or later."
 * Note: what is to be done about them is nobody's to say here.
 */
export function affectedWords(failed: Moment, before: number, after: number): string {
  const parts = [
    ...(before === 0 ? [] : [`${plural(before, 'shipment', 'shipments')} had left before`]),
    ...(after === 0 ? [] : [`${plural(after, 'shipment', 'shipments')} left on that day or later`]),
  ]
  return `This lot has not met its criterion since ${date(failed)}: ${parts.join(', ')}.`
}
