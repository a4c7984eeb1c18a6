/** Why a clause came out as it did: one sentence without a full stop, from its reasons. */
import type {
  AddedParams,
  AddedReason,
  ClauseParams,
  ClauseReasons,
  LateRoute,
} from '../core/criteria/reason.ts'
import { readMoment } from '../core/measure/moment.ts'
import { printedUnits } from './as-written.ts'
import { date } from './dates.ts'
import { limitWords } from './limits.ts'
import { boundsWords } from './bounds.ts'
import { comparedWords, countWords, figureWords, plainNumber, plural } from './numbers.ts'
import { listWords, plainSpaces } from './sentences.ts'
import { BY_MEMBERS, OF_OTHER_ROUTE } from './outcomes.ts'
import { type WordsOf, wordsOf } from './reason-words.ts'
import { AS_REPORTED } from './result-reasons.ts'
import { RECORD_REASONS } from './record-reasons.ts'
import { agreedRuleName, ruleName } from './rules.ts'
import { SCOPE_REASONS } from './scope-reasons.ts'
import { overdueWords } from './standing.ts'
import { STATISTIC_REASONS } from './statistic-reasons.ts'
import { VALUE_REASONS } from './value-reasons.ts'
import type { UnitSystem } from './unit-systems.ts'

/** The heading of a clause by its id: a group's reason names its members. */
export type TitleOf = (clause: string) => string

/** The first reason, and behind it what was added to it. */
export function clauseReasonWords(
  [first, ...added]: ClauseReasons,
  titleOf: TitleOf,
  units: UnitSystem = 'SI',
): string {
  const words = wordsOf(REASONS, first, units, titleOf)
  return [words, ...added.map((reason) => wordsOf(ADDED, reason, units, titleOf))].join('')
}

/** Notes that a reader needs even where the figures tell the outcome. */
const ALWAYS_TOLD: readonly AddedReason['code'][] = ['finished-near-limit', 'other-samples', 'late-routes']

/** What must be said beside an outcome whatever it is: without a full stop, undefined for nothing. */
export function clauseNoteWords(
  [, ...added]: ClauseReasons,
  titleOf: TitleOf,
  units: UnitSystem = 'SI',
): string | undefined {
  const told = added.filter(({ code }) => ALWAYS_TOLD.includes(code))
  if (told.length === 0) return undefined
  return told.map((reason) => wordsOf(ADDED, reason, units, titleOf).replace(/^; /, '')).join('; ')
}

const REASONS: WordsOf<ClauseParams, [units: UnitSystem, titleOf: TitleOf]> = {
  ...SCOPE_REASONS,
  ...VALUE_REASONS,
  ...STATISTIC_REASONS,
  ...RECORD_REASONS,
  'no-member-applies': () => 'no member applies',
  'by-members': ({ outcome, members, others }, _units, titleOf) => {
    const rest = others.map(({ clause, outcome: other }) => `${titleOf(clause)}: ${OF_OTHER_ROUTE[other]}`)
    return `${BY_MEMBERS[outcome]} ${listWords(members.map(titleOf), 'and')}${rest.length === 0 ? '' : `; one is enough (${rest.join('; ')})`}`
  },
}

/** Each with the sign that joins it to what stands before. */
const ADDED: WordsOf<AddedParams, [units: UnitSystem, titleOf: TitleOf]> = {
  'rule-not-agreed': ({ rule }) => `; the ${ruleName(rule)} is not agreed in writing, so judged as specified`,
  'rule-applied': ({ rule }) => `, under the ${agreedRuleName(rule)}`,
  'approval-lacking': ({ limit, evidence }) =>
    `; the outer limit, ${limitWords(limit)}, needs an approval on evidence (${evidence}); no approval is on record`,
  'approval-granted': ({ limit, by, from, evidence }) =>
    `, but is within the outer limit, ${limitWords(limit)}, approved by ${by} from ${date(from)} on evidence: ${evidence}`,
  'declaration-lacking': ({ limit }) =>
    `; the outer limit, ${limitWords(limit)}, applies where the source declares its value, and it declares none`,
  'declaration-exceeded': ({ limit, declared }) =>
    `; the declared value of ${printedUnits(declared)} does not cover it, and the outer limit, ${limitWords(limit)}, needs one that does`,
  'declaration-covers': ({ limit, declared }) =>
    `, but is within the declared value of ${printedUnits(declared)} and the outer limit, ${limitWords(limit)}`,
  'deviation-reference': ({ from, n, reference, bounds }, units) => {
    const { decimals, unit } = reference
    const said =
      bounds === undefined
        ? figureWords(reference, units)
        : plainSpaces(boundsWords(bounds, decimals, unit, units))
    return `; ${REFERENCES[from](n)} ${said}`
  },
  'rolling-mean': ({ n }) => `; the last ${n} results`,
  'estimate-of': ({ n, mean, standardDeviation, factor }, units) =>
    `; mean ${comparedWords(mean, units)}, standard deviation ${comparedWords(standardDeviation, units)}, factor ${plainNumber(factor, 3)} for ${countWords(n, 'result')}`,
  'one-of-several': ({ which, n }) => `; ${which} of ${countWords(n, 'result')}`,
  'mean-of-several': ({ n, controls }) =>
    `; mean of ${countWords(n, 'result')}${controls === undefined ? '' : ` against ${plural(controls, 'control batch', 'control batches')}`}`,
  'other-samples': ({ others }, units) =>
    `; ${listWords(
      others.map((other) => `${other.sampleKind} ${other.sample} at ${comparedWords(other, units)}`),
      'and',
    )} would not meet the limit`,
  finished: () => `; ${AS_REPORTED}`,
  'finished-among': ({ finished, n }) =>
    `; ${finished} of these ${n} ${finished === 1 ? 'is' : 'are'} ${AS_REPORTED}`,
  'finished-near-limit': ({ low, high, decimals, unit }, units) =>
    `; as written it stands for anything from ${comparedWords({ value: low, decimals, unit }, units)} to ${comparedWords({ value: high, decimals, unit }, units)}, which lies on both sides of the limit`,
  'late-routes': ({ routes }, _units, titleOf) => `; ${lateRoutesWords(routes, titleOf)} this clause`,
}

/** "Strength activity index, 28 d, overdue since 9 December 2026, can still meet": which clause is said behind it. */
export function lateRoutesWords(routes: readonly LateRoute[], titleOf: TitleOf): string {
  const named = routes.map(({ clause, since }) => `${titleOf(clause)}, ${overdueWords(readMoment(since))},`)
  return `${listWords(named, 'and')} can still meet`
}

const REFERENCES: Readonly<Record<AddedParams['deviation-reference']['from'], (n: number) => string>> = {
  preceding: (n) => `mean of ${n} preceding ${n === 1 ? 'result' : 'results'}`,
  declared: () => 'declared value',
  control: () => 'control',
}
