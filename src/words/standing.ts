/**
 * State and verdict of a lot in one breath, so that neither is ever read without the other: "Meets so far;
 * 28 d strength activity index due 4 July 2026", "Withdrawn 3 March 2026; was: meets".
 */
import type { Outcome } from '../core/criteria/outcome.ts'
import type { VerdictStanding } from '../core/criteria/verdict-standing.ts'
import type { CertificateState } from '../core/evidence/certificate-state.ts'
import { compareMoments, dateOf, type Moment } from '../core/measure/moment.ts'
import type { AwaitedTest } from '../core/result/awaited-test.ts'
import { date } from './dates.ts'
import { HISTORY_SHORT, judgedWords, wouldBeWords } from './lot-outcomes.ts'
import { plural } from './numbers.ts'
import { everyOutcome, outcomeWords } from './outcomes.ts'
import { propertyWords } from './property-names.ts'
import { plainSpaces, sentence } from './sentences.ts'

/** A missing result, with the condition's name where a reader must be told it. */
export interface NamedTest extends Pick<AwaitedTest, 'property' | 'age' | 'due' | 'overdueSince'> {
  /** "modified (50 %, 50 °C, w/cm 0.485)"; null for a standard's own condition. */
  readonly conditionName: string | null
}

/** What a lot's standing rests on. */
export interface StandingFacts extends VerdictStanding {
  /** Of the certificate, or `superseded` for a revision that has a later one. */
  readonly state: CertificateState | 'superseded'
  /** Under one set; null where the lot is not judged. */
  readonly outcome: Outcome | null
  readonly withdrawn?: Moment
  /** The longest awaited first. */
  readonly awaited: readonly NamedTest[]
}

/** Which mark stands beside it: an outcome's own only where a certificate in force has it for good. */
export type StandingMark = Outcome | 'meets-so-far' | 'draft' | 'withdrawn'

export interface LotStanding {
  readonly mark: StandingMark | null
  /** What must be read first: never an outcome that does not hold. */
  readonly head: string
  /** What belongs to it; null where nothing does. */
  readonly rest: string | null
  /** A result is overdue, as the rest says: for emphasis. */
  readonly late: boolean
  /** Head and rest with ordinary spaces, as data files hold them. */
  readonly text: string
  /**
   * State and outcome within a line, whether a result is overdue, but not which: "withdrawn (was: meets)",
   * "meets so far (result overdue)".
   */
  readonly brief: string
}

export function lotStanding(facts: StandingFacts): LotStanding {
  switch (facts.state) {
    case 'withdrawn':
    case 'superseded':
      return noLongerInForce(facts)
    case 'draft':
      return neverIssued(facts)
    case 'provisional':
    case 'complete':
      return inForce(facts)
  }
}

/** Lots that stand alike, whichever results they await. */
export interface StandingCount {
  readonly standing: Pick<LotStanding, 'mark' | 'brief'>
  readonly count: number
}

/** How many lots stand in which way, in the order of the marks. */
export function standingCounts(standings: readonly Pick<LotStanding, 'mark' | 'brief'>[]): StandingCount[] {
  const marks = everyMark()
  const placeOf = ({ standing: { mark } }: StandingCount) =>
    mark === null ? marks.length : marks.indexOf(mark)
  return [...Map.groupBy(standings, ({ brief }) => brief)]
    .map(
      ([brief, own]): StandingCount => ({
        standing: { mark: own[0]?.mark ?? null, brief },
        count: own.length,
      }),
    )
    .sort((a, b) => placeOf(a) - placeOf(b))
}

/** Marks in the order of the outcomes, those of no outcome last. */
export function everyMark(): StandingMark[] {
  const [meets, ...others] = everyOutcome()
  return [...(meets === undefined ? [] : [meets]), 'meets-so-far', ...others, 'draft', 'withdrawn']
}

/** What a count of outcomes says of the withdrawn lots; null where there is none. */
export function withdrawnNotCounted(count: number): string | null {
  return count === 0 ? null : `${plural(count, 'withdrawn lot', 'withdrawn lots')} not counted`
}

/** Of a comparison of two sets: lots that only one of them has a verdict for; null where there is none. */
export function oneSidedWords(count: number): string | null {
  return count === 0
    ? null
    : `${plural(count, 'lot', 'lots')} with a verdict under only one of the two, counted apart`
}

/** A mark by its name, as a choice among all of them. */
export function markWords(mark: StandingMark): string {
  if (mark === 'meets-so-far') return 'meets so far'
  if (mark === 'draft') return 'draft, never issued'
  if (mark === 'insufficient-history') return HISTORY_SHORT
  return mark === 'withdrawn' ? 'withdrawn' : outcomeWords(mark)
}

/**
 * The state of a certificate where its verdict stands beside it. "Complete" alone would read as praise beside a
 * lot that fails.
 * @param mortars on the lot's record: without one no test is planned, and none can be said to be reported
 */
export function certificateStateWords(state: StandingFacts['state'], mortars: number): string {
  if (state !== 'complete') return state
  return mortars === 0 ? 'no mortar on record, so no later result is due' : 'all planned test ages reported'
}

/** "28 d strength activity index, modified (50 %, 50 °C, w/cm 0.485)". */
export function testName({
  property,
  age,
  conditionName,
}: Pick<NamedTest, 'property' | 'conditionName'> & { readonly age: string | NamedTest['age'] }): string {
  const name = `${age} ${propertyWords({ property })}`
  return conditionName === null ? name : `${name}, ${conditionName}`
}

/** "due 4 July 2026": the day alone, since a time of casting makes no appointment of it. */
export function dueWords(due: Moment): string {
  return `due ${date(dateOf(due))}`
}

/** "overdue since 4 February 2026": said in these words wherever a result is late. */
export function overdueWords(since: Moment): string {
  return `overdue since ${date(dateOf(since))}`
}

const LATE = 'result overdue'

/** What it was counts no more, nor does anybody await its results. */
function noLongerInForce({ state, withdrawn, ...judged }: StandingFacts): LotStanding {
  const word = state === 'withdrawn' ? 'Withdrawn' : 'Superseded by a later revision'
  const was = judgedWords(judged)
  const head = withdrawn === undefined ? word : `${word} ${date(dateOf(withdrawn))}`
  return standing({
    mark: 'withdrawn',
    head,
    late: false,
    rest: [`was: ${was}`],
    brief: `${word.toLowerCase()} (was: ${was})`,
  })
}

function neverIssued({ awaited, ...judged }: StandingFacts): LotStanding {
  const soFar = isMet(judged.outcome) && 0 < awaited.length ? ' so far' : ''
  const would = `${wouldBeWords(judged)}${soFar}`
  return standing({
    mark: 'draft',
    head: 'Draft, never issued',
    late: isLate(awaited),
    rest: [would, ...awaitedWords(awaited, judged)],
    brief: `draft (${isLate(awaited) ? `${would}; ${LATE}` : would})`,
  })
}

/**
 * "Complete" is not said: beside a lot that fails it would read as praise. A certificate that is still
 * provisional says so where no result is missing that would tell it.
 */
function inForce({ state, awaited, ...judged }: StandingFacts): LotStanding {
  const { outcome } = judged
  const missing = awaitedWords(awaited, judged)
  const stillProvisional = state === 'provisional' && missing.length === 0
  const notForGood = isMet(outcome) && (0 < missing.length || stillProvisional)
  const words = judgedWords(judged)
  const said = notForGood ? `${words} ${stillProvisional ? 'with all results in' : 'so far'}` : words
  return standing({
    mark: notForGood ? 'meets-so-far' : outcome,
    head: sentence(said),
    late: isLate(awaited),
    rest: stillProvisional ? ['certificate still provisional'] : missing,
    brief: isLate(awaited) ? `${said} (${LATE})` : said,
  })
}

function isMet(outcome: Outcome | null): boolean {
  return outcome === 'meets' || outcome === 'meets-by-approval'
}

function isLate(awaited: readonly NamedTest[]): boolean {
  return awaited.some(({ overdueSince }) => overdueSince !== undefined)
}

function standing({
  rest,
  ...parts
}: Pick<LotStanding, 'mark' | 'head' | 'late' | 'brief'> & {
  readonly rest: readonly string[]
}): LotStanding {
  return {
    ...parts,
    rest: rest.length === 0 ? null : rest.join('; '),
    text: plainSpaces([parts.head, ...rest].join('; ')),
  }
}

/** The overdue ones first; of each kind the first is named and the others are counted. */
function awaitedWords(awaited: readonly NamedTest[], { soFar }: Pick<VerdictStanding, 'soFar'>): string[] {
  const overdue = awaited
    .flatMap(({ overdueSince, ...test }) => (overdueSince === undefined ? [] : [{ test, on: overdueSince }]))
    .sort((a, b) => compareMoments(a.on, b.on))
  const due = awaited
    .filter(({ overdueSince }) => overdueSince === undefined)
    .map((test) => ({ test, on: test.due }))
  return [
    ...firstAndOthers(overdue, { words: overdueWords, later: 'since a later date' }),
    ...(soFar === true ? [lateRouteWords(overdue.length)] : []),
    ...firstAndOthers(due, { words: dueWords, later: 'later' }),
  ]
}

/** A failed lot would be read where a report is late. */
function lateRouteWords(overdue: number): string {
  return `${overdue === 1 ? 'it' : 'an overdue result'} can still meet the clause`
}

/** The date said is that of the first alone, unless all share it. */
function firstAndOthers(
  awaited: readonly {
    readonly test: Pick<NamedTest, 'property' | 'age' | 'conditionName'>
    readonly on: Moment
  }[],
  { words, later }: { readonly words: (on: Moment) => string; readonly later: string },
): string[] {
  const [first, ...others] = awaited
  if (first === undefined) return []
  const name = testName(first.test)
  if (others.length === 0) return [`${name} ${words(first.on)}`]
  const counted = plural(others.length, 'other result', 'other results')
  const together = others.every(({ on }) => words(on) === words(first.on))
  return [
    together
      ? `${name} and ${counted} ${words(first.on)}`
      : `${name} ${words(first.on)} (and ${counted} ${later})`,
  ]
}
