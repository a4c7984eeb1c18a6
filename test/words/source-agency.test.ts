/** The statement on an agency's samples at the head of a source's page. */
import { describe, expect, it } from 'vitest'
import { saidText } from '../../src/words/said.ts'
import { type AgencyCounts, agencyWords, comparedWords } from '../../src/words/source-agency.ts'

const COUNTS: AgencyCounts = {
  independent: 4,
  means: { differ: 3, of: 6, level: 0.01 },
  split: 5,
  beyond: 1,
  opposite: { independent: 1, split: 1 },
  difference: { property: 'loss-on-ignition', age: null, mean: 0.552, interval: { low: 0.438, high: 0.666 } },
  compared: 6,
  biased: ['loss-on-ignition'],
}
const said = (counts: AgencyCounts | null) => saidText(agencyWords(counts)).replaceAll('\u00a0', ' ')
const rest = (counts: AgencyCounts) => saidText(comparedWords(counts))

describe('agencyWords', () => {
  it('names the one property whose mean difference it states', () => {
    expect(said(COUNTS)).toBe(
      '4 independent: means differ in 3 of 6 tests at 1 %; 5 split; 1 beyond the precision limit; mean difference of splits, loss on ignition, +0.55 ± 0.11 points (agency less producer, 95 % interval); 2 on opposite sides of a limit (1 independent, 1 split)',
    )
  })

  it('names the age of a test that has one', () => {
    const difference = {
      property: 'strength-activity-index',
      age: '7 d',
      mean: -1.8,
      interval: null,
    } as const
    expect(said({ ...COUNTS, difference })).toContain('strength activity index at 7 d, −')
  })

  it('says that no precision limit is on record, that there are no splits, or that nothing is published', () => {
    expect(said({ ...COUNTS, beyond: null })).toContain('no precision limit on record')
    expect(said({ ...COUNTS, beyond: null, compared: 0, difference: null })).toContain(
      '5 split; none compared',
    )
    const none = { ...COUNTS, split: 0, beyond: null, means: null, difference: null }
    expect(said({ ...none, independent: 0 })).toBe('0 independent, 0 split')
    expect(said({ ...none, opposite: { independent: 2, split: 0 } })).toBe(
      '4 independent, 0 split; 2 on opposite sides of a limit (2 independent, 0 split)',
    )
    expect(said(null)).toBe('Verification results are not published on this site')
  })
})

describe('comparedWords', () => {
  it('counts the other properties, and those with a bias, so that one difference does not stand for all', () => {
    expect(rest(COUNTS)).toBe(
      '5 other properties in D; of 6 compared, 1 with a bias shown at 1 %: loss on ignition.',
    )
    expect(rest({ ...COUNTS, biased: [] })).toBe(
      '5 other properties in D; of 6 compared, none with a bias shown at 1 %.',
    )
  })

  it('says nothing of bias where findings are not published, and counts a single other property as one', () => {
    expect(rest({ ...COUNTS, compared: 2, biased: null })).toBe('1 other property in D.')
    expect(rest({ ...COUNTS, compared: 1, biased: null })).toBe('No other property compared.')
    expect(rest({ ...COUNTS, difference: null })).toBe('')
  })
})
