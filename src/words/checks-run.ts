/** How much the audit checks looked at, and how many of their flags chance alone is expected to raise. */
import type { ChecksRun } from '../core/checks/checked.ts'
import { countWords, shortNumber } from './numbers.ts'

/**
 * "30 checks on 36 lots; about 1.4 flags expected by chance (0 to 4) in 57 tests, each at its own level"; without a full
 * stop.
 */
export function checksRunWords({ run, lots, tests, expectedByChance }: ChecksRun): string {
  const { low, expected, high } = expectedByChance
  const checks = `${countWords(run, 'check')} on ${countWords(lots, 'lot')}`
  if (run === 0) return 'nothing on record to check yet'
  if (tests === 0) return `${checks}, none of them a statistical test, so chance alone raises no flag`
  if (high === 0)
    return `${checks}, with ${countWords(tests, 'statistical test')} among them, of which chance alone should flag none`
  const about = `about ${shortNumber(expected, 1)} flags expected by chance (${low} to ${high})`
  return `${checks}; ${about} in ${tests === 1 ? '1 test at its own level' : `${tests} tests, each at its own level`}`
}
