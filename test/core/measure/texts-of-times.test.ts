import { describe, expect, it, vi } from 'vitest'
import { Age, readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { isTime, withTexts } from '../../../src/core/measure/texts-of-times.ts'

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

describe('isTime', () => {
  it('knows moments and ages, those of another copy of their classes too, and no plain data', async () => {
    // Pages are built with a copy of their own; the edition that they draw was computed with another.
    vi.resetModules()
    const copy = await import('../../../src/core/measure/age.ts')
    const other = copy.readAge('7 d')
    expect(other).not.toBeInstanceOf(Age)
    expect([other, readAge('7 d'), readMoment('2026-03-11')].map(isTime)).toEqual([true, true, true])
    expect([{ text: '7 d' }, { written: '7 h', kind: 'duration' }, [], new Map()].map(isTime)).toEqual([
      false,
      false,
      false,
      false,
    ])
    expect(withTexts({ age: other })).toEqual({ age: '7 d' })
  })
})
