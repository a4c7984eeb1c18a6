import { readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import type { ResultReason } from '../../src/core/result/reason.ts'
import { RESULT_REASON_CODES, resultReasonWords } from '../../src/words/result-reasons.ts'

const spread = { of: 3, percent: 10.757, limitPercent: 8.7 } as const

/** Every code, with the sentence that a certificate prints. */
const SAID: readonly (readonly [ResultReason, string])[] = [
  [{ code: 'only-mean-on-record', params: {} }, 'only the mean is on record'],
  [{ code: 'number-not-stated', params: {} }, 'how many specimens the mean is of is not stated'],
  [
    { code: 'mould-assumed', params: {} },
    'loads are in lbf and the size of the mould is not on record, so cubes of 2 in (4.00 in²) are assumed',
  ],
  [
    { code: 'specimen-excluded', params: { mark: 'c', why: 'corner lost' } },
    'specimen c excluded: corner lost',
  ],
  [{ code: 'no-specimen-counts', params: {} }, 'no specimen counts'],
  [{ code: 'loaded-area-unknown', params: {} }, 'the loaded area is not known'],
  [{ code: 'geometry-unknown', params: {} }, 'the size of a specimen is not known'],
  [
    { code: 'end-contacts-exceed-reading', params: {} },
    'the end contacts are as large as a reading, or larger, so no resistivity follows from it',
  ],
  [
    { code: 'specimen-dropped', params: { measure: 'range', ...spread, mark: 'c' } },
    'the range of 3 specimens is 10.8 % of the mean, over 8.7 %; specimen c, farthest from the mean, is dropped',
  ],
  [
    { code: 'specimen-dropped', params: { measure: 'distance', ...spread, limitPercent: 10, mark: 'c' } },
    'the largest distance from the mean of 3 specimens is 10.8 % of the mean, over 10 %; specimen c, farthest from the mean, is dropped',
  ],
  [
    { code: 'range-beyond', params: { measure: 'range', ...spread } },
    'the range of 3 specimens is 10.8 % of the mean, over 8.7 %, and dropping one specimen does not bring it within the limit: repeat the test',
  ],
  [
    { code: 'range-beyond', params: { measure: 'range', of: 3, percent: 8.7402, limitPercent: 8.7 } },
    'the range of 3 specimens is 8.74 % of the mean, over 8.7 %, and dropping one specimen does not bring it within the limit: repeat the test',
  ],
  [{ code: 'range-not-checked', params: { of: 4 } }, 'range not checked: no rule for 4 specimens'],
  [{ code: 'fewer-specimens', params: { n: 1, planned: 6 } }, '1 specimen of 6 planned'],
  [
    { code: 'too-few-specimens', params: { n: 1, atLeast: 2 } },
    '1 specimen, fewer than the 2 that the condition requires',
  ],
  [
    { code: 'interval-too-narrow', params: { levelPercent: 95 } },
    'the interval is too narrow, since a specimen was dropped: by simulation it holds the ratio in 80 to 93 % of such cases, not in 95 %',
  ],
  [
    { code: 'age-cannot-be-verified', params: {} },
    'the age cannot be verified to the hour: a clock time is missing',
  ],
  [
    { code: 'age-outside', params: { testedHours: 720.25, age: '28 d', writtenTolerance: '12 h' } },
    'tested at 30 d 15 min, outside 28 d ± 12 h',
  ],
  // 28 d and half a day are 684 h; a minute more is beyond it, and is seen to be.
  [
    { code: 'age-outside', params: { testedHours: 684 + 1 / 60, age: '28 d', writtenTolerance: '12 h' } },
    'tested at 28 d 12 h 1 min, outside 28 d ± 12 h',
  ],
  [
    { code: 'age-outside', params: { testedHours: 720, age: '28 d', writtenTolerance: '12 h' } },
    'tested at 30 d, outside 28 d ± 12 h',
  ],
  [
    { code: 'replaced-by-retest', params: { retested: '2026-04-08T12:00' } },
    'replaced by the retest of 8\u00a0April 2026, 12:00',
  ],
  [
    { code: 'reading-not-described', params: {} },
    'the condition describes no resistivity reading, so its geometry and temperature are not known',
  ],
  [{ code: 'conditioning-not-on-record', params: {} }, 'the conditioning when read is not on record'],
  [
    { code: 'conditioning-differs', params: { read: 'fog', asked: 'saturated-lime-water' } },
    'read from fog; the condition requires specimens to be read from saturated lime water',
  ],
  [
    { code: 'conditioning-differs', params: { read: 'saturated-lime-water', asked: 'sealed' } },
    'read from saturated lime water; the condition requires specimens to be read sealed',
  ],
  [
    { code: 'temperature-not-on-record', params: {} },
    'the temperature of the specimens when read is not on record',
  ],
  [
    {
      code: 'temperature-outside',
      params: { readCelsius: 49.64, askedCelsius: 23, withinCelsius: 2.5 },
    },
    'read at 49.6 °C, outside 23 °C ± 2.5 °C',
  ],
  [
    { code: 'end-contacts-beyond', params: { percent: 5.025, writtenLimit: '5 %' } },
    'the end-contact resistance is 5.0 % of a reading, more than 5 %',
  ],
  [{ code: 'meter-not-verified', params: {} }, 'no reading on a known resistor is on record'],
  [
    {
      code: 'meter-off',
      params: { writtenRead: '1011 ohm', writtenKnown: '1000 ohm', writtenLimit: '1 %' },
    },
    'the meter read 1011 Ω on a resistor of 1000 Ω, off by more than 1 %',
  ],
  [{ code: 'saturation-not-stated', params: {} }, 'the saturation of the specimens when read is not stated'],
  [
    {
      code: 'core-temperature-outside',
      params: { readCelsius: 26.4, askedCelsius: 23, withinCelsius: 2 },
    },
    'the core of the dummy specimen was at 26.4 °C when read, outside 23 °C ± 2 °C',
  ],
  [
    { code: 'out-of-liquid-too-long', params: { written: '9 min', writtenLimit: '5 min' } },
    'a specimen was out of the liquid for 9 min until it was read, longer than 5 min',
  ],
  [
    { code: 'cooled-too-short', params: { cooledHours: 1.5, writtenLimit: '3 h' } },
    'read 1 h 30 min after leaving the bath, sooner than 3 h',
  ],
  [
    { code: 'directions-differ', params: { read: [1], asked: 3 } },
    'specimens were read in 1 direction; the condition requires 3',
  ],
  [
    { code: 'directions-differ', params: { read: [3, 2], asked: 1 } },
    'specimens were read in 3 and 2 directions; the condition requires 1',
  ],
  [
    {
      code: 'beyond-check-resistors',
      params: { written: '4210 ohm', writtenSmallest: '100 ohm', writtenLargest: '1 kohm' },
    },
    'a reading of 4210 Ω lies beyond the check resistors, 100 Ω to 1 kΩ',
  ],
  [
    { code: 'above-ceiling', params: { written: '> 850 ohm' } },
    'a specimen read > 850 Ω, beyond the meter, so the mean is known only from below',
  ],
  [
    { code: 'read-before', params: { marks: ['a'], age: '7 d' } },
    'specimen a was already read at 7 d; the condition requires specimens to be read once, since one that returns to the bath has another history',
  ],
  [
    { code: 'not-read-before', params: { marks: ['d', 'e'], age: '7 d' } },
    'specimens d and e were not read at 7 d; the condition requires specimens to be returned to the bath and read again, and one read for the first time has another history',
  ],
  [
    { code: 'cooled-apart', params: { testHours: 3, controlHours: 1.25, writtenLimit: '30 min' } },
    'test read 3 h after leaving the bath and control 1 h 15 min after it, more than 30 min apart',
  ],
  [
    {
      code: 'out-of-liquid-apart',
      params: { writtenTest: '5 min', writtenControl: '2 min', writtenLimit: '2 min' },
    },
    'test out of the liquid for 5 min and control for 2 min, more than 2 min apart',
  ],
  [
    {
      code: 'control-fault',
      params: {
        control: 'K',
        reason: {
          code: 'control-fault',
          params: { control: 'L', reason: { code: 'no-specimen-counts', params: {} } },
        },
      },
    },
    'control K: control L: no specimen counts',
  ],
  [
    { code: 'control-stated', params: { written: '32.5 MPa' } },
    'control known by its stated strength alone, 32.5 MPa',
  ],
  [
    { code: 'mean-not-above-zero', params: {} },
    'its mean is not above zero, so no index can be taken against it',
  ],
  [
    { code: 'control-of-another-condition', params: { control: 'K' } },
    'the control K was made under another condition',
  ],
  [
    {
      code: 'control-of-another-condition',
      params: { control: 'K', fields: ['curing.temperature', 'water.w/cm'] },
    },
    'the control K was made under another condition, which differs in curing.temperature, water.w/cm',
  ],
  [
    { code: 'specimen-sizes-differ', params: { testMm2: 2580.64, controlMm2: 2500 } },
    'the specimens differ in size: 2581 mm² loaded for the test mortar, 2500 mm² for the control',
  ],
  [
    { code: 'stated-with-computed', params: { stated: 'test' } },
    'the strength of the test mortar is stated by the laboratory, but that of the control is computed from loads',
  ],
  [
    { code: 'stated-with-computed', params: { stated: 'control' } },
    'the strength of the control is stated by the laboratory, but that of the test mortar is computed from loads',
  ],
  [
    { code: 'control-of-another-laboratory', params: { laboratory: 'south' } },
    'the control was made by another laboratory, south',
  ],
  [
    { code: 'control-cast-apart', params: { daysBefore: 14 } },
    'the control was cast 14 d before the test mortar',
  ],
  [
    { code: 'control-cast-apart', params: { daysBefore: -1 } },
    'the control was cast 1 d after the test mortar',
  ],
  [
    { code: 'not-cast-together', params: { daysBefore: -2 } },
    'cast 2 d after the test mortar; both must be cast on the same day',
  ],
  [
    { code: 'cement-alkalis-not-on-record', params: {} },
    'the alkalis of the control cement are not on record',
  ],
  [
    { code: 'cement-alkalis-low', params: { written: '0.49 %', writtenLimit: '0.50 %' } },
    'its cement has 0.49 % alkalis, less than 0.50 %',
  ],
  [
    { code: 'cement-alkalis-high', params: { written: '0.81 %', writtenLimit: '0.80 %' } },
    'its cement has 0.81 % alkalis, more than 0.80 %',
  ],
  [
    { code: 'control-strength-low', params: { age: '28 d', strengthMPa: 34.96, writtenLimit: '35 MPa' } },
    'its strength at 28 d is 35.0 MPa, less than 35 MPa',
  ],
  [
    {
      code: 'flows-apart',
      params: { writtenTest: '114 %', writtenControl: '108 %', writtenLimit: '5 percentage points' },
    },
    'flow 114 % against the control’s 108 %, more than 5 percentage points apart',
  ],
  ...(
    [
      ['test', 'the flow of the test mortar is'],
      ['control', 'the flow of the control is'],
      ['both', 'the flows of both mortars are'],
    ] as const
  ).map(([of, words]): readonly [ResultReason, string] => [
    { code: 'flow-not-on-record', params: { of, writtenLimit: '5 percentage points' } },
    `${words} not on record, so it cannot be verified that the flows agree within 5 percentage points`,
  ]),
  [
    { code: 'temperatures-apart', params: { testCelsius: 24.2, controlCelsius: 23.1, withinCelsius: 1 } },
    'test read at 24.2 °C and control at 23.1 °C, more than 1 °C apart',
  ],
  [
    { code: 'readings-stand', params: { recomputed: 83.64, unit: '%', decimals: 1 } },
    'the readings of this test are on record, so the value recomputed from them counts instead: 83.6 %',
  ],
  [
    { code: 'readings-stand', params: { recomputed: null, unit: '%', decimals: 1 } },
    'the readings of this test are on record and give no valid value, so the laboratory’s own figure does not count',
  ],
  [{ code: 'value-excluded', params: { why: 'crucible broke' } }, 'excluded: crucible broke'],
  [
    { code: 'enters-with-bound', params: { property: 'Fe2O3', written: '< 0.5 %' } },
    'Fe2O3 is reported as < 0.5 %, so the sum is known only within bounds',
  ],
  [
    { code: 'enters-with-bound', params: { property: 'K2O', written: null } },
    'K2O is reported as below a bound, so the sum is known only within bounds',
  ],
  [
    {
      code: 'bases-differ',
      params: {
        members: [
          { property: 'SiO2', basis: 'dry' },
          { property: 'Al2O3', basis: null },
        ],
      },
    },
    'the oxides are on different bases: SiO2 dry, Al2O3 not stated',
  ],
]

describe('resultReasonWords', () => {
  it.each(SAID.map(([reason, words]) => [words, reason] as const))('says "%s"', (words, reason) => {
    expect(resultReasonWords(reason)).toBe(words)
  })
  it('is asked here about every code', () => {
    expect(new Set(SAID.map(([{ code }]) => code))).toEqual(new Set(RESULT_REASON_CODES))
  })
})

describe('the codes of reasons', () => {
  it('are kebab-case names', () => {
    expect(RESULT_REASON_CODES.filter((code) => !/^[a-z]+(-[a-z]+)*$/.test(code))).toEqual([])
  })
  it.each(['check.json', 'lot-data.json'])(
    'are those that schemas/%s lists, no fewer and no more',
    (name) => {
      const file = join(resolve(import.meta.dirname, '../..'), 'schemas', name)
      const schema = JSON.parse(readFileSync(file, 'utf8')) as {
        $defs: { resultReason: { properties: { code: { enum: string[] } } } }
      }
      expect(schema.$defs.resultReason.properties.code.enum).toEqual([...RESULT_REASON_CODES])
    },
  )
})
