import { describe, expect, it } from 'vitest'
import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { withTexts } from '../../../src/core/measure/texts-of-times.ts'

describe('withTexts', () => {
  it('puts a text in place of every moment and age, at any depth, and keeps the rest', () => {
    const data = {
      age: readAge('28 d'),
      n: 3,
      none: null,
      list: [{ tested: readMoment('2026-03-11T09:20') }, 'as it was'],
    }
    expect(withTexts(data)).toEqual({
      age: '28 d',
      n: 3,
      none: null,
      list: [{ tested: '2026-03-11T09:20' }, 'as it was'],
    })
  })
  it('gives what JSON makes of the data', () => {
    const data = { steps: [[readMoment('2026-01-19'), 2.5, 4] as const] }
    expect(withTexts(data)).toEqual(JSON.parse(JSON.stringify(data)))
  })
})
