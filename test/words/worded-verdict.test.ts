import { readAge } from '../../src/core/measure/age.ts'
import { readMoment } from '../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import type { Criterion } from '../../src/core/criteria/criterion.ts'
import { bestClass, judge } from '../../src/core/judging/verdict.ts'
import type { WrittenClause } from '../../src/records/criteria/written-criterion.ts'
import {
  bestClassWords,
  decidedByWords,
  verdictSentences,
  wordedVerdict,
} from '../../src/words/worded-verdict.ts'
import {
  clauseOf,
  evidenceOf,
  index,
  plannedIndex,
  result,
  setOf,
  statedUncertainty,
} from '../core/judging/fixture.ts'

const loi: WrittenClause = { clause: 'loi', property: 'loss-on-ignition', 'at-most': '6.0 %' }
const activity: WrittenClause = {
  clause: 'sai',
  property: 'strength-activity-index',
  condition: 'c311',
  age: readAge('28 d'),
  'at-least': '75 %',
}
const titleOf = (id: string) => (id === 'c311' ? '20 %, 23 °C' : id)

describe('wordedVerdict', () => {
  it('wordedVerdict heads each clause, with the reader’s name of its condition', () => {
    const set = setOf([{ clause: 'g', 'any-of': [activity, loi] }])
    const worded = wordedVerdict(judge(set, evidenceOf([index('28 d', 80)])), set, titleOf)
    expect(['g', 'sai', 'loi'].map((id) => clauseOf(worded, id).title)).toEqual([
      'Strength activity index, 20 %, 23 °C, 28 d or Loss on ignition',
      'Strength activity index, 20 %, 23 °C, 28 d',
      'Loss on ignition',
    ])
    expect(clauseOf(worded, 'g').reason).toBe(
      'met by Strength activity index, 20 %, 23 °C, 28 d; one is enough (Loss on ignition: not reported)',
    )
  })

  it('wordedVerdict words doubt and what the uncertainty rests on, and keeps the numbers', () => {
    const set = setOf([activity])
    const evidence = evidenceOf([index('28 d', 80)], { uncertaintyOf: () => statedUncertainty(2, 12) })
    expect(clauseOf(wordedVerdict(judge(set, evidence), set, titleOf), 'sai')).toMatchObject({
      uncertainty: { u: 2, df: 12, basis: 'stated' },
      doubt: '5.5 points above 74.5 % (the limit before rounding), 2.8 standard uncertainties',
    })
  })

  it('wordedVerdict says what a release waits for', () => {
    const set = setOf([loi, activity], { release: [{ clause: 'loi' }] })
    const evidence = evidenceOf([result('loss-on-ignition', 2)], {
      planned: [plannedIndex('28 d', { due: readMoment('2026-04-29') })],
    })
    expect(wordedVerdict(judge(set, evidence), set, titleOf).release).toBe(
      'conditional on Strength activity index, 20 %, 23 °C, 28 d, due 29\u00a0April 2026',
    )
  })

  it('wordedVerdict leaves no reason behind as data', () => {
    const set = setOf([loi])
    const worded = wordedVerdict(judge(set, evidenceOf([])), set, titleOf)
    expect(worded.clauses[0]).not.toHaveProperty('reasons')
    expect(worded.reasons).toEqual([
      'results not reported for the only clause that applies',
      'Loss on ignition: no result is reported',
    ])
  })

  it('wordedVerdict refuses a verdict under another set', () => {
    const verdict = judge(setOf([loi]), evidenceOf([]))
    expect(() => wordedVerdict(verdict, setOf([activity]), titleOf)).toThrow(RangeError)
    expect(() =>
      verdictSentences(
        { reasons: [{ code: 'decided-by', params: { clause: 'sai' } }], clauses: verdict.clauses },
        setOf([loi, activity]),
        titleOf,
      ),
    ).toThrow(RangeError)
  })
})

describe('decidedByWords', () => {
  it('decidedByWords names the clauses that decided', () => {
    const set = setOf([loi, activity])
    expect(decidedByWords(judge(set, evidenceOf([])), set, titleOf)).toBe(
      'Loss on ignition; Strength activity index, 20 %, 23 °C, 28 d',
    )
  })
})

describe('bestClassWords', () => {
  const set: Criterion = setOf([{ ...loi, 'at-most': { A: '2.0 %', B: '4.0 %' } }], {
    classes: ['A', 'B'],
    'best-first': 'yes',
  })
  const words = (value: number) =>
    bestClassWords(bestClass(set, evidenceOf([result('loss-on-ignition', value)])), set, titleOf)

  it('bestClassWords names the best class met, and what stands in the way of the next', () => {
    expect([words(2), words(3), words(5)]).toEqual([
      'best class met: A',
      'best class met: B; in the way of class A: Loss on ignition: 3.0 % does not meet the limit, at most 2.0 %',
      'no class is met; in the way of class B: Loss on ignition: 5.0 % does not meet the limit, at most 4.0 %',
    ])
  })

  it('bestClassWords has nothing to say of a set without an order of merit', () => {
    expect(bestClassWords(null, set, titleOf)).toBeUndefined()
  })
})
