import { describe, expect, it } from 'vitest'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { awaitedTests } from '../../../src/core/result/awaited-test.ts'
import { plannedIndex } from '../judging/fixture.ts'

describe('awaitedTests', () => {
  it('has one entry for each property, condition and age: the one awaited longest', () => {
    const early = plannedIndex('28 d', { due: readMoment('2026-03-30'), laboratory: 'hill' })
    const tests = [
      plannedIndex('28 d', { due: readMoment('2026-04-02') }),
      early,
      plannedIndex('28 d', { condition: 'hot', due: readMoment('2026-04-01') }),
      plannedIndex('7 d', { due: readMoment('2026-03-12') }),
    ]
    expect(awaitedTests(tests).map(({ age, condition, due }) => `${age} ${condition} ${due}`)).toEqual([
      `7 d ${early.condition} 2026-03-12`,
      `28 d ${early.condition} 2026-03-30`,
      '28 d hot 2026-04-01',
    ])
  })

  it('names the index and not the mean that it is made of, and a mean that has no index', () => {
    const index = plannedIndex('28 d')
    const mean = plannedIndex('28 d', { property: 'compressive-strength' })
    expect(awaitedTests([mean, index]).map(({ property }) => property)).toEqual(['strength-activity-index'])
    expect(awaitedTests([mean]).map(({ property }) => property)).toEqual(['compressive-strength'])
  })
})
