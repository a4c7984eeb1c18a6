import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment, isSurelyBefore } from '../../../src/core/measure/moment.ts'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { lotResults as computed } from '../../../src/core/readings/lot-results.ts'
import type { ControlMortar, LotEvidence, MortarCondition } from '../../../src/core/mortar/mortar.ts'
import { evidence, FLOW, printed, q, resistance, strength, WARM, worded } from './fixture.ts'

function lotResults(lot: LotEvidence) {
  const { results, unmade, planned } = computed(lot)
  return { results: results.map(printed), unmade: unmade.map(worded), planned }
}

function indexOf(lot: LotEvidence, property: 'strength-activity-index' | 'resistivity-index') {
  return lotResults(lot).results.find((result) => result.property === property)
}

describe('lotResults, whose results they are', () => {
  const split = evidence({
    test: { sample: 'S', strength: [strength(['101.3 kN']), { age: readAge('56 d') }] },
    control: { strength: [strength(['146.1 kN'], { tested: readMoment('2026-04-08T09:30') })] },
    more: {
      samples: [
        { id: 'C', kind: 'composite' },
        { id: 'S', kind: 'split' },
      ],
      analyses: ['C', 'S'].map((sample) => ({
        laboratory: 'quay',
        sample,
        tested: readMoment('2026-03-12'),
        results: { 'loss-on-ignition': q('3.6 %', 'fraction') },
      })),
    },
  })
  it('gives an agency what is tested on a split, wherever the record lists it', () => {
    const roles = lotResults(split).results.map(({ sample, property, role }) => [sample, property, role])
    expect(roles).toEqual([
      ['C', 'loss-on-ignition', 'producer'],
      ['S', 'loss-on-ignition', 'verification'],
      ['S', 'compressive-strength', 'verification'],
      ['S', 'strength-activity-index', 'verification'],
    ])
  })
  it('awaits nothing of the agency', () => {
    expect(lotResults(split).planned).toEqual([])
  })
})

describe('lotResults, strength activity index', () => {
  // Worked by hand from the loads: (101.3 + 103.9 + 99.8) / (146.1 + 148.0 + 146.6) = 305.0 / 440.7 = 69.2081
  // %.
  it('is the ratio of the mean strengths in per cent', () => {
    const index = indexOf(
      evidence({
        test: { strength: [strength(['101.3 kN', '103.9 kN', '99.8 kN'])] },
        control: {
          strength: [
            strength(['146.1 kN', '148.0 kN', '146.6 kN'], { tested: readMoment('2026-04-08T09:30') }),
          ],
        },
      }),
      'strength-activity-index',
    )
    expect(index?.value).toBeCloseTo((100 * 305) / 440.7, 10)
    expect(index).toMatchObject({
      valid: true,
      reasons: [],
      n: 3,
      condition: 'warm',
      age: readAge('28 d'),
      control: 'K',
      tested: readMoment('2026-04-08T09:40'),
    })
    expect(index?.working().at(-3)).toMatchObject({ label: 'index', expression: '100 × 40.67 / 58.76' })
    expect(index?.working().at(-2)?.expression).toBe(
      'a control 1 % higher would lower the index by 0.69 points',
    )
  })
  it('does not change when all loads are scaled, and is inverted when test and control change places', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 980, max: 1020 }), { minLength: 3, maxLength: 3 }),
        fc.array(fc.integer({ min: 1380, max: 1420 }), { minLength: 3, maxLength: 3 }),
        fc.integer({ min: 2, max: 9 }),
        (test, control, scale) => {
          const loads = (values: readonly number[], by = 1) => [
            strength(values.map((value) => `${((value * by) / 10).toFixed(1)} kN`)),
          ]
          const plain =
            indexOf(
              evidence({ test: { strength: loads(test) }, control: { strength: loads(control) } }),
              'strength-activity-index',
            )?.value ?? 0
          const scaled =
            indexOf(
              evidence({
                test: { strength: loads(test, scale) },
                control: { strength: loads(control, scale) },
              }),
              'strength-activity-index',
            )?.value ?? 0
          const swapped =
            indexOf(
              evidence({ test: { strength: loads(control) }, control: { strength: loads(test) } }),
              'strength-activity-index',
            )?.value ?? 0
          expect(scaled / plain).toBeCloseTo(1, 12)
          expect((plain * swapped) / 10_000).toBeCloseTo(1, 12)
        },
      ),
    )
  })
  it('is the same from pound-force as from kilonewton', () => {
    const pounds = indexOf(
      evidence({
        test: { strength: [strength(['20000 lbf', '20100 lbf', '19900 lbf'])] },
        control: { strength: [strength(['30000 lbf'])] },
      }),
      'strength-activity-index',
    )
    expect(pounds?.value).toBeCloseTo((100 * 20_000) / 30_000, 10)
  })
  it('leaves out an excluded cube and says why', () => {
    const cubes = {
      a: q('100 kN', 'force'),
      b: q('102 kN', 'force'),
      c: { load: q('60 kN', 'force'), excluded: 'corner lost' },
    }
    const index = indexOf(
      evidence({
        test: { strength: [strength([], { specimens: cubes })] },
        control: { strength: [strength(['101 kN'])] },
      }),
      'strength-activity-index',
    )
    expect(index).toMatchObject({
      value: 100,
      n: 2,
      valid: true,
      reasons: ['specimen c excluded: corner lost'],
    })
  })
  it('is not valid when the age is outside its tolerance, in the test or in the control', () => {
    const late = indexOf(
      evidence({
        test: { strength: [strength(['100 kN'], { tested: readMoment('2026-04-10T09:40') })] },
        control: { strength: [strength(['100 kN'])] },
      }),
      'strength-activity-index',
    )
    expect(late).toMatchObject({ valid: false, reasons: ['tested at 30 d 20 min, outside 28 d ± 12 h'] })
    const lateControl = indexOf(
      evidence({
        test: { strength: [strength(['100 kN'])] },
        control: { strength: [strength(['100 kN'], { tested: readMoment('2026-04-10T09:40') })] },
      }),
      'strength-activity-index',
    )
    expect(lateControl?.valid).toBe(false)
    expect(lateControl?.reasons[0]).toMatch(/^control K: tested at/)
  })
  it('is valid with a note when dates alone cannot verify the age', () => {
    const index = indexOf(
      evidence({
        test: { strength: [strength(['100 kN'], { tested: readMoment('2026-04-08') })] },
        control: { strength: [strength(['100 kN'])] },
      }),
      'strength-activity-index',
    )
    expect(index).toMatchObject({
      valid: true,
      reasons: ['the age cannot be verified to the hour: a clock time is missing'],
    })
  })
  it('is not valid at constant flow when the flows differ by more than the points allowed', () => {
    const mortars = (flow: string) =>
      evidence({
        condition: FLOW,
        test: { flow: q(flow, 'fraction'), strength: [strength(['100 kN'])] },
        control: { flow: q('108 %', 'fraction'), strength: [strength(['100 kN'])] },
      })
    expect(indexOf(mortars('113 %'), 'strength-activity-index')?.valid).toBe(true)
    expect(indexOf(mortars('114 %'), 'strength-activity-index')).toMatchObject({
      valid: false,
      reasons: ['flow 114 % against the control’s 108 %, more than 5 percentage points apart'],
    })
  })
  it('is valid with a note at constant flow when a flow is not on record, and without one where the water is fixed', () => {
    const mortars = (condition: MortarCondition, test?: string, control?: string) =>
      evidence({
        condition,
        test: {
          ...(test === undefined ? {} : { flow: q(test, 'fraction') }),
          strength: [strength(['100 kN'])],
        },
        control: {
          ...(control === undefined ? {} : { flow: q(control, 'fraction') }),
          strength: [strength(['100 kN'])],
        },
      })
    const reasons = (...given: Parameters<typeof mortars>) => {
      const found = indexOf(mortars(...given), 'strength-activity-index')
      return [found?.valid, found?.reasons]
    }
    expect(reasons(FLOW, undefined, '108 %')).toEqual([
      true,
      [
        'the flow of the test mortar is not on record, so it cannot be verified that the flows agree within 5 percentage points',
      ],
    ])
    expect(reasons(FLOW, '108 %')).toEqual([
      true,
      [
        'the flow of the control is not on record, so it cannot be verified that the flows agree within 5 percentage points',
      ],
    ])
    expect(reasons(FLOW)).toEqual([
      true,
      [
        'the flows of both mortars are not on record, so it cannot be verified that the flows agree within 5 percentage points',
      ],
    ])
    expect(reasons(WARM)).toEqual([true, []])
  })
  it('is taken from stated strengths where no loads are on record, and from a reported mean, which is said', () => {
    expect(
      indexOf(
        evidence({
          test: { strength: [strength(['30 MPa', '31 MPa'])] },
          control: { strength: [strength(['40 MPa'])] },
        }),
        'strength-activity-index',
      )?.value,
    ).toBeCloseTo(76.25, 12)
    const summary = indexOf(
      evidence({
        test: {
          strength: [
            {
              age: readAge('28 d'),
              tested: readMoment('2026-04-08T09:40'),
              mean: q('30 MPa', 'stress'),
              of: 3,
            },
          ],
        },
        control: { strength: [strength(['40 MPa'])] },
      }),
      'strength-activity-index',
    )
    expect(summary).toMatchObject({
      value: 75,
      n: 3,
      summaryOnly: true,
      reasons: ['only the mean is on record'],
    })
  })
  it('keeps a replaced test beside its retest, not valid', () => {
    const readings = [
      strength(['90 kN']),
      strength(['100 kN'], {
        tested: readMoment('2026-04-08T12:00'),
        'retest-of': readMoment('2026-04-08T09:40'),
      }),
    ]
    const results = lotResults(
      evidence({ test: { strength: readings }, control: { strength: [strength(['100 kN'])] } }),
    ).results.filter((result) => result.property === 'strength-activity-index')
    expect(results.map(({ value, valid, reasons }) => ({ value, valid, reasons }))).toEqual([
      { value: 90, valid: false, reasons: ['replaced by the retest of 8\u00a0April 2026, 12:00'] },
      { value: 100, valid: true, reasons: [] },
    ])
  })
})

describe('lotResults, tests that gave no value', () => {
  const lost = (mark: string) => ({ [mark]: { load: q('60 kN', 'force'), excluded: 'corner lost' } })
  it('lists strength and index as not made where every specimen is excluded, and plans neither', () => {
    const { results, unmade, planned } = lotResults(
      evidence({
        test: { strength: [strength([], { specimens: lost('a') })] },
        control: { strength: [strength(['101 kN'])] },
      }),
    )
    expect({ results, planned }).toEqual({ results: [], planned: [] })
    expect(unmade.map(({ property, reasons }) => ({ property, reasons }))).toEqual([
      {
        property: 'compressive-strength',
        reasons: ['specimen a excluded: corner lost', 'no specimen counts'],
      },
      {
        property: 'strength-activity-index',
        reasons: ['specimen a excluded: corner lost', 'no specimen counts'],
      },
    ])
  })
  it('names the control where its specimens are all excluded', () => {
    const { results, unmade } = lotResults(
      evidence({
        test: { strength: [strength(['101 kN'])] },
        control: { strength: [strength([], { specimens: lost('k') })] },
      }),
    )
    expect(results.map((result) => result.property)).toEqual(['compressive-strength'])
    expect(unmade).toMatchObject([
      {
        property: 'strength-activity-index',
        condition: 'warm',
        age: readAge('28 d'),
        reasons: ['control K: specimen k excluded: corner lost', 'control K: no specimen counts'],
      },
    ])
  })
})

describe('lotResults, one control for many lots', () => {
  it('judges a shared batch by what was known on each date', () => {
    const control: ControlMortar = {
      condition: 'warm',
      laboratory: 'quay',
      cast: readMoment('2026-03-11T09:00'),
      cement: { lot: 'PC' },
      strength: [
        strength(['100 kN']),
        strength(['80 kN'], {
          tested: readMoment('2026-04-08T15:00'),
          'retest-of': readMoment('2026-04-08'),
        }),
      ],
    }
    const early = {
      ...control,
      strength: control.strength?.map((reading) =>
        reading['retest-of'] === undefined ? reading : { ...reading, tested: readMoment('2026-04-09T09:00') },
      ),
    }
    const on = (asOf: string) =>
      indexOf(
        evidence({
          test: { strength: [strength(['80 kN'])] },
          more: { asOf: readMoment(asOf), controls: new Map([['K', early]]) },
        }),
        'strength-activity-index',
      )?.value
    expect([on('2026-04-08'), on('2026-05-01'), on('2026-04-08')]).toEqual([80, 100, 80])
  })
  it('takes a retest of the control before the test it replaces', () => {
    const control = {
      strength: [
        strength(['100 kN']),
        strength(['80 kN'], {
          tested: readMoment('2026-04-08T15:00'),
          'retest-of': readMoment('2026-04-08'),
        }),
      ],
    }
    expect(
      indexOf(evidence({ test: { strength: [strength(['80 kN'])] }, control }), 'strength-activity-index'),
    ).toMatchObject({ value: 100, valid: true })
  })
})

describe('lotResults, water requirement', () => {
  const mortars = (condition: MortarCondition, flow = '110 %') =>
    lotResults(
      evidence({
        condition,
        test: { flow: q(flow, 'fraction'), water: q('233 g', 'batch-mass') },
        control: { flow: q('108 %', 'fraction'), water: q('242 g', 'batch-mass') },
      }),
    ).results
  // Worked by hand: 100 × 233/242 = 96.2810 %.
  it('is the water of the test mortar in per cent of the control’s, at constant flow only', () => {
    expect(mortars(FLOW)).toMatchObject([{ property: 'water-requirement', valid: true, control: 'K' }])
    expect(mortars(FLOW)[0]?.value).toBeCloseTo(96.28099174, 8)
    expect(mortars(WARM)).toEqual([])
  })
  it('stands without a condition at a standard’s, and with it at any other', () => {
    expect(mortars(FLOW)[0]?.condition).toBeUndefined()
    expect(mortars({ ...FLOW, standing: 'modified' })[0]?.condition).toBe('warm')
  })
  it('is not valid where the flows are too far apart', () => {
    expect(mortars(FLOW, '114 %')).toMatchObject([
      {
        valid: false,
        reasons: ['flow 114 % against the control’s 108 %, more than 5 percentage points apart'],
      },
    ])
  })
})

describe('lotResults, resistivity index', () => {
  // Worked by hand: test mean (4310 + 4402 + 4255)/3 − 4.1 = 4318.2333 Ω, control (874 + 887 + 879)/3 − 4.1 =
  // 875.9 Ω; 493.0053 %.
  it('is the ratio of the mean resistivities less end contact, in per cent', () => {
    const index = indexOf(
      evidence({
        test: { resistivity: [resistance(['4310 ohm', '4402 ohm', '4255 ohm'])] },
        control: { resistivity: [resistance(['874 ohm', '887 ohm', '879 ohm'])] },
      }),
      'resistivity-index',
    )
    expect(index?.value).toBeCloseTo((100 * (12_967 / 3 - 4.1)) / (2640 / 3 - 4.1), 10)
    expect(index?.value).toBeCloseTo(493.0053, 3)
    expect(index?.valid).toBe(true)
  })
  it.each([
    [{ temperature: undefined }, 'the temperature of the specimens when read is not on record'],
    [{ temperature: q('49.6 degC', 'temperature') }, 'read at 49.6 °C, outside 23 °C ± 2 °C'],
    [
      { conditioning: 'sealed' as const },
      'read sealed; the condition requires specimens to be read from saturated lime water',
    ],
  ])('is not valid when the reading breaks its condition: %o', (more, reason) => {
    const index = indexOf(
      evidence({
        test: { resistivity: [resistance(['4310 ohm'], more)] },
        control: { resistivity: [resistance(['874 ohm'])] },
      }),
      'resistivity-index',
    )
    expect(index?.valid).toBe(false)
    expect(index?.reasons).toContain(reason)
  })
  it('has no value without geometry, and is listed as not made with the reason', () => {
    const condition = {
      ...WARM,
      resistivity: { ...WARM.resistivity, specimen: { shape: 'prism' as const } },
    } as MortarCondition
    const { results, unmade, planned } = lotResults(
      evidence({
        condition,
        test: { resistivity: [resistance(['4310 ohm'])] },
        control: { resistivity: [resistance(['874 ohm'])] },
      }),
    )
    expect({ results, planned }).toEqual({ results: [], planned: [] })
    expect(unmade.map(({ property, age, reasons }) => ({ property, age, reasons }))).toEqual([
      {
        property: 'bulk-resistivity',
        age: readAge('28 d'),
        reasons: ['the size of a specimen is not known'],
      },
      {
        property: 'resistivity-index',
        age: readAge('28 d'),
        reasons: ['the size of a specimen is not known'],
      },
    ])
  })
  it('is never divided by a control whose end contacts leave nothing', () => {
    const { results, unmade } = lotResults(
      evidence({
        test: { resistivity: [resistance(['4310 ohm'])] },
        control: { resistivity: [resistance(['4.1 ohm'])] },
      }),
    )
    expect(results.map((result) => result.property)).toEqual(['bulk-resistivity'])
    expect(unmade).toMatchObject([
      {
        property: 'resistivity-index',
        reasons: [
          'control K: the end contacts are as large as a reading, or larger, so no resistivity follows from it',
        ],
      },
    ])
  })
  it('is not valid where neither condition nor reading gives the conditioning', () => {
    const condition = {
      ...WARM,
      resistivity: { ...WARM.resistivity, conditioning: undefined },
    } as MortarCondition
    const index = indexOf(
      evidence({
        condition,
        test: { resistivity: [resistance(['4310 ohm'])] },
        control: { resistivity: [resistance(['874 ohm'])] },
      }),
      'resistivity-index',
    )
    expect(index).toMatchObject({
      valid: false,
      reasons: [
        'the conditioning when read is not on record',
        'control K: the conditioning when read is not on record',
      ],
    })
  })
  it('is not valid where the control alone was read hot', () => {
    const index = indexOf(
      evidence({
        test: { resistivity: [resistance(['4310 ohm'])] },
        control: { resistivity: [resistance(['874 ohm'], { temperature: q('50 degC', 'temperature') })] },
      }),
      'resistivity-index',
    )
    expect(index).toMatchObject({
      valid: false,
      reasons: [
        'control K: read at 50 °C, outside 23 °C ± 2 °C',
        'test read at 23.1 °C and control at 50 °C, more than 1 °C apart',
      ],
    })
  })
  it('is not valid when control and test were read more than the degree allowed apart', () => {
    const index = indexOf(
      evidence({
        test: { resistivity: [resistance(['4310 ohm'], { temperature: q('24.2 degC', 'temperature') })] },
        control: { resistivity: [resistance(['874 ohm'])] },
      }),
      'resistivity-index',
    )
    expect(index).toMatchObject({
      valid: false,
      reasons: ['test read at 24.2 °C and control at 23.1 °C, more than 1 °C apart'],
    })
  })
  it('shows what a hot reading would be at the asked temperature, for information, and never uses it', () => {
    const index = indexOf(
      evidence({
        test: { resistivity: [resistance(['2200 ohm'], { temperature: q('50 degC', 'temperature') })] },
        control: { resistivity: [resistance(['874 ohm'])] },
      }),
      'resistivity-index',
    )
    const line = index?.working().find((candidate) => candidate.label === 'for information')
    expect(line?.value).toBeCloseTo((0.05 * (2200 - 4.1)) / 0.5075, 0)
    expect(index?.value).toBeCloseTo((100 * 2195.9) / 869.9, 10)
  })
})

describe('lotResults, what is planned', () => {
  it('awaits a listed age without readings until tolerance and grace are past', () => {
    const lot = (asOf: string) =>
      evidence({ test: { strength: [{ age: readAge('28 d') }] }, more: { asOf: readMoment(asOf) } })
    const test = {
      condition: 'warm',
      age: readAge('28 d'),
      laboratory: 'quay',
      sample: 'C',
      sampleKind: 'composite',
      begun: readMoment('2026-03-11T09:20'),
      due: readMoment('2026-04-08'),
    }
    expect(lotResults(lot('2026-04-15')).planned).toEqual([
      { property: 'compressive-strength', ...test, unread: 'lot' },
      { property: 'strength-activity-index', ...test, unread: 'both' },
    ])
    expect(lotResults(lot('2026-04-16')).planned[0]?.overdueSince?.text).toBe('2026-04-16')
  })
  it('takes a reading later than the as-of date as not yet taken', () => {
    const lot = evidence({
      test: { strength: [strength(['100 kN'])] },
      control: { strength: [strength(['100 kN'])] },
      more: { asOf: readMoment('2026-04-01') },
    })
    expect(lotResults(lot)).toMatchObject({
      results: [],
      planned: [{ due: readMoment('2026-04-08') }, { due: readMoment('2026-04-08') }],
    })
  })
  it('awaits the index alone where only the control is still to be tested', () => {
    const lot = evidence({
      test: { strength: [strength(['100 kN'])] },
      control: { strength: [{ age: readAge('28 d') }] },
    })
    expect(lotResults(lot).planned.map((planned) => planned.property)).toEqual(['strength-activity-index'])
  })
  it('plans nothing for an age that the record does not list, nor for a mortar not yet cast', () => {
    expect(lotResults(evidence({ test: {} })).planned).toEqual([])
    expect(
      lotResults(
        evidence({
          test: { strength: [{ age: readAge('28 d') }] },
          more: { asOf: readMoment('2026-03-10') },
        }),
      ).planned,
    ).toEqual([])
  })
})

describe('lotResults, analyses', () => {
  const analysis = (results: Record<string, string>) =>
    evidence({
      test: {},
      more: {
        tests: [],
        analyses: [
          {
            laboratory: 'quay',
            sample: 'C',
            tested: readMoment('2026-03-10'),
            results: Object.fromEntries(
              Object.entries(results).map(([key, text]) => [key, q(text, 'fraction')]),
            ),
          },
        ],
      },
    })
  it('derives the oxide sum and the alkali equivalent from one analysis', () => {
    const { results } = lotResults(
      analysis({ SiO2: '63.1 %', Al2O3: '16.0 %', Fe2O3: '4.2 %', Na2O: '2.9 %', K2O: '3.3 %' }),
    )
    expect(results.find((result) => result.property === 'oxide-sum')?.value).toBeCloseTo(83.3, 12)
    expect(results.find((result) => result.property === 'alkali-equivalent')?.value).toBeCloseTo(
      2.9 + 0.658 * 3.3,
      12,
    )
  })
  it('makes no sum when an oxide is missing', () => {
    expect(
      lotResults(analysis({ SiO2: '63.1 %', Al2O3: '16.0 %' })).results.map((result) => result.property),
    ).toEqual(['SiO2', 'Al2O3'])
  })
  it('carries a bound into the sum as bounds', () => {
    const sum = lotResults(analysis({ SiO2: '63.1 %', Al2O3: '16.0 %', Fe2O3: '< 0.5 %' })).results.find(
      (result) => result.property === 'oxide-sum',
    )
    expect(sum).toMatchObject({
      censored: 'below',
      bounds: { low: 79.1, high: 79.6, open: 'high' },
      reasons: ['Fe2O3 is reported as < 0.5 %, so the sum is known only within bounds'],
    })
    expect(sum?.value).toBeCloseTo(79.6, 12)
  })
  it('does not add oxides on different bases: the sum is shown, not valid', () => {
    const results = {
      SiO2: q('63.1 %', 'fraction'),
      Al2O3: { value: q('16.0 %', 'fraction'), basis: 'ignited' },
      Fe2O3: q('4.2 %', 'fraction'),
    }
    const sum = lotResults(
      evidence({
        more: {
          tests: [],
          analyses: [{ laboratory: 'quay', sample: 'C', tested: readMoment('2026-03-10'), results }],
        },
      }),
    ).results.find((result) => result.property === 'oxide-sum')
    expect(sum).toMatchObject({
      valid: false,
      reasons: ['the oxides are on different bases: SiO2 dry, Al2O3 ignited, Fe2O3 dry'],
    })
    expect(sum?.basis).toBeUndefined()
  })
  it('makes no valid sum of an excluded value, and lists both with the reason', () => {
    const results = {
      SiO2: q('63.1 %', 'fraction'),
      Al2O3: q('16.0 %', 'fraction'),
      Fe2O3: { value: q('4.2 %', 'fraction'), excluded: 'crucible broke' },
    }
    const all = lotResults(
      evidence({
        more: {
          tests: [],
          analyses: [{ laboratory: 'quay', sample: 'C', tested: readMoment('2026-03-10'), results }],
        },
      }),
    ).results
    expect(all.map((result) => [result.property, result.valid])).toEqual([
      ['SiO2', true],
      ['Al2O3', true],
      ['Fe2O3', false],
      ['oxide-sum', false],
    ])
    expect(all.slice(2).map(({ reasons }) => reasons)).toEqual([
      ['excluded: crucible broke'],
      ['excluded: crucible broke'],
    ])
  })
  it('prints a reported value as written, in another unit with the property’s decimals', () => {
    const results = { density: q('2430 kg/m3', 'density'), SiO2: q('63.100 %', 'fraction') }
    const all = lotResults(
      evidence({
        more: {
          tests: [],
          analyses: [{ laboratory: 'quay', sample: 'C', tested: readMoment('2026-03-10'), results }],
        },
      }),
    ).results
    expect(all).toMatchObject([
      { value: 2.43, unit: 'g/cm3', decimals: 2, written: '2430 kg/m3' },
      { value: 63.1, decimals: 3 },
    ])
  })
  it('gives an agency’s results the role of verification, with the method in force on the date', () => {
    const lot = evidence({
      more: {
        tests: [],
        methodOf: (_, property, date) =>
          isSurelyBefore(date, readMoment('2026-03-15')) ? `${property}-old` : undefined,
        verification: [
          {
            laboratory: 'agency',
            sample: 'C',
            tested: readMoment('2026-03-10'),
            results: { SiO2: q('63.1 %', 'fraction') },
          },
        ],
      },
    })
    expect(lotResults(lot).results).toMatchObject([
      { role: 'verification', method: 'SiO2-old', key: 'SiO2|||SiO2-old|agency|C' },
    ])
  })
  it('knows an analysis from its very day on, the producer’s before an agency’s, in their roles', () => {
    const report = (laboratory: string, tested: string) => ({
      laboratory,
      sample: 'C',
      tested: readMoment(tested),
      results: { SiO2: q('63.1 %', 'fraction') },
    })
    const known = (asOf: string) =>
      lotResults(
        evidence({
          more: {
            asOf: readMoment(asOf),
            tests: [],
            analyses: [report('quay', '2026-03-10'), report('quay', '2026-03-11T08:00')],
            verification: [report('agency', '2026-03-10T23:59'), report('agency', '2026-03-11')],
          },
        }),
      ).results.map(({ role, tested }) => `${role} ${tested}`)
    expect(known('2026-03-09')).toEqual([])
    expect(known('2026-03-10')).toEqual(['producer 2026-03-10', 'verification 2026-03-10T23:59'])
    expect(known('2026-03-11')).toHaveLength(4)
  })
})
