/** What the checks found that hold the days of shipping against other days, in words. */
import type { ShippedThen, ShippingParams } from '../core/checks/shipping-findings.ts'
import { date } from './dates.ts'
import type { FindingNames } from './finding-names.ts'
import { testWords } from './named-tests.ts'
import { countWords, figureWords, numberWords } from './numbers.ts'
import type { WordsOf } from './reason-words.ts'
import type { UnitSystem } from './unit-systems.ts'

export const SHIPPING_SENTENCES: WordsOf<ShippingParams, [FindingNames]> = {
  'shipped-without-certificate': ({ lot, shipped, issued }, names) =>
    `${shipments(shipped, names)} of ${names.lot(lot)} left ${issued === null ? 'without a certificate' : 'before it had a certificate'}`,
  'shipped-before-results': ({ lot, shipped }, names) =>
    `${shipments(shipped, names)} of ${names.lot(lot)} left before any of its results was known`,
  'shipped-before-completion': ({ source, count, of }, names) =>
    `${count} of ${countWords(of, 'shipment')} of ${names.source(source)} left before the last result that the lot is judged on was known`,
  'shipped-on-missed-age': ({ lot, shipped, value, decimals, unit, ...test }, names) =>
    `${shipments(shipped, names)} of ${names.lot(lot)} left when its ${testWords(test, names)}, ${figureWords({ value, decimals, unit }, names.units)}, had missed the limit and none at a later age was known`,
  'failed-after-shipping': (failed, names) =>
    `${names.lot(failed.lot)} does not meet ${names.criterion(failed.criterion)}, and ${drawnFrom(failed, 'it', names)} had left before that was known`,
  'shipped-after-failure': (failed, names) =>
    `${drawnFrom(failed, names.lot(failed.lot), names)} left on or after the day when the lot was known not to meet ${names.criterion(failed.criterion)}`,
  'shipped-after-withdrawal': ({ lot, shipped, withdrawn }, names) =>
    `${shipments(shipped, names)} of ${names.lot(lot)} left after its certificate was withdrawn on ${date(withdrawn)}`,
  'shipped-on-old-certificate': ({ lot, shipped, days }, names) =>
    `${shipments(shipped, names)} of ${names.lot(lot)} left on a certificate more than six months old, the last when it was ${days} days old`,
  'shipped-while-unlisted': ({ source, shipped, ...standing }, names) =>
    `${shipments(shipped, names)} of ${names.source(source)} left ${unlistedWords(standing)}`,
}

type Unlisted = Pick<ShippingParams['shipped-while-unlisted'], 'state' | 'by' | 'since'>

function unlistedWords({ state, by, since }: Unlisted): string {
  const [agency, day] = [by ?? 'the agency', since === null ? null : date(since)]
  switch (state) {
    case 'never':
      return `before ${agency} had listed it`
    case 'suspended':
      return `while it was suspended by ${agency}, since ${day}`
    case 'removed':
      return `after ${agency} had removed it from its list on ${day}`
    case 'ended':
      return `after its listing by ${agency} had ended on ${day}`
    case 'not-approved':
      return day === null ? 'while no approval was on record' : `after its approval had ended on ${day}`
  }
}

export const SHIPPING_EVIDENCE: WordsOf<ShippingParams, [FindingNames], string[]> = {
  'shipped-without-certificate': ({ shipped, issued }) => [
    issued === null ? bills(shipped) : `${bills(shipped)}; first certificate ${date(issued)}`,
  ],
  'shipped-before-results': ({ shipped, known }) => [
    known === null ? bills(shipped) : `${bills(shipped)}; first result known ${date(known)}`,
  ],
  'shipped-before-completion': ({ tonnes, lots }, names) => [
    `${numberWords(tonnes, 1, 't', names.units)} from ${countWords(lots, 'lot')}`,
    'that is usual where lots are released on early results; it matters where a later one fails',
  ],
  'shipped-on-missed-age': ({ shipped, known }) => [
    `known since ${date(known)}; ${bills(shipped)}`,
    'either age may meet the limit; until the later one is known, such a shipment is conditional',
  ],
  'failed-after-shipping': (failed, names) => [...failedLines(failed, names), 'who has been told?'],
  'shipped-after-failure': failedLines,
  'shipped-after-withdrawal': ({ shipped }) => [bills(shipped)],
  'shipped-on-old-certificate': ({ shipped, issued }) => [
    `${bills(shipped)}; certificate of ${date(issued)}`,
    'after six months practice asks whether the material should be tested again',
  ],
  'shipped-while-unlisted': ({ shipped }) => [bills(shipped)],
}

function failedLines(
  { shipped, shared, criterion, failing }: ShippingParams['failed-after-shipping'],
  names: FindingNames,
): string[] {
  const byDay = [...Map.groupBy(failing, ({ known }) => known)].map(([known, own]) => {
    const titles = own.map(({ clause }) => names.clause(criterion, clause)).join('; ')
    return `not met${known === null ? '' : `, known since ${date(known)}`}: ${titles}`
  })
  return [
    ...byDay,
    ...(shipped === null ? [] : [bills(shipped)]),
    ...(shared === null ? [] : [`drawn from it or from another lot: ${bills(shared)}`]),
  ]
}

/** "2 shipments (50.0 t) of it and 1 shipment (25.0 t) that may have drawn from it". */
function drawnFrom(
  { shipped, shared }: Pick<ShippingParams['failed-after-shipping'], 'shipped' | 'shared'>,
  lot: string,
  names: FindingNames,
): string {
  const own = shipped === null ? [] : [`${shipments(shipped, names)} of ${lot}`]
  const from = shipped === null ? lot : 'it'
  const possible = shared === null ? [] : [`${shipments(shared, names)} that may have drawn from ${from}`]
  return [...own, ...possible].join(' and ')
}

function shipments({ count, tonnes }: ShippedThen, { units }: { readonly units: UnitSystem }): string {
  return `${countWords(count, 'shipment')} (${numberWords(tonnes, 1, 't', units)})`
}

function bills({ count, first, last }: ShippedThen): string {
  const [one, other] = [first, last].map(({ bill, date: day }) => `${bill} of ${date(day)}`)
  return count === 1 ? `bill ${one}` : `bills ${one} to ${other}`
}
