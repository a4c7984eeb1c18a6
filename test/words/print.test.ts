import { describe, expect, it } from 'vitest'
import {
  clockTime,
  date,
  fullSentence,
  limitText,
  massText,
  number,
  period,
  quantity,
  resultText,
  shortDate,
  signed,
  unbroken,
  unitSign,
  usText,
  writtenText,
} from '../../src/words/print.ts'

describe('number', () => {
  it('prints fixed decimals, a true minus and thin spaces from 10 000 on', () => {
    expect(number(70.892, 1)).toBe('70.9')
    expect(number(-0.4, 1)).toBe('\u22120.4')
    expect(number(1450, 0)).toBe('1450')
    expect(number(1234567.5, 1)).toBe('1\u2009234\u2009567.5')
  })
  it('prints no sign before a zero', () => {
    expect(number(-0.04, 1)).toBe('0.0')
  })
})

describe('quantity', () => {
  it('joins value and sign of the unit with a space that does not break', () => {
    expect(quantity(211.478, 1, 'ohm m')).toBe('211.5\u00a0Ω·m')
    expect(quantity(2.43, 2, 'g/cm3')).toBe('2.43\u00a0g/cm³')
    expect(quantity(0.485, 3, '')).toBe('0.485')
    expect(unitSign('degC')).toBe('°C')
  })
  it('signs a difference', () => {
    expect(signed(1.1, 1, 'percentage points')).toBe('+1.1\u00a0points')
    expect(signed(-1.8, 1, 'percentage points')).toBe('\u22121.8\u00a0points')
    expect(signed(0.01, 1, '%')).toBe('0.0\u00a0%')
  })
  it('prints a result below the limit of determination as such', () => {
    expect(resultText({ value: 0.01, decimals: 2, unit: '%', censored: 'below' })).toBe('<\u00a00.01\u00a0%')
  })
})

describe('date', () => {
  it('writes day, month and year, with a clock time where there is one', () => {
    expect(date('2026-03-08')).toBe('8\u00a0March 2026')
    expect(date('2026-03-08T14:30')).toBe('8\u00a0March 2026, 14:30')
    expect(shortDate('2026-03-08T14:30')).toBe('8\u00a0Mar\u00a02026')
    expect(clockTime('2026-03-08T14:30')).toBe('14:30')
    expect(clockTime('2026-03-08')).toBeNull()
  })
  it('says the common parts of a period once', () => {
    expect(period('2026-03-02', '2026-03-08')).toBe('2 to 8\u00a0March 2026')
    expect(period('2026-03-02', '2026-03-02')).toBe('2\u00a0March 2026')
    expect(period('2026-02-26', '2026-03-04')).toBe('26\u00a0February 2026 to 4\u00a0March 2026')
  })
})

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

describe('writtenText', () => {
  it('sets the signs of print in what a bench sheet says', () => {
    expect(writtenText('44.0 ohm m')).toBe('44.0\u00a0Ω·m')
    expect(writtenText('2.43 g/cm3')).toBe('2.43\u00a0g/cm³')
    expect(writtenText('23.1 degC')).toBe('23.1\u00a0°C')
    expect(writtenText('1.2 kohm')).toBe('1.2\u00a0kΩ')
    expect(writtenText('2950 short ton')).toBe('2950\u00a0short tons')
    expect(writtenText('1 short ton')).toBe('1\u00a0short ton')
  })
})

describe('massText', () => {
  it('gives both systems, the site’s own first: a tonne is 2204.622 622 lb, a short ton 2000 lb', () => {
    expect(massText(1450, 'SI')).toBe('1450\u00a0t (1598\u00a0short\u00a0tons)')
    expect(massText(1450, 'US')).toBe('1598\u00a0short\u00a0tons (1450\u00a0t)')
    expect(massText(24.8, 'SI')).toBe('24.8\u00a0t (27.3\u00a0short\u00a0tons)')
  })
})

describe('usText', () => {
  it('gives a strength in psi to the nearest ten and a resistivity in Ω·cm, nothing elsewhere', () => {
    // 34.129 049 MPa are 4950 psi.
    expect(usText(34.129049, 'MPa')).toBe('4950\u00a0psi')
    expect(usText(44, 'ohm m')).toBe('4400\u00a0Ω·cm')
    expect(usText(83.3, '%')).toBeNull()
  })
})

describe('sentences', () => {
  it('begin large, end with one stop and hold a number to its unit', () => {
    expect(fullSentence('pending; all other clauses met')).toBe('Pending; all other clauses met.')
    expect(fullSentence('Done.')).toBe('Done.')
    expect(unbroken('50 %, 50 °C, w/cm 0.485, 28 d')).toBe('50\u00a0%, 50\u00a0°C, w/cm 0.485, 28\u00a0d')
    expect(unbroken('2 specimens')).toBe('2 specimens')
  })
})
