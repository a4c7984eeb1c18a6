/**
 * Issues many lots in order, as a producer would have done over the years: for the demo and for measuring.
 */
import type { Moment } from '../../core/measure/moment.ts'
import type { Records } from '../../records/load.ts'
import type { Lot } from '../../records/schema/loaded-records.ts'
import { type EarlierRevision, type IssuedRevision, issueRevision, type IssueRequest } from './issue.ts'
import { sourceStates } from '../passes/source-state.ts'

export interface PlannedIssue {
  readonly request: IssueRequest
  readonly revision: IssuedRevision
}

export interface Planning {
  readonly program: string
  /** Random text for the private part of a request's document, another for each. */
  readonly saltOf: (request: IssueRequest) => string
}

/**
 * Carries out a plan, computing each source once.
 * @param plan requests in any order; those of one lot in order of date
 * @param asOf date not before the last request's
 * @returns revisions that follow those on record, source by source in the order of sampling
 * Note: issues and withdrawals of the plan count for lots issued on the same day or after them, as in a later
 * build.
 */
export function* carryOutPlan(
  records: Records,
  plan: readonly IssueRequest[],
  asOf: Moment,
  { program, saltOf }: Planning,
): Generator<PlannedIssue> {
  const byLot = Map.groupBy(plan, ({ lot }) => lot)
  const planned = {
    ...records,
    lots: new Map([...records.lots].map(([id, lot]) => [id, withPlannedRevisions(lot, byLot.get(id) ?? [])])),
  }
  for (const state of sourceStates(planned, asOf).values()) {
    for (const [place, { id }] of state.lots.entries()) {
      let earlier: EarlierRevision | undefined = records.lots.get(id)?.revisions?.at(-1)
      for (const request of byLot.get(id) ?? []) {
        const issuing = { records: planned, state, place, program, salt: saltOf(request) }
        const revision = issueRevision(issuing, request, earlier)
        earlier = { number: revision.document.revision, date: request.date, digest: revision.digest }
        yield { request, revision }
      }
    }
  }
}

/** The digests of what is only planned are not known and not asked for. */
const NO_DIGEST = `sha256-${'0'.repeat(64)}`

function withPlannedRevisions(lot: Lot, requests: readonly IssueRequest[]): Lot {
  if (requests.length === 0) return lot
  const onRecord = lot.revisions ?? []
  const planned = requests.map((request, place) => ({
    number: onRecord.length + place,
    date: request.date,
    by: request.by,
    function: request.function,
    reason: request.reason,
    digest: NO_DIGEST,
    ...(request.withdrawn ? { withdrawn: 'yes' as const } : {}),
  }))
  return { ...lot, revisions: [...onRecord, ...planned] }
}
