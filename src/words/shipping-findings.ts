/** What the checks found that hold the days of shipping against other days, in words. */
import type { ShippedThen, ShippingParams } from '../core/checks/shipping-findings.ts'
import { date } from './dates.ts'
import { countWords, number } from './numbers.ts'
import type { WordsOf } from './reason-words.ts'
import { sentence } from './sentences.ts'

export const SHIPPING_SENTENCES: WordsOf<ShippingParams> = {
  'shipped-without-certificate': ({ lot, shipped, issued }) =>
    `${shipments(shipped)} of ${lot} left ${issued === null ? 'and it has no certificate' : 'before it had a certificate'}`,
  'shipped-before-results': ({ lot, shipped }) =>
    `${shipments(shipped)} of ${lot} left before any result of it was known`,
  'shipped-before-completion': ({ source, count, of }) =>
    `${count} of ${countWords(of, 'shipment')} of ${source} left before the last result that its lot is judged on was known`,
  'failed-after-shipping': ({ lot, shipped, criterion }) =>
    `${lot} does not meet ${criterion}, and ${inSentence(shipped)} of it had left before that was known`,
  'shipped-after-failure': ({ lot, shipped, criterion }) =>
    `${shipments(shipped)} of ${lot} left after it was known that the lot does not meet ${criterion}`,
  'shipped-after-withdrawal': ({ lot, shipped, withdrawn }) =>
    `${shipments(shipped)} of ${lot} left after its certificate was withdrawn on ${date(withdrawn)}`,
  'shipped-on-old-certificate': ({ lot, shipped, days }) =>
    `${shipments(shipped)} of ${lot} left on a certificate of more than six months, the last on one of ${days} days`,
  'shipped-while-unlisted': ({ source, shipped, state, by, since }) =>
    `${shipments(shipped)} of ${source} left while it was ${UNLISTED[state](since === null ? null : date(since))}${by === null ? '' : ` by ${by}`}`,
}

const UNLISTED: Readonly<
  Record<ShippingParams['shipped-while-unlisted']['state'], (since: string | null) => string>
> = {
  never: () => 'not yet listed',
  suspended: (since) => `suspended from ${since} on,`,
  removed: (since) => `removed from the list, since ${since},`,
  ended: (since) => `no longer listed, after ${since},`,
  'not-approved': (since) =>
    since === null ? 'under no approval on record' : `under no approval on record after ${since},`,
}

export const SHIPPING_EVIDENCE: WordsOf<ShippingParams, [], string[]> = {
  'shipped-without-certificate': ({ shipped, issued }) => [
    issued === null ? bills(shipped) : `${bills(shipped)}; first certificate ${date(issued)}`,
  ],
  'shipped-before-results': ({ shipped, known }) => [
    known === null ? bills(shipped) : `${bills(shipped)}; first result known ${date(known)}`,
  ],
  'shipped-before-completion': ({ tonnes, lots }) => [
    `${number(tonnes, 0)} t of ${countWords(lots, 'lot')}`,
    'that is usual where lots are released on early results; it matters where a later one fails',
  ],
  'failed-after-shipping': (failed) => [...failedLines(failed), 'who has been told?'],
  'shipped-after-failure': (failed) => failedLines(failed),
  'shipped-after-withdrawal': ({ shipped }) => [bills(shipped)],
  'shipped-on-old-certificate': ({ shipped, issued }) => [
    `${bills(shipped)}; certificate of ${date(issued)}`,
    'after six months practice asks whether the material should be tested again',
  ],
  'shipped-while-unlisted': ({ shipped }) => [bills(shipped)],
}

function failedLines({ shipped, clauses, known }: ShippingParams['failed-after-shipping']): string[] {
  const what = `clause${clauses.length === 1 ? '' : 's'} ${clauses.join(', ')}`
  return [`${what}, known since ${date(known)}`, bills(shipped)]
}

function shipments(shipped: ShippedThen): string {
  return sentence(inSentence(shipped))
}

function inSentence({ count, tonnes }: ShippedThen): string {
  return `${countWords(count, 'shipment')} (${number(tonnes, 1)} t)`
}

function bills({ count, first, last }: ShippedThen): string {
  const [one, other] = [first, last].map(({ bill, date: day }) => `${bill} of ${date(day)}`)
  return count === 1 ? `bill ${one}` : `bills ${one} to ${other}`
}
