import { readAge } from '../../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import { latestAges } from '../../../src/core/history/latest-ages.ts'

describe('latestAges', () => {
  it('takes each index and condition once, at its latest age by number and not by text', () => {
    const index = (condition: string, age: string) => ({
      property: 'strength-activity-index' as const,
      condition,
      age: readAge(age),
    })
    expect(
      latestAges([index('warm', '7 d'), index('warm', '28 d'), index('cool', '7 d'), index('warm', '3 d')]),
    ).toEqual([index('cool', '7 d'), index('warm', '28 d')])
  })

  it('leaves out what is no activity index, or has no condition or age', () => {
    expect(
      latestAges([
        { property: 'density' },
        { property: 'compressive-strength', condition: 'warm', age: readAge('28 d') },
        { property: 'resistivity-index', condition: 'warm' },
      ]),
    ).toEqual([])
  })
})
