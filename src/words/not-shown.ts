/** Why a figure of a history is not shown. */
import type { NotShown, NotShownParams } from '../core/history/not-shown.ts'
import { countWords, number, plural } from './numbers.ts'

type Sentences = {
  readonly [Code in keyof NotShownParams]: (params: NotShownParams[Code]) => string
}

const SENTENCES: Sentences = {
  'too-few': ({ n, needed }) => `not computed: ${countWords(n, 'result')} so far, ${needed} needed`,
  'too-few-batches': ({ batches, needed }) =>
    `not computed: ${plural(batches, 'control batch', 'control batches')} so far, ${needed} needed; lots that share one count as one`,
  'too-few-independent': ({ n, effectiveN, needed }) =>
    `not computed: neighbouring results are so alike that ${countWords(n, 'result')} count as ${number(effectiveN, 1)} independent ones, ${needed} needed`,
  'too-few-a-month': ({ needed }) => `not computed: no calendar month has ${needed} results`,
  'too-short': ({ months, needed }) =>
    `not computed: the results span ${plural(months, 'month', 'months')}, ${needed} needed`,
  'known-within-bounds': ({ n }) =>
    `not computed: ${countWords(n, 'result')} ${n === 1 ? 'is' : 'are'} known only within bounds`,
  'no-scatter': () => 'not computed: the results are all alike',
  'no-limit': () => 'no limit for a single result in the governing criterion',
  'out-of-control': ({ signals }) =>
    `withheld: the control chart has ${plural(signals, 'signal', 'signals')}, more than chance explains, so that one mean and one scatter do not describe the source`,
  'not-as-estimated': ({ outside, n, percentWithin }) =>
    `withheld: ${outside} of ${countWords(n, 'result')} ${outside === 1 ? 'lies' : 'lie'} beyond the limit, where mean and scatter alone would put ${number(percentWithin, 1)} % inside: the results do not follow one normal distribution`,
  'diverted-without-results': ({ entries }) =>
    `withheld: material was diverted ${plural(entries, 'time', 'times')} without a result on record, so that the lots certified do not speak for all of it`,
  'no-testing-error': () => 'neither duplicate tests nor a stated repeatability on record',
  'single-duplicate': () =>
    'one pair of duplicate tests alone, which gives no testing error, and no stated repeatability on record',
  'no-trend': () => 'none shown',
  'limit-not-reached': ({ withinLots }) =>
    `no limit is reached within ${plural(withinLots, 'lot', 'lots')}, half of the span that the line was fitted to`,
  'no-control': () => 'no control mortar is behind the results',
}

/** A phrase that stands by itself or after a colon, without a full stop. */
export function notShownWords(reason: NotShown): string {
  return (SENTENCES[reason.code] as (params: NotShown['params']) => string)(reason.params)
}
