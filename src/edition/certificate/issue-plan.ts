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

/**
 * Carries out a plan, computing each source once.
 * @param plan requests in any order; those of one lot in order of date
 * @param asOf date not before the last request's
 * @param saltOf random text for the private part of a request's document, another for each
 * @returns issued revisions, source by source
 * Note: withdrawals of the plan count for lots issued after them, just as in a later build.
 */
export function* carryOutPlan(
  records: Records,
  plan: readonly IssueRequest[],
  asOf: Moment,
  { program, saltOf }: { program: string; saltOf: (request: IssueRequest) => string },
): Generator<PlannedIssue> {
  const byLot = new Map<string, IssueRequest[]>()
  for (const request of plan) byLot.set(request.lot, [...(byLot.get(request.lot) ?? []), request])
  const planned = {
    ...records,
    lots: new Map([...records.lots].map(([id, lot]) => [id, withPlannedRevisions(lot, byLot.get(id) ?? [])])),
  }
  for (const state of sourceStates(planned, asOf).values()) {
    for (const [place, lot] of state.lots.entries()) {
      let earlier: EarlierRevision | undefined
      for (const request of byLot.get(lot.id) ?? []) {
        const issuing = { records: planned, state, place, program, salt: saltOf(request) }
        const revision = issueRevision(issuing, request, earlier)
        earlier = { number: revision.document.revision, date: request.date, digest: revision.digest }
        yield { request, revision }
      }
    }
  }
}

function withPlannedRevisions(lot: Lot, requests: readonly IssueRequest[]): Lot {
  const revisions = requests.map((request, number) => ({
    number,
    date: request.date,
    by: request.by,
    function: request.function,
    reason: request.reason,
    digest: `sha256-${'0'.repeat(64)}`,
    ...(request.withdrawn ? { withdrawn: 'yes' as const } : {}),
  }))
  return { ...lot, revisions }
}
