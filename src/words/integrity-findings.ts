/** What the checks of integrity found, in words. */
import type { IntegrityParams } from '../core/checks/integrity-findings.ts'
import { figureWords, plural, shortNumber } from './numbers.ts'
import { propertyWords } from './property-names.ts'
import type { WordsOf } from './reason-words.ts'

export const INTEGRITY_SENTENCES: WordsOf<IntegrityParams> = {
  'bunched-at-limit': ({
    source,
    criterion,
    clause,
    property,
    justInside,
    expectedInside,
    n,
    edge,
    unit,
    decimals,
  }) =>
    `${justInside} of ${n} results of ${source} ${property === null ? '' : `(${propertyWords({ property })}) `}lie just inside the limit of ${criterion}, clause ${clause}, which rounding puts at ${figureWords({ value: edge, decimals: decimals + 1, unit })}; about ${shortNumber(expectedInside, 1)} would be expected from those farther inside`,
}

export const INTEGRITY_EVIDENCE: WordsOf<IntegrityParams, [], string[]> = {
  'bunched-at-limit': ({ justOutside, window, unit, decimals, p, diverted }) => [
    `just inside and just outside mean within ${figureWords({ value: window, decimals: decimals + 1, unit: unit === '%' ? 'percentage points' : unit })}; just outside: ${justOutside}`,
    `chance of so many: ${p < 0.001 ? 'below 0.1 %' : `${shortNumber(100 * p, 1)} %`}, against a normal distribution fitted to the results farther inside`,
    `diverted failing lots also cause this; ${diverted === 0 ? 'no diversion is on record' : `${plural(diverted, 'diversion is', 'diversions are')} on record`}`,
  ],
}
