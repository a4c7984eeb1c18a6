/**
 * What differs between an issued document and today's records: findings, never a change of the issued page.
 */
import type { Finding } from '../../core/checks/finding.ts'
import type { OutcomeChange, RecordChange } from '../../core/checks/lot-findings.ts'
import type { Verdict } from '../../core/criteria/verdict.ts'
import { defined } from '../../core/measure/defined.ts'
import { type Duty, dutyOf, type SampleKind } from '../../core/measure/duty.ts'
import { isBy, type Moment, momentIn, readMoment } from '../../core/measure/moment.ts'
import type { KnownRecord } from '../passes/known-record.ts'
import { type ComparedVerdict, everyChange } from './compared-verdict.ts'
import { recordOf } from './document-content.ts'
import type { IssuedDocument } from '../shape/document.ts'

/** Differences shown at most; more are counted. */
const SHOWN = 12

/** Leaf-by-leaf differences of two plain JSON values. @param path keys that lead to them */
export function differences(issued: unknown, today: unknown, path: readonly string[] = []): RecordChange[] {
  if (Object.is(issued, today)) return []
  if (isTree(issued) && isTree(today) && Array.isArray(issued) === Array.isArray(today)) {
    const keys = new Set([...Object.keys(issued), ...Object.keys(today)])
    return [...keys].flatMap((key) =>
      differences((issued as Record<string, unknown>)[key], (today as Record<string, unknown>)[key], [
        ...path,
        key,
      ]),
    )
  }
  return [{ path, issued: text(issued), today: text(today) }]
}

/** Whether there are none. */
export function isSame(issued: unknown, today: unknown): boolean {
  if (Object.is(issued, today)) return true
  if (!isTree(issued) || !isTree(today) || Array.isArray(issued) !== Array.isArray(today)) return false
  const before = issued as Readonly<Record<string, unknown>>
  const now = today as Readonly<Record<string, unknown>>
  for (const key in before) if (!isSame(before[key], now[key])) return false
  for (const key in now) if (!Object.hasOwn(before, key) && !isSame(before[key], now[key])) return false
  return true
}

/**
 * Differences of two records, whatever the notation: a value with nothing beside it is the same in full and in
 * short, a list without entries is none, and a test planned beside another at its age says nothing.
 */
export function recordDifferences(issued: KnownRecord, today: KnownRecord): RecordChange[] {
  return differences(inOneNotation(issued), inOneNotation(today))
}

/** Members that hold a value where nothing else is said of it. */
const VALUES = ['value', 'load', 'strength', 'resistance', 'resistivity']

function inOneNotation(value: unknown): unknown {
  if (!isTree(value)) return value
  if (Array.isArray(value))
    return value.filter((entry, place) => !isPlannedBeside(value, entry, place)).map(inOneNotation)
  const members = Object.entries(value)
    .map(([key, member]) => [key, inOneNotation(member)] as const)
    .filter(([, member]) => !(Array.isArray(member) && member.length === 0))
  const [[key, only] = ['', null]] = members
  const isShort = members.length === 1 && VALUES.includes(key) && typeof only === 'string'
  return isShort ? only : Object.fromEntries(members)
}

function isPlannedBeside(list: readonly unknown[], entry: unknown, place: number): boolean {
  return (
    isPlanned(entry) &&
    list.some((other, at) => ageOf(other) === ageOf(entry) && (at < place || !isPlanned(other)))
  )
}

/** A test of which nothing but its age is on record. */
function isPlanned(entry: unknown): boolean {
  return ageOf(entry) !== undefined && Object.keys(entry as object).length === 1
}

function ageOf(entry: unknown): unknown {
  return isTree(entry) && 'age' in entry ? entry.age : undefined
}

function isTree(value: unknown): value is object {
  return typeof value === 'object' && value !== null
}

function text(value: unknown): string | null {
  return value === undefined ? null : treeWords(value)
}

/** A value as it is, more than one in a line: "age 28 d, specimens (a 90 kN, b 91 kN)". */
function treeWords(value: unknown): string {
  if (!isTree(value)) return String(value)
  const members = Array.isArray(value)
    ? value.map(inBrackets)
    : Object.entries(value).map(([key, member]) => `${key} ${inBrackets(member)}`)
  return members.join(', ')
}

function inBrackets(value: unknown): string {
  return isTree(value) ? `(${treeWords(value)})` : treeWords(value)
}

/**
 * @param issued the newest issued document, with what it withholds put back
 * @param known today's records as they would have been known on the document's date
 * @param today today's verdicts
 * @param rejudged today's program and criteria on the known records, as of the document's date, so that only
 * changes count and not the passing of time
 */
export function issueFindings(
  issued: IssuedDocument,
  known: KnownRecord,
  today: readonly Verdict[],
  rejudged: () => readonly Verdict[],
): Finding[] {
  // Where today's outcomes are those of the document, nothing has moved; only otherwise is it worth judging
  // anew as of its date.
  const otherwise =
    outcomeChanges(issued, today).length === 0 ? [] : judgedOtherwise(issued, today, rejudged())
  return [...changedAfterIssue(issued, known), ...otherwise]
}

function changedAfterIssue(issued: IssuedDocument, today: KnownRecord): Finding[] {
  const known = withoutAgencySamples(today)
  const written = withoutAgencySamples(recordOf(issued))
  // Nearly every record is as it was issued, to the letter.
  if (isSame(written, known)) return []
  const before = withoutLaterSamples(written, readMoment(issued.issued))
  const changes = recordDifferences(before, withoutNewPlans(known, before) as KnownRecord)
  if (changes.length === 0) return []
  return [
    aboutRevision(issued, {
      code: 'changed-after-issue',
      params: { ...revisionOf(issued), places: changes.length, changes: changes.slice(0, SHOWN) },
    }),
  ]
}

interface WrittenSample {
  readonly id: string
  readonly kind: SampleKind
  readonly duty?: Duty
  readonly taken?: { readonly to: string }
  readonly on?: string
  readonly received?: string
}

/**
 * An agency samples after issue as before, and its results are no part of a document either: one that an earlier
 * program issued may hold those that the record lists among the producer's.
 */
function withoutAgencySamples({ lot, controls }: KnownRecord): KnownRecord {
  const samples = lot['samples'] as readonly WrittenSample[] | undefined
  const own = samples?.filter(
    ({ kind, duty }) => dutyOf(defined({ sampleKind: kind, duty })) !== 'verification',
  )
  if (own === undefined || own.length === samples?.length) return { lot, controls }
  const ids = new Set(own.map(({ id }) => id))
  const onOwn = (tests: unknown) => {
    const left = (tests as readonly { readonly sample: string }[] | undefined)?.filter(({ sample }) =>
      ids.has(sample),
    )
    return left?.length === 0 ? undefined : left
  }
  const { analyses, tests, ...rest } = lot
  return {
    lot: { ...rest, ...defined({ analyses: onOwn(analyses), tests: onOwn(tests) }), samples: own },
    controls,
  }
}

/** A document issued under an earlier date than its day may name samples taken or received after that date. */
function withoutLaterSamples({ lot, controls }: KnownRecord, date: Moment): KnownRecord {
  // An altered document may hold anything in place of a day.
  const later = (text: string | undefined) => {
    const day = text === undefined ? null : momentIn(text)
    return day !== null && !isBy(day, date)
  }
  // A document that lacks them is at fault, and is told as such elsewhere.
  const samples = (lot['samples'] as readonly WrittenSample[] | undefined)
    ?.filter(({ on, taken }) => !later(on ?? taken?.to))
    .map(({ received, ...sample }) =>
      received === undefined || later(received) ? sample : { ...sample, received },
    )
  return { lot: { ...lot, ...defined({ samples }) }, controls }
}

/** Today's record without tests that are only planned, at ages of which the issued one knows nothing. */
function withoutNewPlans(today: unknown, issued: unknown): unknown {
  if (!isTree(today)) return today
  if (Array.isArray(today)) {
    const before: readonly unknown[] = Array.isArray(issued) ? issued : []
    return today
      .filter((entry) => !isPlanned(entry) || before.some((other) => ageOf(other) === ageOf(entry)))
      .map((entry, place) => withoutNewPlans(entry, before[place]))
  }
  const before: Readonly<Record<string, unknown>> = isTree(issued) ? { ...issued } : {}
  return Object.fromEntries(
    Object.entries(today).map(([key, member]) => [key, withoutNewPlans(member, before[key])]),
  )
}

/** Where verdicts have another outcome than in the document, or, where none has, clauses of the governing one. */
export function outcomeChanges(
  issued: IssuedDocument,
  verdicts: readonly ComparedVerdict[],
): OutcomeChange[] {
  return foremost(everyOutcomeChange(issued, verdicts))
}

function everyOutcomeChange(
  { data: { verdict, others } }: IssuedDocument,
  verdicts: readonly ComparedVerdict[],
): OutcomeChange[] {
  return [...(verdict === undefined ? [] : [verdict]), ...others].flatMap((before): OutcomeChange[] => {
    const { criterion, outcome } = before
    const now = verdicts.find((candidate) => candidate.criterion === criterion)
    if (now === undefined) return [{ criterion, issued: outcome, today: null }]
    const changes = everyChange(before, now, before === verdict ? 'with-clauses' : 'verdict-alone')
    return changes.map((change) => ({ criterion, ...change }))
  })
}

/** Clauses go without saying where the verdict on them is another. */
function foremost(changes: readonly OutcomeChange[]): OutcomeChange[] {
  const moved = new Set(changes.flatMap(({ criterion, clause }) => (clause === undefined ? [criterion] : [])))
  return changes.filter(({ criterion, clause }) => clause === undefined || !moved.has(criterion))
}

/**
 * Today's outcomes, so that no report gives a lot two on one day, where those of the document's date are others too:
 * what time alone has changed is none.
 */
function judgedOtherwise(
  issued: IssuedDocument,
  today: readonly Verdict[],
  rejudged: readonly Verdict[],
): Finding[] {
  const then = everyOutcomeChange(issued, rejudged)
  const changes = foremost(
    everyOutcomeChange(issued, today).filter(({ criterion, clause }) =>
      then.some((one) => one.criterion === criterion && one.clause === clause),
    ),
  )
  if (changes.length === 0) return []
  return [
    aboutRevision(issued, {
      code: 'would-now-be-judged-otherwise',
      params: { ...revisionOf(issued), changes },
    }),
  ]
}

function aboutRevision(issued: IssuedDocument, reason: Finding['reason']): Finding {
  return {
    id: `${reason.code}/${issued.certificate}/${issued.revision}`,
    severity: 'warning',
    about: issued.certificate,
    reason,
  }
}

function revisionOf({ certificate, revision }: IssuedDocument): { lot: string; revision: number } {
  return { lot: certificate, revision }
}
