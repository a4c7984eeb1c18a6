/** Statements at the head of a source's page: listing, margins, checks. */
import { describe, expect, it } from 'vitest'
import { readMoment } from '../../src/core/measure/moment.ts'
import { saidText } from '../../src/words/said.ts'
import {
  distanceWords,
  listingWords,
  marginWords,
  questionWords,
  yearWords,
} from '../../src/words/source-strip.ts'

const plainSpaces = (text: string) => text.replaceAll('\u00a0', ' ')

describe('marginWords', () => {
  it('says one point in the singular, and nothing else so', () => {
    const points = [
      [1, 0],
      [0.96, 0],
      [11, 0],
      [1, 1],
      [0.4, 1],
      [21, 0],
      [101, 0],
    ] as const
    expect(points.map(([margin, decimals]) => plainSpaces(marginWords(margin, decimals, '%')))).toEqual([
      '1 point',
      '1 point',
      '11 points',
      '1.0 points',
      '0.4 points',
      '21 points',
      '101 points',
    ])
  })

  it('says on which side a margin lies that is less than nothing', () => {
    expect(plainSpaces(marginWords(-1, 0, '%'))).toBe('beyond by 1 point')
    expect(plainSpaces(marginWords(-2, 0, 'd'))).toBe('beyond by 2 d')
  })
})

describe('yearWords', () => {
  const counts = { lots: 13, failed: 0, notValid: 0, pending: 2, undecided: 0, drafts: 0, diverted: null }
  const said = (withdrawn: number, withdrawnEarlierLots: number) =>
    saidText(yearWords({ ...counts, withdrawn, withdrawnEarlierLots }, 'SI'))

  it('says how many of the lots are drafts, which no count tells of', () => {
    const drafts = { ...counts, undecided: 1, drafts: 6, withdrawn: 0, withdrawnEarlierLots: 0 }
    expect(saidText(yearWords(drafts, 'SI'))).toContain(
      ', 2 pending, 1 not yet judged in full, 6 drafts in none of these counts; diverted',
    )
  })

  it('says which withdrawn lots are not among those sampled', () => {
    expect(said(0, 0)).toBe(
      '13 lots sampled, 0 failed, 0 withdrawn, 0 not valid, 2 pending; diverted: not recorded',
    )
    expect(said(2, 0)).toContain(', 2 withdrawn, 0')
    expect(said(1, 1)).toContain(', 1 withdrawn (sampled earlier), 0')
    expect(said(3, 1)).toContain(', 3 withdrawn (1 of them sampled earlier), 0')
  })
})

describe('distanceWords', () => {
  it('says on which side of its limit a mean lies, and of which it is the first', () => {
    expect(plainSpaces(distanceWords(1.285, '74.5 %'))).toBe(
      'Their mean lies 1.3 standard deviations inside 74.5 %, where rounding changes the outcome, the fewest of any limit on single results',
    )
    expect(plainSpaces(distanceWords(-29.43, null))).toBe(
      'Their mean lies 29.4 standard deviations beyond the limit, the most of any limit on single results',
    )
  })
})

describe('listingWords', () => {
  const since = readMoment('2024-05-01')
  it('says until when, else since when, else what ended it, else that nothing is on record', () => {
    const said = [
      { by: 'Varrow roads', since, to: readMoment('2027-04-30'), scope: 'Class F' },
      { by: 'Varrow roads', since },
      { by: 'Varrow roads', since, ended: 'approval ended on 3 May 2025' },
      null,
    ].map((listing) => plainSpaces(listingWords(listing)))
    expect(said).toEqual([
      'Listed by Varrow roads to 30 April 2027: Class F',
      'Listed by Varrow roads since 1 May 2024',
      'Varrow roads: approval ended on 3 May 2025',
      'No listing on record',
    ])
  })
})

describe('questionWords', () => {
  const expectedByChance = { low: 0, expected: 0.4, high: 2 }
  const checks = { run: 30, lots: 36, looks: [], tests: 21, expectedByChance }
  it('says how many are open, how old the oldest is, and what chance alone would raise', () => {
    expect(saidText(questionWords({ count: 3, oldestDays: 147, undated: 1, checks }))).toBe(
      '3; the oldest could have been asked 147 days ago (1 rests on many records and has no day). 30 checks on 36 lots; about 0.4 flags expected by chance (0 to 2) in 21 tests, each at its own level',
    )
    expect(saidText(questionWords({ count: 0, oldestDays: null, undated: 0, checks }))).toMatch(
      /^0\. 30 checks/,
    )
  })

  it('counts no checks where findings are not published', () => {
    expect(saidText(questionWords(null))).toBe('Findings are not published on this site')
  })
})
