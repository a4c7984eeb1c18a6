/** The texts of a source's evidence file back to moments and ages, each read once. */
import type { PooledStep } from '../doubt/pooled-repeatability.ts'
import type { StatedRepeatability } from '../doubt/stated-repeatability.ts'
import { type Age, readAge } from '../measure/age.ts'
import { defined } from '../measure/defined.ts'
import { type Moment, readMoment } from '../measure/moment.ts'
import type { WithTexts } from '../measure/texts-of-times.ts'
import type { PlannedTest, UnmadeResult } from '../result/result.ts'
import type { KnownApproval, KnownDocument } from './evidence.ts'
import type { LotOnDate, SourceBackground } from './lot-evidence.ts'

/**
 * Reads the ages and moments of what is known of a source beside its lots.
 * @throws RangeError for a text that is no moment or age
 */
export function readBackground(file: WithTexts<SourceBackground>): SourceBackground {
  return defined({
    ...file,
    documents: file.documents?.map(readDocument),
    approvals: file.approvals?.map(readApproval),
    events: file.events?.map((event) => ({ ...event, date: readMoment(event.date) })),
    repeatability: eachOf(file.repeatability, (entries) => entries.map(readRepeatability)),
    pooled: file.pooled && eachOf(file.pooled, (series) => eachOf(series, (steps) => steps.map(readStep))),
  })
}

/**
 * Reads the moments of what a lot of the file says beside its results.
 * @throws RangeError for a text that is no moment
 */
export function readLot<Lot extends WithTexts<Omit<LotOnDate, 'results' | 'unmade' | 'planned'>>>({
  sampled,
  from,
  withdrawn,
  documents,
  takenAt,
  ...lot
}: Lot): Omit<Lot, 'sampled' | 'from' | 'withdrawn' | 'documents' | 'takenAt'> &
  Pick<LotOnDate, 'sampled' | 'from' | 'withdrawn' | 'documents' | 'takenAt'> {
  return {
    ...lot,
    sampled: readMoment(sampled),
    from: readMoment(from),
    ...defined({
      withdrawn: readIfAny(withdrawn),
      documents: documents?.map(readDocument),
      takenAt: takenAt && eachOf(takenAt, readMoment),
    }),
  }
}

/**
 * Reads the age and moments of a test that gave no value.
 * @throws RangeError for a text that is no moment or age
 */
export function readUnmade(test: WithTexts<UnmadeResult>): UnmadeResult {
  const { age, tested, begun } = test
  return { ...test, age: readAge(age), tested: readMoment(tested), begun: readMoment(begun) }
}

/**
 * Reads the age and moments of a planned test.
 * @throws RangeError for a text that is no moment or age
 */
export function readPlanned(test: WithTexts<PlannedTest>): PlannedTest {
  return defined({
    ...test,
    age: readAge(test.age),
    begun: readMoment(test.begun),
    due: readMoment(test.due),
    overdueSince: readIfAny(test.overdueSince),
  })
}

/**
 * Reads an age that may be absent.
 * @param text "28 d"; undefined gives undefined
 * @throws RangeError for a text that is no age
 */
export function readAgeIfAny(text: string | undefined): Age | undefined {
  return text === undefined ? undefined : readAge(text)
}

function readDocument(file: WithTexts<KnownDocument>): KnownDocument {
  return defined({ ...file, from: readIfAny(file.from), to: readIfAny(file.to) })
}

function readApproval(file: WithTexts<KnownApproval>): KnownApproval {
  return defined({ ...file, from: readMoment(file.from), to: readIfAny(file.to) })
}

function readRepeatability(file: WithTexts<StatedRepeatability>): StatedRepeatability {
  return defined({
    ...file,
    age: readAgeIfAny(file.age),
    from: readMoment(file.from),
    to: readIfAny(file.to),
  })
}

function readStep([after, ...figures]: WithTexts<PooledStep>): PooledStep {
  return [readMoment(after), ...figures]
}

/**
 * Reads a moment that may be absent.
 * @param text as a record writes it; undefined gives undefined
 * @throws RangeError for a text that is no moment
 */
export function readIfAny(text: string | undefined): Moment | undefined {
  return text === undefined ? undefined : readMoment(text)
}

function eachOf<From, To>(
  record: Readonly<Record<string, From>>,
  read: (member: From) => To,
): Record<string, To> {
  return Object.fromEntries(Object.entries(record).map(([key, member]) => [key, read(member)]))
}
