/** A group of clauses: alternatives of which one is enough, or clauses that all must hold. */
import { type Moment, earliestOf } from '../measure/moment.ts'
import { combineGroup, isNeutral } from '../criteria/combining.ts'
import type { Clause, Group } from '../criteria/criterion.ts'
import type { Outcome } from '../criteria/outcome.ts'
import { lateRoutes } from '../criteria/late-routes.ts'
import type { ClauseOutcome } from '../criteria/verdict.ts'
import type { ClauseReason } from '../criteria/reason.ts'
import { defined } from '../measure/defined.ts'
import { judgeComparison } from './comparison.ts'
import { type ClauseJudgement, clauseOutcome, judgement, withReason } from './judged-clause.ts'
import type { Judging } from './judging.ts'
import { judgeRecord, type RecordClause } from './record.ts'
import { outOfScope } from './scope.ts'

/** Judges any clause, with the members of a group below it. */
export function judgeClause(clause: Clause, judging: Judging): ClauseOutcome {
  switch (clause.form) {
    case 'comparison':
      return judgeComparison(clause, judging)
    case 'group':
      return judgedWhole(clause, judging, judgeMembers)
    default:
      return judgedWhole<RecordClause>(clause, judging, judgeRecord)
  }
}

function judgedWhole<C extends Clause>(
  clause: C,
  judging: Judging,
  judgeIt: (clause: C, judging: Judging) => ClauseJudgement,
): ClauseOutcome {
  return clauseOutcome(clause, outOfScope(clause, judging) ?? judgeIt(clause, judging))
}

function judgeMembers(group: Group, judging: Judging): ClauseJudgement {
  const clauses = group.members.map((member) => judgeClause(member, judging))
  const combined = clauses.filter((clause) => !clause.information)
  const outcome = combineGroup(
    group.combine,
    combined.map((clause) => clause.outcome),
  )
  const due = outcome === 'pending' ? earliestDue(combined) : undefined
  const judged = judgement(outcome, groupReason(outcome, combined))
  return { ...withLateRoutes(judged, group, clauses), clauses, ...defined({ due }) }
}

/** Outcomes under which a reader would take the clause for closed. */
const CLOSED: readonly Outcome[] = ['does-not-meet', 'not-valid', 'inconclusive', 'insufficient-history']

function withLateRoutes(
  judged: ClauseJudgement,
  group: Group,
  clauses: readonly ClauseOutcome[],
): ClauseJudgement {
  if (!CLOSED.includes(judged.outcome)) return judged
  const routes = lateRoutes({ ...clauseOutcome(group, judged), clauses })
  return routes.length === 0 ? judged : withReason(judged, { code: 'late-routes', params: { routes } })
}

function earliestDue(members: readonly ClauseOutcome[]): Moment | undefined {
  return earliestOf(members.flatMap(({ outcome, due }) => (outcome === 'pending' ? (due ?? []) : [])))
}

/** Names the members that gave the outcome, so that an either-age rule says which age was used. */
function groupReason(outcome: Outcome, members: readonly ClauseOutcome[]): ClauseReason {
  if (isNeutral(outcome)) return { code: 'no-member-applies', params: {} }
  // Of joint demands that are met there is none: each that is not neutral is met.
  const others =
    outcome === 'meets'
      ? members.filter((member) => member.outcome !== outcome && !isNeutral(member.outcome))
      : []
  return {
    code: 'by-members',
    params: {
      outcome,
      members: members.filter((member) => member.outcome === outcome).map(({ id }) => id),
      others: others.map((member) => ({ clause: member.id, outcome: member.outcome })),
    },
  }
}
