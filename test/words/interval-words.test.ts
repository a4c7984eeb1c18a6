import { describe, expect, it } from 'vitest'
import {
  intervalMethodWords,
  intervalScopeWords,
  intervalWords,
  leveledIntervalWords,
} from '../../src/words/interval-words.ts'

describe('intervalWords', () => {
  it.each([
    [{ shape: 'bounded', low: 73.94, high: 79.06 }, 1, '73.9 % to 79.1 %'],
    [{ shape: 'above', low: 73.9, high: null }, 0, 'above 74 %'],
    [{ shape: 'below', low: null, high: 79.1 }, 1, 'below 79.1 %'],
    [{ shape: 'outside', low: -3, high: 4 }, 1, 'unbounded: everything except −3.0 % to 4.0 %'],
    [{ shape: 'all', low: null, high: null }, 1, 'unbounded: the readings rule out no ratio'],
  ] as const)('says %o with %d decimals', (interval, decimals, words) => {
    expect(intervalWords(interval, decimals)).toBe(words)
  })
})

describe('intervalMethodWords', () => {
  it('names the method with its degrees of freedom, whole ones where they are pooled', () => {
    expect(intervalMethodWords({ method: 'fieller', df: 3.94 })).toBe(
      'Fieller, unequal variances, 3.9 degrees of freedom',
    )
    expect(intervalMethodWords({ method: 'log-scale', df: 4 })).toBe(
      'log scale, one pooled coefficient of variation, 4 degrees of freedom',
    )
  })
  it('says beside it what the interval leaves out', () => {
    expect(intervalScopeWords({ method: 'log-scale', df: 4 })).toBe(
      'log scale, one pooled coefficient of variation, 4 degrees of freedom, within this batch only',
    )
  })
})

describe('leveledIntervalWords', () => {
  const interval = {
    level: 0.95,
    method: 'fieller',
    df: 4,
    shape: 'bounded',
    low: 73.94,
    high: 79.1,
  } as const

  it('leveledIntervalWords names the level and what is left out', () => {
    expect(leveledIntervalWords(interval, 1)).toBe('95 %: 73.9 % to 79.1 %, within this batch only')
  })

  it('leveledIntervalWords states no interval where no specimen differs from another', () => {
    expect(leveledIntervalWords({ ...interval, low: 80, high: 80 }, 1)).toBe(
      'no scatter between specimens: no interval',
    )
  })
})
