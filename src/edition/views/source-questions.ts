/** Questions that the audit checks ask about a source and its lots, open ones first, each with what was answered. */
import type { Finding } from '../../core/checks/finding.ts'
import { type AskedLot, type AskedTest, firstAsked } from '../../core/checks/first-asked.ts'
import { type Moment, momentOfDay } from '../../core/measure/moment.ts'
import { byReadingOrder } from '../../core/checks/reading-order.ts'
import { knownSince, type Result } from '../../core/result/result.ts'
import type { Edition, ListedLot, LotEntry, SourceEntry } from '../shape/edition.ts'
import { findingsOfLots, findingsPublished, type ListedFinding, listedFindings } from './findings.ts'

export interface SourceQuestion extends ListedFinding {
  readonly answer: string | null
  readonly answered: Moment | null
  /** What the agency or engineer decided. */
  readonly disposition: string | null
  readonly closed: Moment | null
  /** Day on which it could first be asked; null where that is not known. */
  readonly since: Moment | null
  /** What else the answer says: cause, containment, bills, who was told. */
  readonly details: readonly { readonly label: string; readonly text: string }[]
}

export interface SourceQuestions {
  readonly published: boolean
  readonly open: readonly SourceQuestion[]
  readonly closed: readonly SourceQuestion[]
  /** Open ones that the page has no room for. */
  readonly more: number
  /** Days since the oldest could first be asked; null where no day is known. */
  readonly oldestDays: number | null
  /** Open ones that could be asked since a day that is not known. */
  readonly undated: number
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
  const sorted = findings.sort(byReadingOrder)
  const days = askedDays(edition)
  const listed = listedFindings(edition, sorted).map((finding, place) =>
    questionOf(finding, days(sorted[place])),
  )
  const open = listed.filter((one) => one.closed === null && isQuestion(one))
  return {
    published: findingsPublished(edition),
    open: open.slice(0, most),
    more: Math.max(0, open.length - most),
    closed: listed.filter((one) => one.closed !== null || !isQuestion(one)).slice(0, most),
    ...agesOf(edition, open),
  }
}

/** A site that lowers a severity does not answer the question. */
function isQuestion({ severity, loweredFrom }: SourceQuestion): boolean {
  return severity !== 'information' || loweredFrom !== undefined
}

function questionOf(finding: ListedFinding, since: number | null): SourceQuestion {
  const { recorded } = finding
  return {
    ...finding,
    answer: recorded?.answer ?? null,
    answered: recorded?.date ?? null,
    disposition: recorded?.disposition ?? null,
    closed: recorded?.closed ?? null,
    since: since === null ? null : momentOfDay(since),
    details: finding.answerParts
      .filter(({ term }) => DETAILS.includes(term))
      .map(({ term, text }) => ({ label: term, text })),
  }
}

/** Parts of an answer that stand between it and what was decided. */
const DETAILS: readonly string[] = ['Cause', 'Containment', 'Bills affected', 'Told']

function agesOf(
  { asOf }: Pick<Edition, 'asOf'>,
  open: readonly SourceQuestion[],
): Pick<SourceQuestions, 'oldestDays' | 'undated'> {
  const ages = open.flatMap(({ since }) => (since === null ? [] : [asOf.day - since.day]))
  return {
    oldestDays: ages.length === 0 ? null : ages.reduce((a, b) => Math.max(a, b)),
    undated: open.length - ages.length,
  }
}

/** When a finding could first be asked; each lot is read once for its own. */
function askedDays(edition: Edition): (finding: Finding | undefined) => number | null {
  return (finding) =>
    finding === undefined
      ? null
      : firstAsked(finding.reason, (id) => (edition.lots.has(id) ? askedLot(edition.lot(id)) : null))
}

function askedLot({ sampled, results, shipments, sharedShipments, revisions }: LotEntry): AskedLot {
  return {
    sampled: sampled.day,
    known: (test) => {
      const days = results.filter((result) => isOfTest(result, test)).map((result) => knownSince(result).day)
      return days.length === 0 ? null : Math.min(...days)
    },
    left: (bill) => [...shipments, ...sharedShipments].find((one) => one.bill === bill)?.date.day ?? null,
    issued: (revision) => revisions.find((one) => one.number === revision)?.date.day ?? null,
  }
}

function isOfTest(result: Result, { property, age, laboratory, sample }: AskedTest): boolean {
  return (
    result.property === property &&
    (age == null || result.age?.text === age) &&
    (laboratory === undefined || result.laboratory === laboratory) &&
    (sample === undefined || result.sample === sample)
  )
}
