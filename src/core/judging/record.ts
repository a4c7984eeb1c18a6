/** Clauses on the record rather than on a value: facts, documents, allowed classes, sampling. */
import type {
  Clause,
  ClassClause,
  DocumentClause,
  FactClause,
  Frequency,
  SamplingClause,
} from '../criteria/criterion.ts'
import { premisesForClass } from '../criteria/premise.ts'
import type { RecordParams, SamplingGap } from '../criteria/reason.ts'
import type { Evidence, KnownApproval, KnownDocument } from '../evidence/evidence.ts'
import { defined } from '../measure/defined.ts'
import { inForce, isBy } from '../measure/moment.ts'
import { type ClauseJudgement, judgement } from './judged-clause.ts'
import type { Judging } from './judging.ts'
import { allSurelyHold, statedFact } from './premises.ts'
import { claimedClass } from './scope.ts'

export type RecordClause = Extract<Clause, FactClause | DocumentClause | ClassClause | SamplingClause>

/** Judges a clause on the record: a fact, a document, an allowed class, or sampling. */
export function judgeRecord(clause: RecordClause, judging: Judging): ClauseJudgement {
  switch (clause.form) {
    case 'fact':
      return judgeFact(clause, judging)
    case 'document':
      return judgeDocument(clause, judging)
    case 'class':
      return judgeClass(clause, judging)
    case 'sampling':
      return judgeSampling(clause, judging)
  }
}

function judgeFact({ fact, is }: FactClause, { evidence }: Judging): ClauseJudgement {
  const stated = statedFact(fact, evidence)
  if (stated === undefined) return judgement('not-reported', { code: 'fact-not-stated', params: { fact } })
  return is.includes(stated)
    ? judgement('meets', { code: 'fact-stated', params: { fact, stated } })
    : judgement('does-not-meet', { code: 'fact-not-allowed', params: { fact, stated, is } })
}

/** The approval of a source is a document of its own kind: one that names no clause. */
export const SOURCE_APPROVAL = 'source-approval'

function judgeDocument({ document: kind, voidOn }: DocumentClause, { evidence }: Judging): ClauseJudgement {
  const known = documentsOf(kind, evidence)
  if (known.length === 0)
    return judgement('not-reported', { code: 'no-document', params: { document: kind } })
  const current = known.filter((one) => inForce(one, evidence.asOf))
  if (current.length === 0)
    return judgement('does-not-meet', {
      code: 'document-not-in-force',
      params: { document: kind, on: evidence.asOf.text },
    })
  const end = (evidence.events ?? []).findLast(
    (event) => voidOn.includes(event.kind) && isBy(event.date, evidence.asOf),
  )
  // One that was given or renewed on the day of the event or later took it into account.
  const standing = current.find(
    (one) => end === undefined || (one.from !== undefined && isBy(end.date, one.from)),
  )
  if (standing !== undefined)
    return judgement('meets', { code: 'document-on-record', params: { document: kind, ...named(standing) } })
  return judgement('does-not-meet', {
    code: 'document-void',
    params: { document: kind, since: end?.date.text ?? '', event: end?.title ?? '' },
  })
}

/** A document by its title, an approval by its scope and giver. */
function named(
  standing: KnownApproval | KnownDocument,
): Pick<RecordParams['document-on-record'], 'standing'> {
  return 'scope' in standing
    ? { standing: { scope: standing.scope, by: standing.by } }
    : { standing: { title: standing.title } }
}

function documentsOf(kind: string, evidence: Evidence): readonly (KnownApproval | KnownDocument)[] {
  return kind === SOURCE_APPROVAL
    ? (evidence.approvals ?? []).filter((approval) => approval.clause === undefined)
    : (evidence.documents ?? []).filter((one) => one.kind === kind)
}

function judgeClass(clause: ClassClause, { criterion, evidence, lotClass }: Judging): ClauseJudgement {
  const claimed = lotClass ?? claimedClass(criterion, evidence)
  const { allowed } = clause
  if (claimed === null) return judgement('not-reported', { code: 'class-not-claimed', params: { allowed } })
  if (allowed.includes(claimed))
    return judgement('meets', { code: 'class-allowed', params: { class: claimed } })
  const substitution = clause.acceptedAs.find((entry) => entry.class === claimed)
  if (substitution === undefined)
    return judgement('does-not-meet', { code: 'class-not-allowed', params: { class: claimed, allowed } })
  const { as } = substitution
  const answer = allSurelyHold(substitution.where, evidence, lotClass)
  if (answer.holds === 'open')
    return judgement('not-reported', {
      code: 'class-acceptance-not-determined',
      params: { class: claimed, as, because: answer.because },
    })
  const params = { class: claimed, as, where: premisesForClass(substitution.where, lotClass) }
  return answer.holds === 'no'
    ? judgement('does-not-meet', { code: 'class-not-accepted', params })
    : { ...judgement('meets', { code: 'class-accepted', params }), acceptedAs: as }
}

function judgeSampling(clause: SamplingClause, { evidence }: Judging): ClauseJudgement {
  const { coverage, recordDays = Number.POSITIVE_INFINITY } = evidence
  if (coverage === undefined) return judgement('not-reported', { code: 'sampling-not-known', params: {} })
  const { newSource: early } = clause
  const newSource = early !== undefined && recordDays < early.newFor
  const frequency = newSource ? early : clause.every
  const gaps = clause.properties
    .map((property): SamplingGap => {
      const { hours, tonnes, tests, since } = coverage(property, clause.sample, clause.duty)
      return defined({ property, hours, tonnes, tests, since })
    })
    .filter((gap) => exceeds(gap, frequency))
  const every = frequency.written
  return gaps.length === 0
    ? judgement('meets', { code: 'sampled-often-enough', params: { every, newSource } })
    : judgement('does-not-meet', { code: 'sampled-too-seldom', params: { gaps, every, newSource } })
}

/**
 * Time and mass are shared among the lot's tests; without one they have run on since the test before. Clock
 * dust is no delay.
 */
function exceeds({ hours, tonnes, tests }: SamplingGap, frequency: Frequency): boolean {
  const share = Math.max(1, tests)
  const over = (value: number, limit = Number.POSITIVE_INFINITY) => limit * (1 + 1e-9) < value / share
  return over(hours, frequency.hours) || over(tonnes, frequency.tonnes)
}
