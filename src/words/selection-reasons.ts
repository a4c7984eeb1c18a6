/** Why there is no result to judge, in words. */
import type { SelectionParams, SelectionReason } from '../core/criteria/selection.ts'
import { readMoment } from '../core/measure/moment.ts'
import { listWords } from './sentences.ts'
import { type WordsOf, wordsOf } from './reason-words.ts'
import { resultReasonIn } from './result-reasons.ts'
import { dueWords, overdueWords } from './standing.ts'
import type { UnitSystem } from './unit-systems.ts'

export const SELECTION_REASONS: WordsOf<SelectionParams, [units: UnitSystem]> = {
  'result-awaited': ({ due }) => `test recorded, result ${dueWords(readMoment(due))}`,
  'result-overdue': ({ since }) => `result ${overdueWords(readMoment(since))}`,
  'other-methods': ({ method, used }) =>
    `only results by ${method} count, but those on record are by ${listWords(
      used.map((one) => one ?? 'an unstated method'),
      'and',
    )}`,
  'other-duties': ({ duty, used }) =>
    duty === null
      ? 'only verification samples are on record, and they check the producer’s results'
      : `only ${duty} samples count, and those on record are ${listWords(used, 'and')} samples`,
  'no-readings': () =>
    'only results computed from the readings of specimens count, and those on record are as reported by the laboratory',
  'no-result': () => 'no result is reported',
  'test-not-valid': ({ reasons }, units) =>
    notValid([...new Set(reasons.map((reason) => resultReasonIn(reason, units)))]),
}

export function selectionWords(reason: SelectionReason, units: UnitSystem): string {
  return wordsOf(SELECTION_REASONS, reason, units)
}

/** Several results that fail for one reason say it once. */
function notValid(reasons: readonly string[]): string {
  return reasons.length === 0
    ? 'the test is not valid'
    : `the test is not valid: ${listWords(reasons, 'and')}`
}
