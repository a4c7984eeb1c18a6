/** What a statistic over several results is worth against its limits, in words. */
import type { StatisticParams } from '../core/criteria/reason.ts'
import { limitWords } from './limits.ts'
import { comparedWords, countWords, numberWords } from './numbers.ts'
import type { WordsOf } from './reason-words.ts'
import type { UnitSystem } from './unit-systems.ts'

export const STATISTIC_REASONS: WordsOf<StatisticParams, [units: UnitSystem]> = {
  'no-statistic-of-censored': () =>
    'one of the results is known only within bounds, so no statistic of them can be computed',
  'too-few-results': ({ n, atLeast }) => `${countWords(n, 'result')} of the ${atLeast} that the clause needs`,
  'results-beyond-limit': ({ beyond, n, allowed, limits }) =>
    `${beyond} of ${countWords(n, 'result')} beyond the limit, ${limits.map(limitWords).join(' and ')}; at most ${allowed} allowed`,
  'share-within-limits': ({ percent, leastPercent, n, mean, standardDeviation, limits }, units) =>
    `${numberWords(percent, 2, '%')} of results are estimated to be ${limits.map(limitWords).join(' and ')}; mean ${comparedWords(mean, units)}, standard deviation ${comparedWords(standardDeviation, units)} of ${countWords(n, 'result')}; at least ${leastPercent} % required`,
  variability: ({ movingAverage, standardDeviation, n, testing, decimals, unit }, units) => {
    const words = (value: number) => numberWords(value, decimals, unit, units)
    return [
      movingAverage === null
        ? 'fewer than five results for a moving average'
        : `moving average of five ${words(movingAverage)}`,
      `standard deviation ${words(standardDeviation)} of ${countWords(n, 'result')}`,
      testing === null
        ? 'no duplicate tests from which to separate the testing error'
        : `testing error ${words(testing.error)} from ${countWords(testing.pairs, 'pair')}; corrected for it ${words(testing.corrected)}`,
    ].join('; ')
  },
}
