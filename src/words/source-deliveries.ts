/** What came late or is missing, and what was shipped, in statements at the head of a source's page. */
import type { Moment } from '../core/measure/moment.ts'
import { shortDate } from './dates.ts'
import { number, plural } from './numbers.ts'
import { counted, plain, type Said, strong } from './said.ts'
import { mass } from './source-strip.ts'
import type { UnitSystem } from './unit-systems.ts'
import { signed } from './units.ts'

export interface LateCounts {
  /** Reports received after their day. */
  readonly late: number
  /** Results that are overdue on the as-of date, whenever their lots were sampled. */
  readonly overdue: number
  /** Results that are still to come and not late: a certificate that waits for them is no late one. */
  readonly awaited: number
  /** Lot numbers that nobody bears; null where they cannot be counted. */
  readonly gaps: number | null
  /** null where no monthly report is planned in the record. */
  readonly monthsWithout: number | null
}

/** "reports late 1, months without report 0, number gaps 1 in the last 12 months; results overdue today 0, 4 awaited in time". */
export function lateWords({ late, overdue, awaited, gaps, monthsWithout }: LateCounts): Said[] {
  return [
    ...(monthsWithout === null ? [plain('reports not planned')] : [plain('reports late '), counted(late)]),
    plain(', months without report '),
    monthsWithout === null ? plain('not recorded') : counted(monthsWithout),
    plain(', number gaps '),
    gaps === null ? plain('not counted') : counted(gaps),
    plain(' in the last 12 months; results overdue today '),
    counted(overdue),
    plain(awaited === 0 ? '' : `, ${number(awaited, 0)} more awaited and not late`),
  ]
}

/** Bills that something is said of: a bill of several possible lots is certain only where it holds of each of them. */
export interface BillCount {
  readonly certain: number
  /** The certain ones and those of which it holds perhaps. */
  readonly possible: number
}

export interface ShippedCounts {
  /** Shipped of the lots that `certifiedT` counts. */
  readonly shippedT: number
  /** Of lots with a certificate in force, and of those among them that do not meet. */
  readonly certifiedT: number
  readonly failedT: number
  /** Shipped of lots whose certificate is withdrawn, or that have none. */
  readonly otherT: number
  readonly beforeCompletion: BillCount
  readonly fromFailing: BillCount
  /** From lots that no certificate was ever issued for. */
  readonly neverIssued: BillCount
  /** Bills that may have come from any of several lots; their mass counts where one of the lots does. */
  readonly severalLots: number
}

/**
 * "2212 t of 29 800 t in lots with a certificate in force (4050 t of them do not meet), lots sampled in the last 12
 * months; 67, perhaps 68 bills left before the last result of their lot; 10 bills from lots that do not meet".
 */
export function shippedWords(counts: ShippedCounts, units: UnitSystem): Said[] {
  const { beforeCompletion, fromFailing, neverIssued } = counts
  return [
    strong(mass(counts.shippedT, units)),
    plain(
      ` of ${certifiedWords(counts, units)}, lots sampled in the last 12 months; ${otherWords(counts, units)}`,
    ),
    strong(billWords(beforeCompletion)),
    plain(' left before the last result of their lot; '),
    counted(fromFailing.possible, billWords(fromFailing)),
    plain(` ${FROM_FAILING}`),
    ...(neverIssued.possible === 0
      ? []
      : [
          plain('; '),
          counted(neverIssued.possible, billWords(neverIssued)),
          plain(' from lots without a certificate'),
        ]),
  ]
}

const FROM_FAILING = 'from lots that do not meet or are withdrawn'

/** A certificate states a verdict, whatever it is. */
function certifiedWords({ certifiedT, failedT }: ShippedCounts, units: UnitSystem): string {
  const failed = failedT === 0 ? '' : ` (${mass(failedT, units)} of them do not meet)`
  return `${mass(certifiedT, units)} in lots with a certificate in force${failed}`
}

/** "123 t more from lots withdrawn or without a certificate; ", which no share is taken of; nothing where there is none. */
function otherWords({ otherT }: ShippedCounts, units: UnitSystem): string {
  return otherT === 0 ? '' : `${mass(otherT, units)} more from ${OTHER_LOTS}; `
}

/** Lots that no certificate is in force for. */
export const OTHER_LOTS = 'lots withdrawn or without a certificate'

/** "67 bills"; "67, perhaps 68 bills" where some may have come from another lot. */
function billWords({ certain, possible }: BillCount): string {
  const bills = plural(possible, 'bill', 'bills')
  return certain === possible ? bills : `${number(certain, 0)}, perhaps ${bills}`
}

/** What stands in smaller letters beside it: the whole record, bills of several lots, the material balance. */
export function shippedRest(
  all: ShippedCounts,
  year: ShippedCounts,
  balance: BalanceSum | null,
  units: UnitSystem,
): Said[] {
  const other = otherWords(all, units)
  const whole = `Whole record: ${mass(all.shippedT, units)} of ${certifiedWords(all, units)}${other === '' ? ', ' : `; ${other}`}${billWords(all.fromFailing)} ${FROM_FAILING}. `
  const several =
    year.severalLots === 0
      ? []
      : [plain(`${plural(year.severalLots, 'bill', 'bills')} cannot be resolved to one lot. `)]
  return [plain(whole), ...several, ...(balance === null ? [] : [plain(balanceWords(balance, units))])]
}

/** "The bills and masses of 2 lots on record and not shown are not counted. "; nothing where all are shown. */
export function unshownWords({
  lots,
  balance,
}: {
  readonly lots: number
  /** A material balance is kept. */
  readonly balance: boolean
}): Said[] {
  if (lots === 0) return []
  const rest = balance ? ', so no difference of the material balance is given' : ''
  return [
    plain(
      `The bills and masses of ${plural(lots, 'lot', 'lots')} on record and not shown are not counted${rest}. `,
    ),
  ]
}

/** The balance of the months of a period that have a difference. */
export interface BalanceSum {
  readonly months: number
  /** Produced and not accounted for; negative where more is. */
  readonly differenceT: number
  readonly producedT: number
}

/** "Material balance of 11 months: +120 t of 31 000 t produced not accounted for." */
export function balanceWords({ months, differenceT, producedT }: BalanceSum, units: UnitSystem): string {
  if (months === 0) return 'Material balance: no month has its stock at both ends.'
  return `Material balance of ${plural(months, 'month', 'months')}: difference ${signed(differenceT, 0, 't', units)} of ${mass(producedT, units)} produced.`
}

/** A number that was given and not used. */
export interface UnusedNumber {
  readonly number: string
  readonly on?: Moment
  readonly reason: string
}

/** "TG-2025-006, given up on 14 Jul 2025: form spoiled". */
export function unusedWords({ number: own, on, reason }: UnusedNumber): string {
  return `${own}${on === undefined ? '' : `, given up on ${shortDate(on)}`}: ${reason}`
}

/** "SA-2025-004 to SA-2025-006". */
export function gapWords({ first, last }: { readonly first: string; readonly last: string }): string {
  return first === last ? first : `${first} to ${last}`
}

/** "Gaps: SA-2025-004, SA-2025-010 to SA-2025-012, 3 more." */
export function gapsWords(
  gaps: readonly { readonly first: string; readonly last: string }[],
  shown: number,
): string {
  const more = gaps.length - shown
  const named = gaps.slice(0, shown).map(gapWords).join(', ')
  return `Gaps: ${named}${0 < more ? `, ${number(more, 0)} more` : ''}.`
}
