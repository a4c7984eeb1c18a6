/** Outcomes in words: alone, at the head of a certificate, and of the members of a group. */
import { type Criterion, setName } from '../core/criteria/criterion.ts'
import { isActivityOnly } from '../core/criteria/activity-only.ts'
import type { Outcome } from '../core/criteria/outcome.ts'
import type { Verdict } from '../core/criteria/verdict.ts'
import type { VerdictStanding } from '../core/criteria/verdict-standing.ts'

/** Stands over every verdict under limits that nobody has confirmed against the standard. */
export const TRIAL_HEADING = 'Trial judgement, not a statement of conformity'

/** What meeting a set of activity clauses leaves open. */
const ACTIVITY_ONLY = 'activity clause only; loss on ignition, fineness and others not judged'

/** How much of a material a set judges, where that is not the whole; null for a whole specification. */
export function scopeWords(criterion: Pick<Criterion, 'clauses'>): string | null {
  return isActivityOnly(criterion) ? ACTIVITY_ONLY : null
}

/** The name of a set in a list of sets: one that judges activity alone is no equal of the others. */
export function listedSetName(criterion: Criterion): string {
  if (criterion.activityOf !== undefined)
    return `${setName(criterion)}, with the activity clause of ${setName(criterion.activityOf)}`
  return isActivityOnly(criterion) ? `${setName(criterion)} (activity clause only)` : setName(criterion)
}

type OutcomeWords = Readonly<Record<Outcome, string>>

const ALONE: OutcomeWords = {
  meets: 'meets',
  'meets-by-approval': 'meets by approval',
  'does-not-meet': 'does not meet',
  inconclusive: 'inconclusive',
  pending: 'pending',
  'not-reported': 'not reported',
  'insufficient-history': 'insufficient history',
  'not-valid': 'not valid',
  'not-applicable': 'not applicable',
  'not-invoked': 'not invoked',
  reported: 'reported',
}

/** The whole set of outcomes, in the order of the design. */
export function everyOutcome(): Outcome[] {
  return Object.keys(ALONE) as Outcome[]
}

export function outcomeWords(outcome: Outcome): string {
  return ALONE[outcome]
}

/** With what must be said beside it. */
export function outcomeOfClause(outcome: Outcome, { soFar }: VerdictStanding = {}): string {
  return soFar === true ? `${outcomeWords(outcome)} ${SO_FAR}` : outcomeWords(outcome)
}

/** With the name of a specification; never beginning with it, since a withdrawn certificate puts "was:" before it. */
const OF_A_SET: Readonly<Record<Outcome, (name: string) => string>> = {
  meets: (name) => `Meets ${name}`,
  'meets-by-approval': (name) => `Meets ${name}, by approval`,
  'does-not-meet': (name) => `Does not meet ${name}`,
  inconclusive: (name) => `Inconclusive under ${name}`,
  pending: (name) => `Pending under ${name}`,
  'not-reported': (name) => `Required results not reported under ${name}`,
  'insufficient-history': (name) => `Meets all clauses of ${name} that can be evaluated so far`,
  'not-valid': (name) => `A test is not valid under ${name}`,
  'not-applicable': (name) => `No clause of ${name} applies`,
  'not-invoked': (name) => `Nothing was requested under ${name}`,
  reported: (name) => `Reported under ${name}, no limit applies`,
}

/** Behind "does not meet", where a result that is overdue can still change it: not "so far" alone, which names no cause. */
export const SO_FAR = 'on the results so far'

/** Of a lot whose kind or claimed class the specification does not have: no result is missing. */
export const NO_CLASS_FOR_LOT = 'no class for this lot'

/**
 * One line for the head of a certificate; a class never stands without its edition.
 * @param criterion with what must be said of the verdict beside its outcome
 */
export function verdictHeadline(
  verdict: Pick<Verdict, 'outcome' | 'class' | 'edition'>,
  criterion: Pick<Criterion, 'title' | 'designation'> & VerdictStanding,
): string {
  const set = setOfVerdict(verdict, criterion)
  if (criterion.noClass === true) return `No class for this lot in ${set}`
  if (criterion.unevaluated === true) return unevaluatedSet(set)
  const said = OF_A_SET[verdict.outcome](set)
  return criterion.soFar === true ? `${said} ${SO_FAR}` : said
}

function unevaluatedSet(name: string): string {
  return `No clause of ${name} can be evaluated yet`
}

/**
 * Whether a headline begins with the words of another outcome than the one given. Words of earlier versions, which
 * are those of none, are not: a document keeps the words of its day.
 */
export function isHeadlineOfAnother(headline: string, outcome: Outcome): boolean {
  const said = headline.replace(/^Withdrawn; was: /, '').toLowerCase()
  if (said.startsWith(`${NO_CLASS_FOR_LOT} in `)) return outcome !== 'not-reported'
  const longest = AROUND_NAMES.find(({ before, after }) => said.startsWith(before) && said.endsWith(after))
  return longest !== undefined && longest.outcome !== outcome
}

/** The words of a headline before and after the name of the specification, in lower case. */
interface AroundName {
  readonly outcome: Outcome
  readonly before: string
  readonly after: string
}

function wordsAroundName(outcome: Outcome, words = OF_A_SET[outcome]): AroundName {
  const [before = '', after = ''] = words('\n').toLowerCase().split('\n')
  return { outcome, before, after }
}

/** Headlines of earlier versions that begin as "Meets" does today but say less: documents issued then keep them. */
const EARLIER_WORDS: readonly AroundName[] = [
  { outcome: 'meets-by-approval', before: 'meets by approval ', after: '' },
  { outcome: 'insufficient-history', before: 'meets all clauses that can be evaluated of ', after: '' },
]

/** The longest first: what says more is looked for before what it begins with. */
const AROUND_NAMES: readonly AroundName[] = [
  ...everyOutcome().map((outcome) => wordsAroundName(outcome)),
  wordsAroundName('insufficient-history', unevaluatedSet),
  ...EARLIER_WORDS,
].sort((a, b) => b.before.length + b.after.length - a.before.length - a.after.length)

/** The set that a verdict is under, with the class that it judged. */
export function setOfVerdict(
  verdict: Pick<Verdict, 'class' | 'edition'>,
  criterion: Pick<Criterion, 'title' | 'designation'>,
): string {
  const set = setName({ ...criterion, edition: verdict.edition })
  return verdict.class === null ? set : `${set}, class ${verdict.class}`
}

/** How many members of a group must hold. */
export const COMBINED: Readonly<Record<'any-of' | 'all-of', string>> = {
  'any-of': 'one of these is enough',
  'all-of': 'all of these must hold',
}

/** Of a group, before the names of the members that gave its outcome. */
export const BY_MEMBERS: OutcomeWords = {
  meets: 'met by',
  'meets-by-approval': 'met by approval by',
  'does-not-meet': 'not met by',
  inconclusive: 'undecided by',
  pending: 'awaiting',
  'not-reported': 'not reported:',
  'insufficient-history': 'no history yet for',
  'not-valid': 'not valid:',
  'not-applicable': 'not applicable:',
  'not-invoked': 'not requested:',
  reported: 'reported:',
}

/** Of a route that another one made needless. */
export const OF_OTHER_ROUTE: OutcomeWords = {
  meets: 'met',
  'meets-by-approval': 'met by approval',
  'does-not-meet': 'not met',
  inconclusive: 'undecided',
  pending: 'awaited',
  'not-reported': 'not reported',
  'insufficient-history': 'no history yet',
  'not-valid': 'not valid',
  'not-applicable': 'not applicable',
  'not-invoked': 'not requested',
  reported: 'reported',
}
