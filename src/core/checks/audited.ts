/** What checks ask of a lot and of its source; an edition's own entries serve. */
import type { Verdict } from '../criteria/verdict.ts'
import type { Moment } from '../measure/moment.ts'
import type { Quantity } from '../measure/units.ts'
import type { PlannedTest, Result } from '../result/result.ts'
import type { LotOverTime } from './on-shipping.ts'
import type { ShippedThen } from './shipping-findings.ts'

export interface AuditedShipment {
  readonly bill: string
  readonly date: Moment
  readonly massT: number
}

/** A sample as its record has it. */
export interface AuditedSample {
  readonly id: string
  readonly kind: 'grab' | 'composite' | 'split' | 'independent'
  readonly taken?: Period
  readonly on?: Moment
}

export interface Period {
  readonly from: Moment
  readonly to: Moment
}

export interface AuditedLot {
  /** SOURCE/LOT */
  readonly id: string
  /** As printed. */
  readonly number: string
  readonly sampled: Moment
  readonly state: string
  readonly withdrawn?: Moment
  readonly results: readonly Result[]
  readonly planned: readonly PlannedTest[]
  /** When its results were known, and since when it has not met. */
  readonly overTime: LotOverTime
  /** The governing one first. */
  readonly verdicts: readonly Verdict[]
  /** In order of date. */
  readonly shipments: readonly AuditedShipment[]
  /** What may have drawn from it or from another lot, in order of date. */
  readonly sharedShipments: readonly AuditedShipment[]
  /** In order of number. */
  readonly revisions: readonly { readonly number: number; readonly date: Moment }[]
  readonly record: {
    readonly produced: Period
    readonly quantity: Quantity
    readonly samples: readonly AuditedSample[]
  }
}

/**
 * Shipments of one kind as a finding holds them; null for none.
 * @param shipments in order of date
 */
export function shippedThen(shipments: readonly AuditedShipment[]): ShippedThen | null {
  const [first, last] = [shipments[0], shipments.at(-1)]
  if (first === undefined || last === undefined) return null
  const placed = ({ bill, date }: AuditedShipment) => ({ bill, date: date.text })
  return {
    count: shipments.length,
    tonnes: shipments.reduce((total, { massT }) => total + massT, 0),
    first: placed(first),
    last: placed(last),
  }
}
