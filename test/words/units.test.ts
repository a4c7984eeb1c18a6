import { describe, expect, it } from 'vitest'
import { massText, quantity, resultText, signed, writtenText } from '../../src/words/units.ts'
import { unitSign } from '../../src/words/unit-signs.ts'

describe('quantity', () => {
  it('joins value and sign of the unit with a space that does not break', () => {
    expect(quantity(211.478, 1, 'ohm m')).toBe('211.5\u00a0Ω·m')
    expect(quantity(2.43, 2, 'g/cm3')).toBe('2.43\u00a0g/cm³')
    expect(quantity(0.485, 3, '')).toBe('0.485')
    expect(unitSign('degC')).toBe('°C')
    expect(unitSign('percentage points')).toBe('points')
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

describe('writtenText', () => {
  it('sets the signs of print in what a bench sheet says', () => {
    expect(writtenText('44.0 ohm m')).toBe('44.0\u00a0Ω·m')
    expect(writtenText('2.43 g/cm3')).toBe('2.43\u00a0g/cm³')
    expect(writtenText('23.1 degC')).toBe('23.1\u00a0°C')
    expect(writtenText('1.2 kohm')).toBe('1.2\u00a0kΩ')
    expect(writtenText('5000 ohm cm')).toBe('5000\u00a0Ω·cm')
    expect(writtenText('2950 short ton')).toBe('2950\u00a0short tons')
    expect(writtenText('1 short ton')).toBe('1\u00a0short ton')
  })
})

describe('massText', () => {
  it('gives both systems, the site’s own first: a tonne is 2204.622 622 lb, a short ton 2000 lb', () => {
    expect(massText(1450, 'SI')).toBe('1450\u00a0t (1598\u00a0short\u00a0tons)')
    expect(massText(1450, 'US')).toBe('1,598\u00a0short\u00a0tons (1450\u00a0t)')
    expect(massText(24.8, 'SI')).toBe('24.8\u00a0t (27.3\u00a0short\u00a0tons)')
    // 12 000 t are 13 227.7 short tons.
    expect(massText(12_000, 'SI')).toBe('12\u2009000\u00a0t (13\u2009228\u00a0short\u00a0tons)')
  })
})

describe('quantity in US units', () => {
  // 1 MPa is 145.037 738 psi, 1 kN 224.808 943 lbf: NIST SP 811 (2008), B.8.
  it('gives a strength in psi to the nearest ten, with a comma at the thousands', () => {
    // 34.129 049 MPa are 4950 psi.
    expect(quantity(34.129049, 1, 'MPa', 'US')).toBe('4,950\u00a0psi')
    expect(quantity(34.129049, 2, 'MPa', 'US')).toBe('4,950\u00a0psi')
    expect(quantity(31.36, 2, 'MPa', 'US')).toBe('4,548\u00a0psi')
  })
  it('gives a load in lbf, a resistivity in kΩ·cm, a temperature in °F, a mass in short tons', () => {
    expect(quantity(77.844, 1, 'kN', 'US')).toBe('17,500\u00a0lbf')
    expect(quantity(44, 1, 'ohm m', 'US')).toBe('4.40\u00a0kΩ·cm')
    expect(quantity(23, 1, 'degC', 'US')).toBe('73.4\u00a0°F')
    expect(quantity(2903, 0, 't', 'US')).toBe('3,200\u00a0short\u00a0tons')
  })
  it('leaves what the trade writes alike in both systems', () => {
    expect(quantity(83.3, 1, '%', 'US')).toBe('83.3\u00a0%')
    expect(quantity(2.43, 2, 'g/cm3', 'US')).toBe('2.43\u00a0g/cm³')
  })
})
