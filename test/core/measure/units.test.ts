import fc from 'fast-check'
import { evaluate, type Unit as MathUnit } from 'mathjs'
import { describe, expect, it } from 'vitest'
import {
  acceptedSpellings,
  isFault,
  KINDS,
  type Quantity,
  type QuantityKind,
  readPerhapsAbove,
  readQuantity,
  writtenNumber,
} from '../../../src/core/measure/units.ts'

/**
 * The independent library's name of each unit; percent, points, plain numbers and derived signs it does not
 * know are checked by hand below.
 */
const NAMES: Readonly<Record<string, string>> = {
  g: 'g',
  kg: 'kg',
  lb: 'lb',
  t: 'tonne',
  'short ton': 'ton',
  'long ton': '2240 lb',
  kN: 'kN',
  N: 'N',
  lbf: 'lbf',
  kip: '1000 lbf',
  MPa: 'MPa',
  psi: 'lbf/in^2',
  ksi: '1000 lbf/in^2',
  mm: 'mm',
  cm: 'cm',
  m: 'm',
  in: 'in',
  mm2: 'mm^2',
  cm2: 'cm^2',
  in2: 'in^2',
  ohm: 'ohm',
  kohm: 'kohm',
  'ohm m': 'ohm m',
  'ohm cm': 'ohm cm',
  'kohm cm': 'kohm cm',
  'kohm m': 'kohm m',
  degC: 'degC',
  degF: 'degF',
  'g/cm3': 'g/cm^3',
  'kg/m3': 'kg/m^3',
  'm2/kg': 'm^2/kg',
  'm2/g': 'm^2/g',
  'cm2/g': 'cm^2/g',
  h: 'hour',
  d: 'day',
  min: 'minute',
  weeks: 'week',
  Hz: 'Hz',
  kHz: 'kHz',
  'J/g': 'J/g',
  mL: 'ml',
  L: 'L',
  mg: 'mg',
  mW: 'mW',
  uW: 'uW',
  W: 'W',
  'mW/g': 'mW/g',
  'W/g': 'W/g',
  J: 'J',
  kJ: 'kJ',
  'mmol/L': 'mmol/L',
  'mol/L': 'mol/L',
  kPa: 'kPa',
  Pa: 'Pa',
  deg: 'deg',
}
const BY_HAND: readonly QuantityKind[] = ['fraction', 'points', 'ratio', 'temperature-difference']

function converted(value: number, from: string, to: string): number {
  const unit = evaluate(
    `${value} * (1 ${from})`.replace('1 2240', '2240').replace('1 1000', '1000'),
  ) as MathUnit
  return unit.toNumber(to)
}

describe('readQuantity', () => {
  const cases = (Object.keys(KINDS) as QuantityKind[])
    .filter((kind) => !BY_HAND.includes(kind))
    .flatMap((kind) =>
      KINDS[kind].units.map((unit) => ({ kind, symbol: unit.symbol, stored: KINDS[kind].stored })),
    )

  // Oracle: mathjs 15. Its inch, pound and pound-force are exact by definition; its own psi and kip are
  // rounded numbers, so those go through lbf and in.
  it.each(cases)('converts $symbol to $stored as an independent library does', ({ kind, symbol, stored }) => {
    const quantity = readQuantity(`12.5 ${symbol}`, kind) as Quantity
    const wanted =
      symbol === 'degF'
        ? (evaluate('12.5 degF to degC') as MathUnit).toNumber('degC')
        : converted(12.5, NAMES[symbol] ?? '', NAMES[stored] ?? '')
    expect(Math.abs(quantity.value - wanted)).toBeLessThan(1e-12 * Math.max(1, Math.abs(wanted)))
  })
  it('reads per cent, points and temperature differences by hand', () => {
    expect((readQuantity('4.86 %', 'fraction') as Quantity).value).toBe(4.86)
    expect((readQuantity('5 percentage points', 'points') as Quantity).value).toBe(5)
    expect((readQuantity('3.6 degF', 'temperature-difference') as Quantity).value).toBeCloseTo(2, 12)
    expect((readQuantity('73.4 degF', 'temperature') as Quantity).value).toBeCloseTo(23, 12)
  })
  it('reads the signs of the trade in all their code points', () => {
    for (const text of ['4.12 kΩ·cm', '4.12 kΩ cm', '4.12 kohm cm', '4.12 kohm.cm', '4.12  kohm  cm'])
      expect((readQuantity(text, 'resistivity') as Quantity).value).toBe(41.2)
    for (const text of ['23.1 °C', '23.1 degC', '23.1 ° C', '23.1°C'])
      expect((readQuantity(text, 'temperature') as Quantity).value).toBe(23.1)
    expect((readQuantity('2.43 g/cm³', 'density') as Quantity).value).toBe(2.43)
    expect((readQuantity('−0.03 %', 'fraction') as Quantity).value).toBe(-0.03)
    expect((readQuantity('380 m²/kg', 'specific-surface') as Quantity).value).toBe(380)
  })
  it('keeps what was written, with its decimals', () => {
    expect(readQuantity('70.0 %', 'fraction')).toEqual({
      kind: 'fraction',
      value: 70,
      unit: '%',
      written: '70.0 %',
      decimals: 1,
    })
    expect(writtenNumber(readQuantity('< 0.10 %', 'fraction') as Quantity)).toBe('0.10')
  })
  it('marks a result below its bound as censored', () => {
    for (const text of ['< 0.1 %', '<0.1 %', 'below 0.1 %'])
      expect(readQuantity(text, 'fraction')).toMatchObject({ value: 0.1, censored: 'below' })
  })
  it.each([
    ['2000 ton', 'lot-mass', 'ambiguous-ton'],
    ['34,1 MPa', 'stress', 'decimal-comma'],
    ['1,450 t', 'lot-mass', 'decimal-comma'],
    ['1450,5 t', 'lot-mass', 'decimal-comma'],
    ['5', 'fraction', 'no-unit'],
    ['> 12 %', 'fraction', 'above'],
    ['12 kN', 'stress', 'wrong-kind'],
    ['12 stone', 'lot-mass', 'unknown-unit'],
    ['plenty', 'fraction', 'not-a-number'],
    ['1e5 t', 'lot-mass', 'exponent'],
    ['1.2E-3 %', 'fraction', 'exponent'],
    ['1 e', 'fraction', 'unknown-unit'],
    ['12 % %', 'fraction', 'unknown-unit'],
    ['1.2.3 %', 'fraction', 'unknown-unit'],
    ['99999999999 t', 'lot-mass', 'out-of-range'],
    ['NaN %', 'fraction', 'not-a-number'],
    ['Infinity t', 'lot-mass', 'not-a-number'],
    ['.5 %', 'fraction', 'not-a-number'],
    ['', 'fraction', 'not-a-number'],
  ] as const)('refuses "%s" as %s: %s', (text, kind, fault) => {
    expect(readQuantity(text, kind)).toMatchObject({ fault })
  })
  it('refuses a unit of another kind for every pair of kinds that share none', () => {
    for (const kind of ['force', 'resistance', 'temperature'] as const)
      for (const spelling of acceptedSpellings('lot-mass'))
        expect(isFault(readQuantity(`1 ${spelling}`, kind))).toBe(true)
  })
  it('reads what lies above a ceiling only where it is allowed to', () => {
    const ceiling = { kind: 'resistance', value: 850, unit: 'ohm', decimals: 0, above: true }
    for (const text of ['> 850 ohm', '>850 ohm', 'above 850 ohm'])
      expect(readPerhapsAbove(text, 'resistance')).toEqual({ ...ceiling, written: text })
    expect(readPerhapsAbove('> 0.85 kohm', 'resistance')).toMatchObject({
      value: 850,
      decimals: 2,
      above: true,
    })
    expect(readPerhapsAbove('812 ohm', 'resistance')).toEqual(readQuantity('812 ohm', 'resistance'))
  })
  it.each([
    ['> 850', 'no-unit'],
    ['> 850 kN', 'wrong-kind'],
    ['> 8,5 ohm', 'decimal-comma'],
    ['> < 850 ohm', 'not-a-number'],
    ['>> 850 ohm', 'above'],
    ['>', 'not-a-number'],
  ] as const)('refuses the ceiling "%s" as %s, with the whole text', (text, fault) => {
    expect(readPerhapsAbove(text, 'resistance')).toMatchObject({ fault, found: text })
  })
  it('gives back any decimal that the bench writes in the stored unit, to the last digit', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -1_000_000, max: 1_000_000 }),
        fc.integer({ min: 0, max: 4 }),
        (digits, decimals) => {
          const text = (digits / 10 ** decimals).toFixed(decimals)
          expect((readQuantity(`${text} kN`, 'force') as Quantity).value).toBe(Number(text))
        },
      ),
    )
  })
})
