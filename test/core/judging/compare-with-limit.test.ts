import { describe, expect, it } from 'vitest'
import { compareWithLimit } from '../../../src/core/judging/compare-with-limit.ts'
import { isFault, type Quantity, type QuantityKind, readQuantity } from '../../../src/core/measure/units.ts'

function quantity(text: string, kind: QuantityKind = 'fraction'): Quantity {
  const read = readQuantity(text, kind)
  if (isFault(read)) throw new Error(`${text} is no ${kind}`)
  return read
}
type Plain = 'at-least' | 'at-most' | 'above' | 'below' | 'magnitude-at-most'
const answer = (operator: Plain, value: number, limit: string, censored?: 'below') =>
  compareWithLimit({ value, ...(censored === undefined ? {} : { censored }) }, operator, [quantity(limit)])
    .answer

describe('compareWithLimit', () => {
  it('compareWithLimit lets a value on the very limit meet an inclusive limit and not a strict one', () => {
    expect(answer('at-least', 75, '75 %')).toBe('met')
    expect(answer('at-most', 6, '6.0 %')).toBe('met')
    expect(answer('above', 18, '18.0 %')).toBe('not-met')
    expect(answer('below', 18, '18.0 %')).toBe('not-met')
    expect(answer('magnitude-at-most', -0.8, '0.8 %')).toBe('met')
  })

  it('compareWithLimit rounds the value to the digits of the limit as written, and says what it compared', () => {
    expect(compareWithLimit({ value: 74.5 }, 'at-least', [quantity('75 %')])).toEqual({
      answer: 'not-met',
      compared: 74,
      decimals: 0,
      shown: 74,
      shownDecimals: 0,
      shownUnit: '%',
      shownAsStored: true,
    })
    expect(answer('at-least', 74.6, '75 %')).toBe('met')
    expect(answer('at-least', 74.6, '75.0 %')).toBe('not-met')
    expect(answer('above', 18.04, '18.0 %')).toBe('not-met')
    expect(answer('above', 18.04, '18.00 %')).toBe('met')
    expect(answer('magnitude-at-most', -0.84, '0.8 %')).toBe('met')
    expect(answer('magnitude-at-most', -0.86, '0.8 %')).toBe('not-met')
  })

  it('compareWithLimit uses the resolution in place of the digits', () => {
    expect(compareWithLimit({ value: 5.04 }, 'at-most', [quantity('5 %')], 0.1)).toMatchObject({
      answer: 'met',
      compared: 5,
    })
    expect(compareWithLimit({ value: 5.06 }, 'at-most', [quantity('5 %')], 0.1)).toMatchObject({
      answer: 'not-met',
      compared: 5.1,
    })
    expect(compareWithLimit({ value: 5.06 }, 'at-most', [quantity('5 %')])).toMatchObject({
      answer: 'met',
      compared: 5,
    })
  })

  it('compareWithLimit rounds in the unit that the limit is written in and answers in the stored unit', () => {
    // 34.4737864 MPa is 5000 psi; the limit's own digits are whole psi.
    const limit = quantity('5000 psi', 'stress')
    expect(compareWithLimit({ value: 34.4725 }, 'at-least', [limit])).toMatchObject({
      answer: 'met',
      shown: 5000,
      shownDecimals: 0,
    })
    const under = compareWithLimit({ value: 34.46 }, 'at-least', [limit])
    expect(under).toMatchObject({ answer: 'not-met', shown: 4998, decimals: 3 })
    expect(under.compared).toBeCloseTo(34.46, 3)
    expect(compareWithLimit({ value: 50 }, 'at-least', [quantity('5.0 kohm cm', 'resistivity')]).answer).toBe(
      'met',
    )
  })

  it('compareWithLimit between includes both ends and shows the end that decides', () => {
    const limits = [quantity('2.0 %'), quantity('7.0 %')]
    for (const value of [2, 4, 7, 1.95, 7.05])
      expect(compareWithLimit({ value }, 'between', limits).answer).toBe('met')
    for (const value of [1.94, 7.06])
      expect(compareWithLimit({ value }, 'between', limits).answer).toBe('not-met')
    expect(compareWithLimit({ value: 5, censored: 'below' }, 'between', limits).answer).toBe('cannot-decide')
    expect(compareWithLimit({ value: 2, censored: 'below' }, 'between', limits).answer).toBe('not-met')
  })

  it('compareWithLimit decides a value reported as below only where every value below agrees', () => {
    expect(answer('at-most', 0.1, '3.0 %', 'below')).toBe('met')
    expect(answer('at-most', 3, '3.0 %', 'below')).toBe('met')
    expect(answer('at-most', 3.5, '3.0 %', 'below')).toBe('cannot-decide')
    expect(answer('below', 3, '3.0 %', 'below')).toBe('met')
    expect(answer('below', 3.2, '3.0 %', 'below')).toBe('cannot-decide')
    expect(answer('at-least', 70, '75 %', 'below')).toBe('not-met')
    expect(answer('at-least', 75, '75 %', 'below')).toBe('not-met')
    expect(answer('at-least', 74.8, '75 %', 'below')).toBe('cannot-decide')
    expect(answer('at-least', 80, '75 %', 'below')).toBe('cannot-decide')
    expect(answer('above', 18, '18.0 %', 'below')).toBe('not-met')
    expect(answer('above', 19, '18.0 %', 'below')).toBe('cannot-decide')
    expect(answer('magnitude-at-most', 0.01, '0.8 %', 'below')).toBe('met')
  })

  it('compareWithLimit between shows the lower end where both are met, each end at its own digits', () => {
    const limits = [quantity('2.0 %'), quantity('7 %')]
    const shown = (value: number) => {
      const { answer, shown, shownDecimals } = compareWithLimit({ value }, 'between', limits)
      return [answer, shown, shownDecimals]
    }
    expect([shown(4.26), shown(1.94), shown(7.6)]).toEqual([
      ['met', 4.3, 1],
      ['not-met', 1.9, 1],
      ['not-met', 8, 0],
    ])
    expect(compareWithLimit({ value: 9, censored: 'below' }, 'between', limits)).toMatchObject({
      answer: 'cannot-decide',
      shownDecimals: 1,
    })
  })

  it('compareWithLimit on a magnitude keeps the sign of what it shows', () => {
    const shown = (value: number) => compareWithLimit({ value }, 'magnitude-at-most', [quantity('0.8 %')])
    expect(shown(-0.86)).toMatchObject({ answer: 'not-met', compared: -0.9, shown: -0.9 })
    expect(shown(0.86)).toMatchObject({ answer: 'not-met', compared: 0.9, shown: 0.9 })
    expect(shown(0)).toMatchObject({ answer: 'met', compared: 0, shown: 0 })
  })

  it('compareWithLimit rounds a value reported as below, so that below 3.04 meets at most 3.0', () => {
    expect(answer('at-most', 3.04, '3.0 %', 'below')).toBe('met')
    expect(answer('at-most', 3.06, '3.0 %', 'below')).toBe('cannot-decide')
    expect(answer('below', 3.04, '3.0 %', 'below')).toBe('cannot-decide')
    expect(answer('at-least', 3.04, '3.0 %', 'below')).toBe('cannot-decide')
    expect(answer('above', 3.04, '3.0 %', 'below')).toBe('not-met')
  })

  it('compareWithLimit refuses a number of limits that does not fit the operator', () => {
    expect(() => compareWithLimit({ value: 1 }, 'between', [quantity('2 %')])).toThrow(
      'compareWithLimit needs two limits for between, got 1',
    )
    expect(() => compareWithLimit({ value: 1 }, 'at-most', [])).toThrow(
      'compareWithLimit needs one limit for at-most, got 0',
    )
  })
})
