/** A group of clauses: alternatives of which one is enough, or clauses that all must hold. */
import type { Clause, Group } from '../criteria/criterion.ts'
import { clauseOutcome, type Finding } from './judged-clause.ts'
import { judgeComparison } from './comparison.ts'
import { judgeRecord, type RecordClause } from './record.ts'
import { outOfScope } from './scope.ts'
import type { Judging } from './judging.ts'
import { listWords } from '../../words/limit-words.ts'
import { combineGroup, isNeutral } from '../criteria/combining.ts'
import type { ClauseOutcome, Outcome } from '../criteria/outcome.ts'

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
  judgeIt: (clause: C, judging: Judging) => Finding,
): ClauseOutcome {
  return clauseOutcome(clause, judging.evidence, outOfScope(clause, judging) ?? judgeIt(clause, judging))
}

function judgeMembers(group: Group, judging: Judging): Finding {
  const clauses = group.members.map((member) => judgeClause(member, judging))
  const combined = clauses.filter((clause) => !clause.information)
  const outcome = combineGroup(
    group.combine,
    combined.map((clause) => clause.outcome),
  )
  const dues = combined
    .filter((clause) => clause.outcome === 'pending')
    .map((clause) => clause.due)
    .filter((due) => due !== undefined)
    .sort()
  const due = outcome === 'pending' ? dues[0] : undefined
  return {
    outcome,
    reason: groupReason(group, outcome, combined),
    clauses,
    ...(due === undefined ? {} : { due }),
  }
}

const PHRASES: Readonly<Record<Outcome, string>> = {
  meets: 'met by',
  'meets-by-approval': 'met by approval by',
  'does-not-meet': 'not met by',
  inconclusive: 'undecided by',
  pending: 'awaiting',
  'not-reported': 'not reported:',
  'insufficient-history': 'no history yet for',
  'not-valid': 'not valid:',
  'not-applicable': 'not applicable',
  'not-invoked': 'not asked for',
  reported: 'reported',
}

/** Names the members that gave the outcome, so that an either-age rule says which age was used. */
function groupReason(group: Group, outcome: Outcome, members: readonly ClauseOutcome[]): string {
  if (isNeutral(outcome)) return 'no member applies'
  const named = members.filter((member) => member.outcome === outcome).map((member) => member.title)
  const others = members.filter((member) => member.outcome !== outcome && !isNeutral(member.outcome))
  const rest =
    group.combine === 'any-of' && outcome === 'meets' && 0 < others.length
      ? `; one is enough (${others.map((member) => `${member.title}: ${OTHER_WORDS[member.outcome]}`).join('; ')})`
      : ''
  return `${PHRASES[outcome]} ${listWords(named, 'and')}${rest}`
}

const OTHER_WORDS: Readonly<Record<Outcome, string>> = {
  meets: 'met',
  'meets-by-approval': 'met by approval',
  'does-not-meet': 'not met',
  inconclusive: 'undecided',
  pending: 'awaited',
  'not-reported': 'not reported',
  'insufficient-history': 'no history yet',
  'not-valid': 'not valid',
  'not-applicable': 'not applicable',
  'not-invoked': 'not asked for',
  reported: 'reported',
}
