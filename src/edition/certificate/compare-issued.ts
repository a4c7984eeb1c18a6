/**
 * What differs between an issued document and today's records: findings, never a change of the issued page.
 */
import type { Finding } from '../../core/checks/finding.ts'
import { everyClauseOutcome, type Outcome, type Verdict } from '../../core/criteria/outcome.ts'
import type { CertificateDocument } from '../shape/document.ts'

/** Differences shown at most; more are counted. */
const SHOWN = 12

export interface Difference {
  readonly path: string
  readonly issued: string
  readonly today: string
}

/** Leaf-by-leaf differences of two plain JSON values; `path` joins keys with " › ". */
export function differences(issued: unknown, today: unknown, path = ''): Difference[] {
  if (Object.is(issued, today)) return []
  if (isTree(issued) && isTree(today) && Array.isArray(issued) === Array.isArray(today)) {
    const keys = new Set([...Object.keys(issued), ...Object.keys(today)])
    return [...keys].flatMap((key) =>
      differences(
        (issued as Record<string, unknown>)[key],
        (today as Record<string, unknown>)[key],
        path === '' ? key : `${path} › ${key}`,
      ),
    )
  }
  return [{ path, issued: text(issued), today: text(today) }]
}

function isTree(value: unknown): value is object {
  return typeof value === 'object' && value !== null
}

function text(value: unknown): string {
  return value === undefined ? 'nothing' : typeof value === 'string' ? value : JSON.stringify(value)
}

/**
 * @param issued the newest issued document
 * @param known today's records as they would have been known on the document's date
 * @param today today's verdicts
 * @param rejudged today's program and criteria on the known records, as of the document's date, so that only
 * changes count and not the passing of time
 */
export function issueFindings(
  issued: CertificateDocument,
  known: unknown,
  today: readonly Verdict[],
  rejudged: () => readonly Verdict[],
): Finding[] {
  // Where today's outcomes are those of the document, nothing has moved; only otherwise is it worth judging
  // anew as of its date.
  const otherwise = outcomeChanges(issued, today).length === 0 ? [] : judgedOtherwise(issued, rejudged())
  return [...changedAfterIssue(issued, known), ...otherwise]
}

function changedAfterIssue(issued: CertificateDocument, known: unknown): Finding[] {
  const changes = differences(issued.record, known)
  if (changes.length === 0) return []
  const evidence = changes
    .slice(0, SHOWN)
    .map((change) => `${change.path}: issued ${change.issued}, today ${change.today}`)
  return [
    {
      id: `changed-after-issue/${issued.certificate}/${issued.revision}`,
      check: 'changed-after-issue',
      severity: 'warning',
      about: issued.certificate,
      sentence: `The record of ${issued.certificate} differs from revision ${issued.revision} as issued in ${changes.length === 1 ? 'one place' : `${changes.length} places`}`,
      evidence: changes.length > SHOWN ? [...evidence, `and ${changes.length - SHOWN} more`] : evidence,
    },
  ]
}

/** Where verdicts or clauses have another outcome than in the document, in words. */
function outcomeChanges(issued: CertificateDocument, verdicts: readonly Verdict[]): string[] {
  return issued.verdicts.flatMap((before) => {
    const now = verdicts.find((verdict) => verdict.criterion === before.criterion)
    if (now === undefined) return [`${before.criterion}: issued ${before.outcome}, today not judged under it`]
    if (now.outcome !== before.outcome)
      return [`${before.criterion}: issued ${before.outcome}, today ${now.outcome}`]
    return clauseChanges(before.clauses, now.clauses).map((change) => `${before.criterion}, ${change}`)
  })
}

function judgedOtherwise(issued: CertificateDocument, rejudged: readonly Verdict[]): Finding[] {
  const evidence = outcomeChanges(issued, rejudged)
  if (evidence.length === 0) return []
  return [
    {
      id: `would-now-be-judged-otherwise/${issued.certificate}/${issued.revision}`,
      check: 'would-now-be-judged-otherwise',
      severity: 'warning',
      about: issued.certificate,
      sentence: `${issued.certificate} would now be judged otherwise than in revision ${issued.revision}`,
      evidence,
    },
  ]
}

/** A clause's outcome with its members', as judged or as worded. */
interface JudgedTree {
  readonly id: string
  readonly outcome: Outcome
  readonly clauses?: readonly JudgedTree[]
}

function clauseChanges(before: readonly JudgedTree[], now: readonly JudgedTree[]): string[] {
  const today = new Map([...everyClauseOutcome(now)].map((clause) => [clause.id, clause]))
  return [...everyClauseOutcome(before)].flatMap((clause) => {
    const outcome = today.get(clause.id)?.outcome ?? 'no such clause'
    return outcome === clause.outcome
      ? []
      : [`clause ${clause.id}: issued ${clause.outcome}, today ${outcome}`]
  })
}
