import { describe, expect, it } from 'vitest'
import type { WorkingStep } from '../../src/core/result/working.ts'
import { type WorkingLine, workingLines } from '../../src/words/working-lines.ts'

const MPa = (value: number) => ({ value, unit: 'MPa', decimals: 2 })
const percent = (value: number, decimals = 1) => ({ value, unit: '%', decimals })
const specimen = { step: 'specimen', of: 'test', mark: 'a' } as const

/** Every kind of step, with the line that an annex prints. */
const PRINTED: readonly (readonly [WorkingStep, WorkingLine])[] = [
  [
    { step: 'reported-mean', of: 'control', n: 3, result: MPa(40) },
    { label: 'control mortar', expression: 'mean of 3 as reported; no specimens on record', ...MPa(40) },
  ],
  [
    { step: 'reported-mean', of: 'control', n: null, result: MPa(40) },
    {
      label: 'control mortar',
      expression: 'mean as reported; the number of specimens is not stated',
      ...MPa(40),
    },
  ],
  [
    {
      ...specimen,
      written: '16240 lbf',
      terms: [
        {
          does: 'divided-by',
          value: 2580.64,
          unit: 'mm2',
          assumed: { written: '4.00 in2', of: '2 in' },
        },
      ],
      result: MPa(27.99),
    },
    {
      label: 'test a',
      expression: '16240 lbf / 4.00 in² (2580.64 mm²; a cube of 2 in is assumed)',
      ...MPa(27.99),
    },
  ],
  [
    {
      ...specimen,
      written: '78.4 kN',
      terms: [{ does: 'divided-by', value: 2500, unit: 'mm2' }],
      result: MPa(31.36),
    },
    { label: 'test a', expression: '78.4 kN / 2500 mm²', ...MPa(31.36) },
  ],
  [
    {
      ...specimen,
      written: '0.812 kohm',
      terms: [
        { does: 'less-end-contact', value: 4.125, unit: 'ohm' },
        { does: 'times', value: 2580.64, unit: 'mm2' },
        { does: 'divided-by', value: 50.8, unit: 'mm' },
      ],
      excluded: 'cracked',
      result: null,
    },
    {
      label: 'test a',
      expression: '0.812 kΩ less 4.12 Ω end contact × 2580.64 mm² / 50.8 mm, excluded: cracked',
    },
  ],
  [
    { ...specimen, written: '812 ohm', terms: [], result: null },
    { label: 'test a', expression: '812 Ω as reported' },
  ],
  [
    { ...specimen, written: null, terms: [], excluded: 'lost', result: null },
    { label: 'test a', expression: 'no reading as reported, excluded: lost' },
  ],
  [
    { step: 'range-check', measure: 'range', of: 3, percent: 8.7, limitPercent: 8.7, kept: true },
    {
      label: 'range',
      expression: 'largest less smallest of 3, limit 8.7 % of the mean: within',
      ...percent(8.7),
      source: 'permissible range of the condition',
    },
  ],
  [
    { step: 'range-check', measure: 'distance', of: 6, percent: 17.24, limitPercent: 10, kept: false },
    {
      label: 'range',
      expression: 'largest distance from the mean of 6, limit 10 % of the mean: beyond',
      ...percent(17.24),
      source: 'permissible range of the condition',
    },
  ],
  [
    { step: 'mean', of: 'test', n: 2, marks: ['a', 'c'], result: MPa(40) },
    { label: 'test mean', expression: 'mean of a, c', ...MPa(40) },
  ],
  [
    { step: 'mean', of: 'control', n: 2, result: MPa(40) },
    { label: 'control mean', expression: 'mean of 2', ...MPa(40) },
  ],
  [
    {
      step: 'at-another-temperature',
      readCelsius: 49.625,
      askedCelsius: 23,
      activationEnergyKJ: 20,
      result: { value: 80.2, unit: 'ohm m', decimals: 1 },
    },
    {
      label: 'for information',
      expression: 'read at 49.62 °C; at 23 °C it would be about (20 kJ/mol; the published range is wide)',
      value: 80.2,
      unit: 'ohm m',
      decimals: 1,
      source: 'Arrhenius law; activation energy: common practice, no source',
    },
  ],
  [
    {
      step: 'ratio',
      test: 40.5,
      control: 50,
      unit: 'MPa',
      decimals: 2,
      source: 'a standard',
      result: percent(81),
    },
    { label: 'index', expression: '100 × 40.50 / 50.00', ...percent(81), source: 'a standard' },
  ],
  [
    { step: 'control-drift', points: 0.814, decimals: 2 },
    { label: 'control drift', expression: 'a control 1 % higher would lower the index by 0.81 points' },
  ],
  [
    { step: 'interval', interval: null, decimals: 1 },
    {
      label: 'interval',
      expression: 'none: a single specimen, or a mean without its specimens, shows no scatter',
    },
  ],
  [
    {
      step: 'interval',
      interval: { level: 0.95, method: 'fieller', df: 3.94, shape: 'bounded', low: 73.94, high: 79.06 },
      decimals: 1,
    },
    {
      label: 'interval',
      expression: '95 %: 73.9 % to 79.1 %, within this batch only',
      source: 'Fieller, unequal variances, 3.9 degrees of freedom',
    },
  ],
  [
    { step: 'water-requirement', writtenTest: '233 g', writtenControl: '242 g', result: percent(96.28) },
    {
      label: 'water requirement',
      expression: '100 × 233 g / 242 g',
      ...percent(96.28),
      source: 'ASTM C311 (from memory)',
    },
  ],
  [
    {
      step: 'oxide-sum',
      summands: [
        { property: 'SiO2', value: 63.1, decimals: 1, below: false },
        { property: 'Al2O3', value: 16, decimals: 2, below: false },
        { property: 'Fe2O3', value: 0.5, decimals: 1, below: true },
      ],
      result: percent(79.6, 2),
    },
    { label: 'sum of the figures', expression: '63.1 + 16.00 + <0.5 %', ...percent(79.6, 2) },
  ],
  [
    { step: 'bounds', low: 79.1, high: 79.6, unit: '%', decimals: 2 },
    {
      label: 'bounds',
      expression:
        'a figure with < may be anything from nothing to that figure: between 79.10 and 79.60\u00a0%',
    },
  ],
  [
    {
      step: 'alkali-equivalent',
      soda: { property: 'Na2O', value: 2.9, decimals: 1, below: false },
      potash: { property: 'K2O', value: 3.3, decimals: 2, below: false },
      result: percent(5.0714, 2),
    },
    { label: 'equivalent', expression: '2.9 + 0.658 × 3.30 %', ...percent(5.0714, 2) },
  ],
  [
    {
      step: 'class-by-calcium',
      lime: { property: 'CaO', value: 18, decimals: 1, below: false },
      class: 'F',
    },
    {
      label: 'for information',
      expression: 'CaO 18.0 %: class F by the divider of 18 %',
      source: 'ASTM C618, edition 19; at exactly 18.0 from memory',
    },
  ],
]

describe('workingLines', () => {
  it.each(PRINTED.map(([step, line]) => [line.expression, step, line] as const))(
    'prints "%s"',
    (_, step, line) => {
      expect(workingLines([step])).toEqual([line])
    },
  )
  it('divides psi by psi for a site in US units, as the means above stand', () => {
    // By hand: 40.5 / 0.006894757 = 5874.0, 50 / 0.006894757 = 7251.9.
    const ratio = { step: 'ratio', test: 40.5, control: 50, unit: 'MPa', decimals: 2 } as const
    const [line] = workingLines([{ ...ratio, source: 'a standard', result: percent(81) }], 'US')
    expect(line?.expression).toBe('100 × 5874 / 7252')
  })
  it('prints a line for each step, in their order', () => {
    expect(workingLines(PRINTED.map(([step]) => step)).map(({ label }) => label)).toEqual(
      PRINTED.map(([, { label }]) => label),
    )
  })
})
