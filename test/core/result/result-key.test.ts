import { readAge } from '../../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import { resultKey } from '../../../src/core/result/result-key.ts'

describe('resultKey', () => {
  it('joins property, condition, age, method, laboratory and sample in this order', () => {
    expect(
      resultKey({
        sample: 'C',
        laboratory: 'north',
        method: 'ASTM C311',
        age: readAge('28 d'),
        condition: 'c311',
        property: 'strength-activity-index',
      }),
    ).toBe('strength-activity-index|c311|28 d|ASTM C311|north|C')
  })
  it('leaves the place of what is not known empty', () => {
    expect(resultKey({ property: 'CaO', laboratory: 'north', sample: 'C' })).toBe('CaO||||north|C')
  })
})
