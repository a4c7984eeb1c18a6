import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import type { Comparison } from '../../../src/core/criteria/criterion.ts'
import type { Evidence } from '../../../src/core/evidence/evidence.ts'
import {
  lastResults,
  resultsOfPeriod,
  statisticFigure,
  tooFew,
} from '../../../src/core/judging/series-of-results.ts'
import { evidenceOf, history, result, setOf } from './fixture.ts'

const criterion = setOf([{ clause: 'c', property: 'density', 'at-least': '2.0 g/cm3' }])
const clause = criterion.clauses[0] as Comparison
const comparison = (more: Partial<Evidence>) => ({
  criterion,
  clause,
  limits: [],
  lotClass: 'F',
  evidence: evidenceOf([], more),
})
const own = result('density', 2.4)

describe('lastResults', () => {
  const preceding = history('density', [2.1, 2.2, 2.3])

  it('lastResults puts the lot’s own last, and no more before it than asked for', () => {
    expect(lastResults(comparison({ preceding }), own, 3)).toMatchObject({
      values: [2.2, 2.3, 2.4],
      lots: ['s/L2', 's/L3'],
    })
    expect(lastResults(comparison({ preceding }), own, 9).values).toEqual([2.1, 2.2, 2.3, 2.4])
    expect(lastResults(comparison({ preceding }), own, 1).values).toEqual([2.4])
  })
})

describe('resultsOfPeriod', () => {
  it('resultsOfPeriod asks for the results of so many days by the result’s method', () => {
    const asked: unknown[] = []
    const period: Evidence['period'] = (...args) => {
      asked.push(args)
      return [{ lot: 's/a', sampled: readMoment('2026-01-01'), value: 2.1 }]
    }
    const found = resultsOfPeriod(comparison({ period }), { ...own, method: 'ASTM C188' }, 365)
    expect([found.values, asked]).toEqual([
      [2.1, 2.4],
      [['density', undefined, undefined, 'ASTM C188', 365, undefined]],
    ])
    expect(resultsOfPeriod(comparison({}), own, 365).values).toEqual([2.4])
  })
})

describe('parts of a statistic', () => {
  it('statisticFigure has one decimal more than the property is printed with', () => {
    expect(statisticFigure(comparison({}), 2.4)).toEqual({ value: 2.4, decimals: 3, unit: 'g/cm3' })
  })

  it('tooFew says how many there are of how many', () => {
    expect(tooFew(3, 5)).toEqual({
      outcome: 'insufficient-history',
      reasons: [{ code: 'too-few-results', params: { n: 3, atLeast: 5 } }],
    })
  })
})
