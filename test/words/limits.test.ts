import { describe, expect, it } from 'vitest'
import { limitText, limitWords, limitsByClass } from '../../src/words/limits.ts'
import { setOf } from '../core/judging/fixture.ts'

describe('limitText', () => {
  it('writes each operator with the digits of the limit', () => {
    const of = (operator: Parameters<typeof limitText>[0]['operator'], ...written: string[]) =>
      limitText({ operator, written })
    expect(of('at-least', '70.0 %')).toBe('≥\u00a070.0\u00a0%')
    expect(of('at-most', '34 %')).toBe('≤\u00a034\u00a0%')
    expect(of('above', '1.5 %')).toBe('>\u00a01.5\u00a0%')
    expect(of('below', '18 %')).toBe('<\u00a018\u00a0%')
    expect(of('magnitude-at-most', '5 percentage points')).toBe('±\u00a05\u00a0points')
    expect(of('between', '10 %', '20 %')).toBe('10\u00a0% to 20\u00a0%')
    expect(of('report')).toBe('to be reported')
  })
})

describe('limits in words', () => {
  it('limitWords writes each operator with the digits of the limit', () => {
    const of = (operator: Parameters<typeof limitWords>[0]['operator'], ...written: string[]) =>
      limitWords({ operator, written })
    expect([
      of('at-least', '70.0 %'),
      of('at-most', '34 %'),
      of('above', '1.5 %'),
      of('below', '18 %'),
      of('between', '10 %', '20 %'),
      of('magnitude-at-most', '0.8 %'),
      of('report'),
    ]).toEqual([
      'at least 70.0 %',
      'at most 34 %',
      'above 1.5 %',
      'below 18 %',
      'between 10 % and 20 %',
      'at most 0.8 % in magnitude',
      'to be reported',
    ])
  })

  it('limitsByClass names the class of each limit, and leaves reports out', () => {
    const set = setOf(
      [{ clause: 'c', property: 'SO3', 'at-least': '1.0 %', 'at-most': { F: '5.0 %', N: '4.0 %' } }],
      {
        classes: ['F', 'N'],
      },
    )
    const [clause] = set.clauses
    expect(clause?.form === 'comparison' && limitsByClass(clause.limits)).toBe(
      'at least 1.0 % and at most 5.0 % for class F, at most 4.0 % for class N',
    )
    expect(limitsByClass([{ operator: 'report', byClass: {} }])).toBe('')
  })
})
