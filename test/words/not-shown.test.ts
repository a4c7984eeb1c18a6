import { describe, expect, it } from 'vitest'
import { notShownWords } from '../../src/words/not-shown.ts'

describe('notShownWords', () => {
  it.each([
    [{ code: 'too-few', params: { n: 1, needed: 8 } }, 'not computed: 1 result so far, 8 needed'],
    [
      { code: 'too-few-batches', params: { batches: 3, needed: 8 } },
      'not computed: 3 control batches so far, 8 needed; lots that share one count as one',
    ],
    [
      { code: 'too-few-independent', params: { n: 17, effectiveN: 2.31, needed: 4 } },
      'not computed: neighbouring results are so alike that 17 results count as 2.3 independent ones, 4 needed',
    ],
    [
      { code: 'known-within-bounds', params: { n: 2 } },
      'not computed: 2 results are known only within bounds',
    ],
    [
      { code: 'out-of-control', params: { signals: 2 } },
      'withheld: the control chart has 2 signals, more than chance explains, so that one mean and one scatter do not describe the source',
    ],
    [
      { code: 'not-as-estimated', params: { outside: 1, n: 17, percentWithin: 99.97 } },
      'withheld: 1 of 17 results lies beyond the limit, where mean and scatter alone would put 100.0 % inside: the results do not follow one normal distribution',
    ],
    [
      { code: 'limit-not-reached', params: { withinLots: 11 } },
      'no limit is reached within 11 lots, half of the span that the line was fitted to',
    ],
  ] as const)('words %j', (reason, words) => expect(notShownWords(reason)).toBe(words))
})
