/** How much the audit checks looked at, and how many of their flags chance alone is expected to raise. */
import type { ChecksRun } from '../core/checks/checked.ts'
import { countWords, shortNumber } from './numbers.ts'

/** "30 checks on 36 lots; about 0.4 flags expected by chance (0 to 2)"; without a full stop. */
export function checksRunWords({ run, lots, expectedByChance }: ChecksRun): string {
  const { low, expected, high } = expectedByChance
  const checks = `${countWords(run, 'check')} on ${countWords(lots, 'lot')}`
  return expected === 0
    ? `${checks}; chance alone raises none of them`
    : `${checks}; about ${shortNumber(expected, 1)} flags expected by chance (${low} to ${high})`
}
