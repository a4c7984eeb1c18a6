/** Clauses on the record rather than on a value: facts, documents, allowed classes, sampling. */
import type {
  Clause,
  ClassClause,
  DocumentClause,
  FactClause,
  Frequency,
  SamplingClause,
} from '../criteria/criterion.ts'
import { claimedClass } from './scope.ts'
import { type Finding, plainly } from './judged-clause.ts'
import type { Judging } from './judging.ts'
import { limitsForClass, listWords, numberWords } from '../../words/limit-words.ts'
import { inForce } from '../measure/moment.ts'
import { allHold, factWords, premisesWords } from './premises.ts'
import { propertyWords } from './select-result.ts'

export type RecordClause = Extract<Clause, FactClause | DocumentClause | ClassClause | SamplingClause>

export function judgeRecord(clause: RecordClause, judging: Judging): Finding {
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

function judgeFact(clause: FactClause, { evidence: { facts } }: Judging): Finding {
  const stated = facts !== undefined && Object.hasOwn(facts, clause.fact) ? facts[clause.fact] : undefined
  if (stated === undefined) return plainly('not-reported', `${factWords(clause.fact)} is not stated`)
  const asked = listWords(clause.is, 'or')
  return clause.is.includes(stated)
    ? plainly('meets', `${factWords(clause.fact)} is ${stated}`)
    : plainly('does-not-meet', `${factWords(clause.fact)} is ${stated}, and must be ${asked}`)
}

/** The approval of a source is a document of its own kind: one that names no clause. */
export const SOURCE_APPROVAL = 'source-approval'

function judgeDocument(clause: DocumentClause, { evidence }: Judging): Finding {
  const named = factWords(clause.document)
  const documents =
    clause.document === SOURCE_APPROVAL
      ? (evidence.approvals ?? [])
          .filter((approval) => approval.clause === undefined)
          .map((approval) => ({ ...approval, title: `${approval.scope}, by ${approval.by}` }))
      : (evidence.documents ?? []).filter((document) => document.kind === clause.document)
  if (documents.length === 0) return plainly('not-reported', `no ${named} is on record`)
  const current = documents.filter((document) => inForce(document, evidence.asOf))
  if (current.length === 0) return plainly('does-not-meet', `no ${named} is in force on ${evidence.asOf}`)
  const end = (evidence.events ?? []).findLast(
    (event) => clause.voidOn.includes(event.kind) && event.date <= evidence.asOf,
  )
  // One that was given or renewed on the day of the event or later took it into account.
  const standing = current.find((document) => end === undefined || end.date <= (document.from ?? ''))
  return standing === undefined
    ? plainly('does-not-meet', `${named} has been void since ${end?.date}: ${end?.title}`)
    : plainly('meets', `${named} on record: ${standing.title}`)
}

function judgeClass(clause: ClassClause, { criterion, evidence, lotClass }: Judging): Finding {
  const claimed = lotClass ?? claimedClass(criterion, evidence)
  const allowed = listWords(clause.allowed, 'or')
  if (claimed === null) return plainly('not-reported', `no class claimed; ${allowed} allowed`)
  if (clause.allowed.includes(claimed)) return plainly('meets', `class ${claimed} is allowed`)
  const substitution = clause.acceptedAs.find((entry) => entry.class === claimed)
  if (substitution === undefined)
    return plainly('does-not-meet', `class ${claimed} is not allowed; ${allowed} is`)
  const answer = allHold(substitution.where, evidence, lotClass)
  const demands = premisesWords(substitution.where, (limits) => limitsForClass(limits, lotClass))
  if (answer.holds === 'open')
    return plainly(
      'not-reported',
      `whether class ${claimed} is accepted as ${substitution.as} depends on ${answer.because}`,
    )
  if (answer.holds === 'no')
    return plainly(
      'does-not-meet',
      `class ${claimed} is not allowed, and is accepted as ${substitution.as} only where ${demands}`,
    )
  return {
    outcome: 'meets',
    reason: `class ${claimed} accepted as ${substitution.as}, since ${demands}`,
    acceptedAs: substitution.as,
  }
}

function judgeSampling(clause: SamplingClause, { evidence }: Judging): Finding {
  const { coverage, recordDays } = evidence
  if (coverage === undefined)
    return plainly('not-reported', 'the production and sampling of the source are not known here')
  const isNew =
    clause.newSource !== undefined && recordDays !== undefined && recordDays < clause.newSource.newFor
  const frequency = isNew && clause.newSource !== undefined ? clause.newSource : clause.every
  const gaps = clause.properties.map((property) => ({ property, ...coverage(property, clause.sample) }))
  const late = gaps.filter((gap) => exceeds(gap, frequency))
  const source = isNew ? ' for a new source' : ''
  if (late.length === 0) return plainly('meets', `a test at least every ${frequency.written}${source}`)
  return plainly(
    'does-not-meet',
    `${late.map((gap) => `${propertyWords(gap)}: ${gapWords(gap)}`).join('; ')}; a test is due every ${frequency.written}${source}`,
  )
}

interface Gap {
  readonly hours: number
  readonly tonnes: number
  readonly tests: number
  readonly since?: string
}

/**
 * Time and mass are shared among the lot's tests; without one they have run on since the test before. Clock
 * dust is no delay.
 */
function exceeds({ hours, tonnes, tests }: Gap, frequency: Frequency): boolean {
  const share = Math.max(1, tests)
  const over = (value: number, limit: number | undefined) =>
    limit !== undefined && limit * (1 + 1e-9) < value / share
  return over(hours, frequency.hours) || over(tonnes, frequency.tonnes)
}

function gapWords({ hours, tonnes, tests, since }: Gap): string {
  const amount = `${numberWords(hours / 24, 1, 'd')} and ${numberWords(tonnes, 0, 't')}`
  const from = since === undefined ? 'since the source’s records began' : `since the test of ${since}`
  return tests === 0
    ? `none for ${amount} ${from}`
    : `${tests === 1 ? 'one test' : `${tests} tests`} for ${amount} ${from}`
}
