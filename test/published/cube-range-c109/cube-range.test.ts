import { describe, expect, it } from 'vitest'
import { judgeBatch } from '../../../src/core/mortar/batch-range.ts'
import { mean, range } from '../../../src/core/statistics/descriptive.ts'
import { onlyCase } from '../values.ts'

// ASTM C109, section 13, example in note 12, read second-hand: the range counts, not the distance from the mean.
describe('judgeBatch on the worked example of ASTM C109', () => {
  const { inputs, expected, tolerance } = onlyCase('cube-range-c109')
  const cubes = inputs['cubes'] as number[]
  const [ofThree, ofTwo] = [inputs['percent_of_three'] as number, inputs['percent_of_two'] as number]
  const batch = judgeBatch(cubes, [
    { of: 3, rangePercent: ofThree },
    { of: 2, rangePercent: ofTwo },
  ])
  const agrees = (value: number, key: string) => {
    expect(Math.abs(value - (expected[key] as number))).toBeLessThanOrEqual(tolerance['abs'] ?? 0)
  }

  it('finds a range of 4.0 about a mean of 33.3 where 2.9 is allowed', () => {
    agrees(mean(cubes), 'mean_of_three')
    agrees(range(cubes), 'range_of_three')
    agrees((mean(cubes) * ofThree) / 100, 'allowed_of_three')
    expect(batch.steps[0]?.kept).toBe(false)
  })

  it('drops 31.0 and keeps the other two, whose mean is 34.5 and whose range may be 2.6', () => {
    expect(batch).toMatchObject({ valid: true, dropped: [expected['dropped']] })
    agrees(batch.mean, 'mean')
    agrees((batch.mean * ofTwo) / 100, 'allowed_of_two')
    expect(batch.steps[1]?.kept).toBe(true)
  })
})
