/** What a value is worth against its limits, and why there is none to compare, in words. */
import type {
  ComparedParams,
  ComparedSubject,
  UnderRuleParams,
  ValueParams,
} from '../core/criteria/reason.ts'
import { boundsWords, decimalsOfBounds } from './bounds.ts'
import { limitWords } from './limits.ts'
import { comparedWords, fixedDigits, numberWords, plural, unroundedWords } from './numbers.ts'
import { premiseReasonWords, statedPremisesWords } from './premises.ts'
import { type WordsOf, wordsOf } from './reason-words.ts'
import { agreedRuleName } from './rules.ts'
import { SELECTION_REASONS } from './selection-reasons.ts'
import { plainSpaces } from './sentences.ts'
import { differenceWords } from './uncertainty.ts'
import type { UnitSystem } from './unit-systems.ts'

const COMPARED: WordsOf<ComparedParams, [units: UnitSystem]> = {
  'compared-with-limit': ({ subject, compared, unrounded, met, limit }, units) => {
    const exact = unrounded === undefined ? '' : unroundedWords(unrounded, compared.decimals, '')
    const rounded = numberWords(compared.value, compared.decimals, '')
    // Digits that say no more than the rounded ones are not printed a second time.
    const isSame = exact === '' || exact === rounded || new RegExp(`^${rounded}\\.?0+$`).test(exact)
    const before = isSame ? '' : ` (${exact} before rounding)`
    return `${SUBJECTS[subject]}${comparedWords(compared, units)}${before} ${meetsWords(met)} the limit, ${limitWords(limit)}`
  },
  // In the unit of the limit beside it, whatever the site prints.
  'bounds-with-limit': ({ subject, low, high, decimals, unit, answer, limit }) => {
    const ends = { low, high }
    const said = plainSpaces(boundsWords(ends, decimalsOfBounds(ends, decimals), unit))
    return `${SUBJECTS[subject]}known only to be ${said}, which ${answer === 'cannot-decide' ? 'leaves open whether it meets' : meetsWords(answer === 'met')} the limit, ${limitWords(limit)}`
  },
  'censored-with-limit': ({ below, answer, limit }, units) =>
    `reported as below ${comparedWords(below, units)}, which ${answer === 'cannot-decide' ? 'leaves open whether it meets' : meetsWords(answer === 'met')} the limit, ${limitWords(limit)}`,
}

const SUBJECTS: Readonly<Record<ComparedSubject, string>> = {
  value: '',
  deviation: 'deviation ',
  mean: 'mean ',
  estimate: 'estimate ',
  declared: 'declared value ',
}

function meetsWords(met: boolean): string {
  return met ? 'meets' : 'does not meet'
}

/** The guard as it was applied, or the probability reached, set off from what stands before. */
function appliedWords({ unit, df, factor, guard, probability }: UnderRuleParams): string {
  const freedom =
    df === undefined ? '' : ` with ${plural(Number(fixedDigits(df, 1)), 'degree', 'degrees')} of freedom`
  if (probability !== undefined)
    return `; probability of conformity ${probabilityWords(probability)}${freedom}`
  if (guard === undefined) return ''
  const width = `; guard ${differenceWords(guard, 1, unit)}`
  // The rule itself names the factor where it is not widened for few degrees of freedom.
  return df === undefined || factor === undefined
    ? width
    : `${width}, ${numberWords(factor, 3, '')} standard uncertainties${freedom}`
}

/** Three digits, and never 0 or 1: no measurement is certain. */
function probabilityWords(probability: number): string {
  if (probability < 0.001) return 'below 0.001'
  return 0.999 < probability ? 'above 0.999' : numberWords(probability, 3, '')
}

export const VALUE_REASONS: WordsOf<ValueParams, [units: UnitSystem]> = {
  ...SELECTION_REASONS,
  ...COMPARED,
  'deemed-to-satisfy': ({ premises }) =>
    `deemed to satisfy without a test, since ${statedPremisesWords(premises)}`,
  'reported-without-limit': () => 'reported; no limit',
  'no-declared-value': () => 'the source declares no value',
  'no-uncertainty': ({ asSpecified }, units) =>
    `no uncertainty stated, which the decision rule needs; as specified, ${wordsOf(COMPARED, asSpecified, units)}`,
  'under-rule': (params) => {
    const { value, u, unit, outcome, limit, rule } = params
    const verb =
      outcome === 'meets' || outcome === 'does-not-meet'
        ? meetsWords(outcome === 'meets')
        : 'neither meets nor fails'
    return `${unroundedWords(value, 1, unit)} with a standard uncertainty of ${differenceWords(u, 1, unit)} ${verb} the limit, ${limitWords(limit)}, under the ${agreedRuleName(rule)}${appliedWords(params)}`
  },
  'no-mean-of-censored': () => 'a result known only within bounds cannot be averaged with others',
  'no-preceding-result': () => 'no preceding result of this source to compare with',
  'no-declared-reference': () => 'the source declares no value to compare with',
  'no-control-reference': () => 'no result of the control is on record to compare with',
  'no-deviation-of-censored': () => 'a result reported as below a limit of determination has no deviation',
  'no-deviation-from-zero': () => 'a relative deviation from a reference of zero is not defined',
  'band-none': () => 'in none of the bands',
  'band-found': ({ band }) => `classified as ${band}; no limit`,
  'band-not-determined': ({ because }, units) => `the band depends on ${premiseReasonWords(because, units)}`,
}
