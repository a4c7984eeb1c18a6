/**
 * What an audit check reports: a question with its evidence, never an accusation, never a change of the exit
 * status.
 */
import type { AgencyFindingParams } from './agency-findings.ts'
import type { ReasonOf } from '../result/reason.ts'
import { CHECKS } from './catalogue.ts'
import type { CompletenessParams } from './completeness-findings.ts'
import type { HistoryParams } from './history-findings.ts'
import type { IdentityParams } from './identity-findings.ts'
import type { IntegrityParams } from './integrity-findings.ts'
import type { LaboratoryParams } from './laboratory-findings.ts'
import type { LotFindingParams } from './lot-findings.ts'
import type { ShippingParams } from './shipping-findings.ts'
import type { TestingParams } from './testing-findings.ts'

/** One entry for each check, with what its sentence and its evidence need. */
export type FindingParams = AgencyFindingParams &
  LotFindingParams &
  CompletenessParams &
  ShippingParams &
  TestingParams &
  LaboratoryParams &
  IdentityParams &
  HistoryParams &
  IntegrityParams

/** The check that reports, as the code, and what it found. */
export type FindingReason = ReasonOf<FindingParams>

/**
 * A finding of an audit check.
 * @param about id of a lot as SOURCE/LOT, or of a source
 * @param place what in it the finding is about, by marks and ids of the record, so that the finding's id is permanent
 */
export function findingOn(
  severity: Finding['severity'],
  about: string,
  reason: FindingReason,
  ...place: readonly string[]
): Finding {
  const id = [reason.code, about, ...place.map((part) => part.replaceAll(' ', '-'))].join('/')
  return { id, severity, about, reason }
}

/**
 * A finding of the severity that its check has by default.
 * @param about id of a lot as SOURCE/LOT, or of a source
 * @param reason,place as of `findingOn`
 */
export function found(about: string, reason: FindingReason, ...place: readonly string[]): Finding {
  return findingOn(CHECKS[reason.code].severity, about, reason, ...place)
}

/**
 * A finding that is a warning, as most are.
 * @param lot,reason,place as of `findingOn`
 */
export function warningOn(lot: string, reason: FindingReason, ...place: readonly string[]): Finding {
  return findingOn('warning', lot, reason, ...place)
}

export interface Finding {
  /** Permanent within its lot or source: check and what it is about. */
  readonly id: string
  readonly severity: 'blocks' | 'warning' | 'information'
  /** Its severity by default, where the site has lowered it: a question that is open stays so. */
  readonly loweredFrom?: 'warning'
  /** Lot, source or laboratory that it is about. */
  readonly about: string
  readonly reason: FindingReason
}
