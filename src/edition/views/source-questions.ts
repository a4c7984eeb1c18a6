/** Questions that the audit checks ask about a source and its lots, open ones first, each with what was answered. */
import type { Moment } from '../../core/measure/moment.ts'
import { byReadingOrder } from '../../core/checks/reading-order.ts'
import type { Edition, ListedLot, SourceEntry } from '../shape/edition.ts'
import { findingsOfLots, findingsPublished, type ListedFinding, listedFindings } from './findings.ts'

export interface SourceQuestion extends ListedFinding {
  readonly answer: string | null
  readonly answered: Moment | null
  /** What the agency or engineer decided. */
  readonly disposition: string | null
  readonly closed: Moment | null
  /** What else the answer says: cause, containment, bills, who was told. */
  readonly details: readonly { readonly label: string; readonly text: string }[]
}

export interface SourceQuestions {
  readonly published: boolean
  readonly open: readonly SourceQuestion[]
  readonly closed: readonly SourceQuestion[]
  /** Open ones that the page has no room for. */
  readonly more: number
  /** null where no day is known. */
  readonly oldestDays: number | null
}

/** Questions that a page has room for. */
const SHOWN = 40

/** Which lots are asked about, and how many questions there is room for. */
interface Asked {
  readonly rows?: readonly ListedLot[]
  readonly most?: number
}

/**
 * Those of the source, then those of its lots, the newest lot first; remarks for information last.
 * @param asked all lots and as many as a page has room for, unless it says otherwise
 */
export function sourceQuestions(
  edition: Edition,
  source: SourceEntry,
  { rows = edition.lotsOf(source.id), most = SHOWN }: Asked = {},
): SourceQuestions {
  const findings = [...source.findings, ...findingsOfLots(edition, [...rows].reverse())]
  const listed = listedFindings(edition, findings.sort(byReadingOrder)).map(questionOf)
  const open = listed.filter((one) => one.closed === null && isQuestion(one))
  return {
    published: findingsPublished(edition),
    open: open.slice(0, most),
    more: Math.max(0, open.length - most),
    closed: listed.filter((one) => one.closed !== null || !isQuestion(one)).slice(0, most),
    oldestDays: oldestOf(edition, open),
  }
}

/** A site that lowers a severity does not answer the question. */
function isQuestion({ severity, loweredFrom }: SourceQuestion): boolean {
  return severity !== 'information' || loweredFrom !== undefined
}

function questionOf(finding: ListedFinding): SourceQuestion {
  const { recorded } = finding
  return {
    ...finding,
    answer: recorded?.answer ?? null,
    answered: recorded?.date ?? null,
    disposition: recorded?.disposition ?? null,
    closed: recorded?.closed ?? null,
    details: finding.answerParts
      .filter(({ term }) => DETAILS.includes(term))
      .map(({ term, text }) => ({ label: term, text })),
  }
}

/** Parts of an answer that stand between it and what was decided. */
const DETAILS: readonly string[] = ['Cause', 'Containment', 'Bills affected', 'Told']

/** A question is as old as the sampling of its lot. */
function oldestOf({ asOf, lots }: Edition, open: readonly SourceQuestion[]): number | null {
  const days = open.flatMap(({ lot }) => {
    const sampled = lot === undefined ? undefined : lots.get(lot)?.sampled
    return sampled === undefined ? [] : [asOf.day - sampled.day]
  })
  return days.length === 0 ? null : days.reduce((a, b) => Math.max(a, b))
}
