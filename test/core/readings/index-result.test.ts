import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment, type Moment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import type {
  ControlMortar,
  LotEvidence,
  MortarCondition,
  TestMortar,
} from '../../../src/core/mortar/mortar.ts'
import { mortarResults } from '../../../src/core/readings/mortar-results.ts'
import { isMade, type Result } from '../../../src/core/result/result.ts'
import { evidence, FLOW, q, resistance, strength, WARM, worded } from './fixture.ts'

interface Asked {
  readonly test?: Partial<TestMortar>
  readonly control?: Partial<ControlMortar>
  readonly condition?: MortarCondition
  readonly more?: Partial<LotEvidence>
}

/** Both mortars crushed at 40 MPa and 50 MPa unless said otherwise. */
function outcomes({ test = {}, control = {}, condition = WARM, more = {} }: Asked) {
  const lot = evidence({
    test: { strength: [strength(['100 kN'])], ...test },
    control: { strength: [strength(['125 kN'])], ...control },
    condition,
    more,
  })
  return lot.tests.flatMap((mortar) => mortarResults(mortar, lot))
}
function indexOf(asked: Asked, property = 'strength-activity-index') {
  const found = outcomes(asked)
    .filter(isMade)
    .find((result) => result.property === property)
  if (found === undefined) throw new Error('no index')
  return worded(found)
}

describe('indexResult', () => {
  it('states property, condition, age, laboratory, sample and control, and no member that it does not know', () => {
    const { working: _working, ...index } = indexOf({})
    expect(index).toEqual({
      key: 'strength-activity-index|warm|28 d||quay|C',
      property: 'strength-activity-index',
      condition: 'warm',
      age: readAge('28 d'),
      laboratory: 'quay',
      sample: 'C',
      sampleKind: 'composite',
      role: 'producer',
      begun: readMoment('2026-03-11T09:20'),
      value: 80,
      unit: '%',
      decimals: 1,
      n: 1,
      tested: readMoment('2026-04-08T09:40'),
      control: 'K',
      valid: true,
      reasons: [],
    })
    expect(Object.values(index)).not.toContain(undefined)
  })
  it('is tested when the later of both mortars was', () => {
    const late = { tested: readMoment('2026-04-08T11:00') }
    expect(indexOf({ control: { strength: [strength(['125 kN'], late)] } }).tested.text).toBe(
      '2026-04-08T11:00',
    )
    expect(indexOf({ test: { strength: [strength(['100 kN'], late)] } }).tested.text).toBe('2026-04-08T11:00')
    // A date alone comes before every clock time of its day.
    const undated = { tested: readMoment('2026-04-08') }
    expect(indexOf({ control: { strength: [strength(['125 kN'], undated)] } }).tested.text).toBe(
      '2026-04-08T09:40',
    )
    expect(indexOf({ test: { strength: [strength(['100 kN'], undated)] } }).tested.text).toBe(
      '2026-04-08T09:40',
    )
  })
  it('goes by the laboratory’s method for the index on that day, the mean by the method of its own', () => {
    const methodOf = (laboratory: string, property: string, date: Moment) =>
      `${laboratory}/${property}/${date.text.slice(11)}`
    const control = { strength: [strength(['125 kN'], { tested: readMoment('2026-04-08T11:00') })] }
    expect(outcomes({ control, more: { methodOf } })).toMatchObject([
      {
        method: 'quay/compressive-strength/09:40',
        key: 'compressive-strength|warm|28 d|quay/compressive-strength/09:40|quay|C',
      },
      {
        method: 'quay/strength-activity-index/11:00',
        key: 'strength-activity-index|warm|28 d|quay/strength-activity-index/11:00|quay|C',
      },
    ])
  })
  it('has the specimens of the test mortar behind it, and is a summary where either mortar is', () => {
    const mean = {
      age: readAge('28 d'),
      tested: readMoment('2026-04-08T09:40'),
      mean: q('50 MPa', 'stress'),
      of: 6,
    }
    expect(indexOf({ test: { strength: [strength(['100 kN', '100 kN'])] } })).toMatchObject({ n: 2 })
    expect(indexOf({ control: { strength: [mean] } })).toMatchObject({ n: 1, value: 80, summaryOnly: true })
    expect(indexOf({ test: { strength: [mean] } })).toMatchObject({ n: 6, value: 100, summaryOnly: true })
  })
  it('has an interval from specimens that count, and none from a single one', () => {
    expect(indexOf({})).not.toHaveProperty('interval')
    const two = indexOf({
      test: {
        strength: [
          strength([], {
            specimens: {
              a: q('100 kN', 'force'),
              b: q('100 kN', 'force'),
              c: { load: q('10 kN', 'force'), excluded: 'broke' },
            },
          }),
        ],
      },
      control: { strength: [strength(['125 kN', '125 kN'])] },
    })
    // Without any scatter the interval is the point itself.
    expect(two.interval).toMatchObject({ shape: 'bounded', low: 80, high: 80, df: 2, method: 'fieller' })
  })
  it('leaves the index out where the control was not read at that age', () => {
    expect(
      outcomes({ control: { strength: [strength(['125 kN'], { age: readAge('7 d') })] } }).map(
        ({ property }) => property,
      ),
    ).toEqual(['compressive-strength'])
  })
  it('is not valid where either reading is not, with the control’s reasons under its name', () => {
    const late = { tested: readMoment('2026-04-10T09:40') }
    expect(indexOf({ test: { strength: [strength(['100 kN'], late)] } })).toMatchObject({
      valid: false,
      reasons: ['tested at 30 d 20 min, outside 28 d ± 12 h'],
    })
    expect(indexOf({ control: { strength: [strength(['125 kN'], late)] } })).toMatchObject({
      valid: false,
      reasons: ['control K: tested at 30 d 40 min, outside 28 d ± 12 h'],
    })
  })
  it('is not valid against a control of another condition', () => {
    expect(indexOf({ control: { condition: 'cold' } })).toMatchObject({
      valid: false,
      reasons: ['the control K was made under another condition'],
    })
  })
  it('says what is wrong in order: the readings, the pair, flow, condition, the control, then notes', () => {
    const asked = { strength: { age: readAge('28 d'), 'at-least': q('51 MPa', 'stress') } }
    const found = indexOf({
      condition: { ...FLOW, control: asked },
      test: {
        flow: q('120 %', 'fraction'),
        strength: [strength(['100 kN'], { tested: readMoment('2026-04-08') })],
      },
      control: {
        condition: 'cold',
        laboratory: 'pier',
        flow: q('108 %', 'fraction'),
        strength: [strength(['125 kN'], { tested: readMoment('2026-04-08') })],
      },
    })
    expect(found).toMatchObject({
      valid: false,
      reasons: [
        'the age cannot be verified to the hour: a clock time is missing',
        'control K: the age cannot be verified to the hour: a clock time is missing',
        'flow 120 % against the control’s 108 %, more than 5 percentage points apart',
        'the control K was made under another condition',
        'control K: its strength at 28 d is 50.0 MPa, less than 51 MPa',
        'the control was made by another laboratory, pier',
      ],
    })
  })
  it('holds the control’s strength against the condition by a valid reading of that age alone', () => {
    const asked = { strength: { age: readAge('28 d'), 'at-least': q('51 MPa', 'stress') } }
    const resist = { resistivity: [resistance(['874 ohm'])] }
    const at = (readings: ControlMortar['strength']) =>
      indexOf(
        {
          condition: { ...WARM, control: asked },
          test: { ...resist, strength: [] },
          control: { ...resist, ...(readings === undefined ? {} : { strength: readings }) },
        },
        'resistivity-index',
      ).reasons
    const weak = ['control K: its strength at 28 d is 50.0 MPa, less than 51 MPa']
    expect(at([strength(['125 kN'])])).toEqual(weak)
    expect(
      at([strength(['125 kN'], { age: readAge('7 d'), tested: readMoment('2026-03-18T09:00') })]),
    ).toEqual([])
    expect(at([strength(['125 kN'], { tested: readMoment('2026-04-12T09:00') })])).toEqual([])
    expect(at([])).toEqual([])
  })
  it('compares temperatures within the lot’s own limit where the condition sets none', () => {
    const warmer = resistance(['874 ohm'], { temperature: q('24.6 degC', 'temperature') })
    const at = (readWithin: number) =>
      indexOf(
        {
          test: { resistivity: [warmer] },
          control: { resistivity: [resistance(['874 ohm'])] },
          more: { readWithin },
        },
        'resistivity-index',
      )
    expect(at(1.5)).toMatchObject({ valid: true, reasons: [] })
    expect(at(1.4)).toMatchObject({
      valid: false,
      reasons: ['test read at 24.6 °C and control at 23.1 °C, more than 1.4 °C apart'],
    })
  })
  it('is not made where either mortar has no mean, and says whose', () => {
    const lost = [strength([], { specimens: { a: { excluded: 'lost' } } })]
    const unmade = (asked: Asked) =>
      outcomes(asked)
        .filter((outcome) => !isMade(outcome))
        .map(worded)
    const own = ['specimen a excluded: lost', 'no specimen counts']
    const shared = {
      condition: 'warm',
      age: readAge('28 d'),
      laboratory: 'quay',
      sample: 'C',
      sampleKind: 'composite',
      begun: expect.anything() as Moment,
    }
    expect(unmade({ test: { strength: lost }, control: { strength: lost } })).toEqual([
      { ...shared, property: 'compressive-strength', tested: readMoment('2026-04-08T09:40'), reasons: own },
      {
        ...shared,
        property: 'strength-activity-index',
        tested: readMoment('2026-04-08T09:40'),
        reasons: own,
      },
    ])
    expect(unmade({ control: { strength: lost } })).toEqual([
      {
        ...shared,
        property: 'strength-activity-index',
        tested: readMoment('2026-04-08T09:40'),
        reasons: own.map((reason) => `control K: ${reason}`),
      },
    ])
  })
})

describe('mortarResults', () => {
  it('sets the control’s mean beside the test’s own, and none where there is none', () => {
    const means = (asked: Asked) =>
      outcomes(asked)
        .filter((outcome): outcome is Result => isMade(outcome))
        .map(({ property, controlValue }) => [property, controlValue])
    expect(means({})).toEqual([
      ['compressive-strength', 50],
      ['strength-activity-index', undefined],
    ])
    expect(means({ control: { strength: [] } })).toEqual([['compressive-strength', undefined]])
    const lost = [strength([], { specimens: { a: { excluded: 'lost' } } })]
    expect(means({ control: { strength: lost } })).toEqual([['compressive-strength', undefined]])
  })
  it('gives nothing before the mortar was cast, nor without its condition or control', () => {
    expect(outcomes({ more: { asOf: readMoment('2026-03-10') } })).toEqual([])
    expect(outcomes({ more: { conditions: new Map() } })).toEqual([])
    expect(outcomes({ more: { controls: new Map() } })).toEqual([])
  })
  it('gives readings of the very day, of a mortar cast on it', () => {
    const day = { tested: readMoment('2026-03-11T15:00'), age: readAge('6 h') }
    expect(
      outcomes({ test: { strength: [strength(['1 kN'], day)] }, more: { asOf: readMoment('2026-03-11') } }),
    ).toMatchObject([{ property: 'compressive-strength', age: readAge('6 h') }])
  })
})

describe('indexResult, after a specimen was dropped', () => {
  // 125 and 130 kN stand together, 160 kN does not: the range of three is 25 %, that of two 3.9 %.
  it('says that the interval is too narrow, of the control’s specimens too', () => {
    const three = [strength(['125 kN', '130 kN', '160 kN'])]
    const even = [strength(['125 kN', '126 kN', '127 kN'])]
    const narrow = (reasons: readonly string[]) => reasons.filter((reason) => reason.includes('too narrow'))
    expect(narrow(indexOf({ test: { strength: three }, control: { strength: even } }).reasons)).toEqual([
      'the interval is too narrow, since a specimen was dropped: by simulation it holds the ratio in 80 to 93 % of such cases, not in 95 %',
    ])
    expect(narrow(indexOf({ test: { strength: even }, control: { strength: three } }).reasons)).toHaveLength(
      1,
    )
    expect(narrow(indexOf({ test: { strength: even }, control: { strength: even } }).reasons)).toEqual([])
  })

  it('says nothing of an interval where there is none', () => {
    const reasons = indexOf({ test: { strength: [strength(['125 kN', '130 kN', '160 kN'])] } }).reasons
    expect(reasons.some((reason) => reason.includes('too narrow'))).toBe(false)
  })
})
