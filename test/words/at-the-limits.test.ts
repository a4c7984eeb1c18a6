/** Sentences on the results near a limit. */
import { describe, expect, it } from 'vitest'
import type { AtLimit } from '../../src/core/checks/at-the-limits.ts'
import { saidText } from '../../src/words/said.ts'
import { atLimitsSaid, atLimitWords } from '../../src/words/at-the-limits.ts'

const LIMIT: AtLimit = {
  criterion: 'a-set',
  clause: 'sai-7d',
  property: 'strength-activity-index',
  condition: null,
  age: '7 d',
  unit: '%',
  decimals: 0,
  limit: { operator: 'at-least', written: ['75 %'] },
  side: 'low',
  edge: 74.5,
  width: 1.5,
  values: Array.from({ length: 40 }, (_, step) => 73 + step / 4),
  admitted: 11,
  refused: 0,
  fitted: { mean: 77, standardDeviation: 3, admitted: 6.24, refused: 4.1, probability: 0.0001 },
  shown: 'bunched',
}
const said = (limit: AtLimit, diverted: number | null = 3) =>
  atLimitWords(limit, diverted, 'SI').map((text) => text.replaceAll('\u00a0', ' '))

describe('atLimitWords', () => {
  it('says that results are bunched, on what grounds, where the edge is, and what else causes it', () => {
    expect(said(LIMIT)).toEqual([
      'Bunched just inside the limit: of 40 results, 11 within 1.5 points inside and 0 within as much beyond; 6.2 and 4.1 expected from a normal density fitted to the others.',
      'Limit at least 75 %; before rounding the outcome changes at 74.5 %.',
      'Diverted failing lots also cause this: 3 recorded.',
    ])
    expect(said(LIMIT, null)[2]).toBe(
      'Diverted failing lots also cause this: no ledger of diverted material is kept.',
    )
  })

  it('says that none is shown, or that too few lie near to say, and leaves diversion out', () => {
    expect(said({ ...LIMIT, shown: 'not-bunched' })[0]).toMatch(/^No bunching shown: of 40 results/)
    expect(said({ ...LIMIT, shown: 'too-few', fitted: null })).toHaveLength(2)
    expect(said({ ...LIMIT, shown: 'too-few', fitted: null })[0]).toBe(
      'Too few near the limit to say: of 40 results, 11 within 1.5 points inside and 0 within as much beyond.',
    )
  })
})

describe('atLimitsSaid', () => {
  const says = (...shown: AtLimit['shown'][]) =>
    saidText(atLimitsSaid(shown.map((one, place) => ({ title: `Density ${place}`, shown: one }))))
  it('names the limits with bunching, else says that there is none, or too little to tell', () => {
    expect(says('too-few', 'bunched')).toBe('At the limits: bunched just inside, density 1. ')
    expect(says('too-few', 'not-bunched')).toBe('At the limits: no bunching shown. ')
    expect(says('too-few', 'too-few')).toBe('At the limits: too few results near to say. ')
    expect(says()).toBe('')
  })

  it('leads to the histograms', () => {
    expect(atLimitsSaid([{ title: 'Density', shown: 'bunched' }])[0]?.part).toBe('at-the-limits')
  })
})
