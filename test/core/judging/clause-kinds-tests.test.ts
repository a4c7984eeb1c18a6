/**
 * The kinds of clause logic, numbered as in the survey of specifications that the criteria were designed
 * from: kinds 31 to 39, on
 * sampling, on tests and their conditions, and on classification. Kind 36 stands in supplement.test.ts.
 */
import { readMoment } from '../../../src/core/measure/moment.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import { buildHistory, type HistoryLot } from '../../../src/core/history/history.ts'
import { coverageOf } from '../../../src/core/history/sampling-coverage.ts'
import { isFault, type Quantity, type QuantityKind, readQuantity } from '../../../src/core/measure/units.ts'
import type { WrittenClause, WrittenSampling } from '../../../src/records/criteria/written-criterion.ts'
import { clauseOf, evidenceOf, index, judgeInWords, result, setOf } from './fixture.ts'

function quantity(text: string, kind: QuantityKind): Quantity {
  const read = readQuantity(text, kind)
  if (isFault(read)) throw new Error(`${text}: ${read.fault}`)
  return read
}

describe('judge, sampling coverage', () => {
  const lot = (
    day: number,
    tonnes: number,
    tests = 1,
    kind: 'grab' | 'composite' = 'composite',
  ): HistoryLot => ({
    id: `s/L${day}`,
    sampled: readMoment(`2026-01-${String(day).padStart(2, '0')}T08:00`),
    from: readMoment(`2026-01-${String(day - 1).padStart(2, '0')}T08:00`),
    class: null,
    tonnes,
    results: Array.from({ length: tests }, (_, place) =>
      result('density', 2.4, { sample: `T${place}`, sampleKind: kind }),
    ),
  })
  const sampling: WrittenSampling = {
    properties: ['density'],
    every: quantity('2000 t', 'lot-mass'),
    'or-every': quantity('30 d', 'duration'),
  }
  /** The last of the lots, judged at so many days of records. */
  function covered(lots: readonly HistoryLot[], more: Partial<WrittenSampling> = {}, recordDays = 400) {
    const past = buildHistory(lots, [])
    const id = lots.at(-1)?.id ?? ''
    const evidence = evidenceOf([], {
      coverage: (property, sample) => coverageOf(past, id, readMoment('2026-12-31'), { property, sample }),
      recordDays,
    })
    return clauseOf(judgeInWords(setOf([{ clause: 'c', sampling: { ...sampling, ...more } }]), evidence), 'c')
  }

  it.each([
    ['within both', [lot(2, 500), lot(12, 1500)], 'meets'],
    ['on the mass', [lot(2, 500), lot(12, 2000)], 'meets'],
    ['over the mass', [lot(2, 500), lot(12, 2001)], 'does-not-meet'],
    ['on the time', [lot(1, 500), lot(31, 1500)], 'meets'],
    [
      'over the mass with a lot untested between',
      [lot(2, 500), lot(7, 800, 0), lot(12, 1500)],
      'does-not-meet',
    ],
    ['twice the mass with two tests', [lot(2, 500), lot(12, 4000, 2)], 'meets'],
    ['untested and within the frequency still', [lot(2, 500), lot(12, 1500, 0)], 'meets'],
    ['untested and over it', [lot(2, 500), lot(7, 1500, 0), lot(12, 600, 0)], 'does-not-meet'],
  ])('judge, 31. an established source: %s', (_, lots, outcome) => {
    expect(covered(lots).outcome).toBe(outcome)
  })

  it('judge, 31. over the time alone', () => {
    const late = { ...lot(2, 100), id: 's/L40', sampled: readMoment('2026-02-01T08:01') }
    const clause = covered([lot(2, 500), late])
    expect(clause.outcome).toBe('does-not-meet')
    expect(clause.reason).toBe(
      'density: one test in 30.0 d and 100 t since the test of s/L2; a test is due every 30 d or 2000 t',
    )
  })

  it('judge, 31. a new source is tested at its own frequency until its records are long enough', () => {
    const fresh = {
      'new-source': { every: quantity('400 t', 'lot-mass'), for: quantity('180 d', 'duration') },
    }
    const lots = [lot(2, 300), lot(12, 500)]
    expect([
      covered(lots, fresh, 179).outcome,
      covered(lots, fresh, 180).outcome,
      covered([lot(2, 300), lot(12, 400)], fresh, 10).outcome,
    ]).toEqual(['does-not-meet', 'meets', 'meets'])
    expect(covered(lots, fresh, 10).reason).toContain('a test is due every 400 t for a new source')
  })

  it('judge, 31. only samples of the kind asked for count', () => {
    const lots = [lot(2, 500), lot(7, 1500, 1, 'grab'), lot(12, 1500)]
    expect([covered(lots).outcome, covered(lots, { sample: 'composite' }).outcome]).toEqual([
      'meets',
      'does-not-meet',
    ])
  })

  it('judge, 31. counts the first lot from the beginning of its production, and cannot say without the production', () => {
    expect(covered([lot(2, 2000)]).outcome).toBe('meets')
    expect(covered([lot(2, 2001)]).reason).toBe(
      'density: one test in 1.0 d and 2001 t since the source’s records began; a test is due every 30 d or 2000 t',
    )
    expect(judgeInWords(setOf([{ clause: 'c', sampling }]), evidenceOf([])).outcome).toBe('not-reported')
  })

  it('coverageOf gives what was produced since the test before', () => {
    const past = buildHistory([lot(2, 500), lot(7, 800, 0), lot(12, 1500)], [])
    expect(coverageOf(past, 's/L12', readMoment('2026-12-31'), { property: 'density' })).toEqual({
      since: 's/L2',
      hours: 240,
      tonnes: 2300,
      tests: 1,
    })
    expect(coverageOf(past, 's/L7', readMoment('2026-12-31'), { property: 'density' })).toEqual({
      since: 's/L2',
      hours: 120,
      tonnes: 800,
      tests: 0,
    })
    expect(coverageOf(past, 's/L2', readMoment('2026-12-31'), { property: 'density' })).toEqual({
      hours: 24,
      tonnes: 500,
      tests: 1,
    })
    expect(() => coverageOf(past, 's/none', readMoment('2026-12-31'), { property: 'density' })).toThrow(
      RangeError,
    )
  })

  it('coverageOf counts a mortar from its casting, an analysis from its result, and what is under way, by the date asked for', () => {
    const strength = {
      property: 'strength-activity-index',
      condition: 'c311',
      age: readAge('28 d'),
      sample: 'T0',
      sampleKind: 'composite',
    } as const
    const cast: HistoryLot = {
      ...lot(2, 500, 0),
      results: [
        result('strength-activity-index', 80, {
          ...strength,
          tested: readMoment('2026-02-05'),
          begun: readMoment('2026-01-08T09:00'),
        }),
        result('density', 2.4, { tested: readMoment('2026-01-20'), sampleKind: 'composite' }),
      ],
    }
    const planned: HistoryLot = {
      ...lot(12, 1500, 0),
      planned: [
        {
          ...strength,
          unread: 'both',
          laboratory: 'quay',
          begun: readMoment('2026-01-15T09:00'),
          due: readMoment('2026-02-12'),
        },
      ],
    }
    const past = buildHistory([cast, planned, lot(22, 700, 0)], [])
    const since = (asOf: string, property: string) => {
      const { since: from, tests } = coverageOf(past, 's/L22', readMoment(asOf), { property })
      return [from, tests]
    }
    expect([
      since('2026-01-07', 'strength-activity-index'),
      since('2026-01-08', 'strength-activity-index'),
      since('2026-01-15', 'strength-activity-index'),
    ]).toEqual([
      [undefined, 0],
      ['s/L2', 0],
      ['s/L12', 0],
    ])
    expect([since('2026-01-19', 'density'), since('2026-01-20', 'density')]).toEqual([
      [undefined, 0],
      ['s/L2', 0],
    ])
    expect(
      coverageOf(past, 's/L12', readMoment('2026-01-15'), {
        property: 'strength-activity-index',
        sample: 'composite',
      }).tests,
    ).toBe(1)
    expect(
      coverageOf(past, 's/L12', readMoment('2026-01-15'), {
        property: 'strength-activity-index',
        sample: 'grab',
      }).tests,
    ).toBe(0)
  })
})

describe('judge, tests and their conditions', () => {
  const activity = setOf([
    {
      clause: 'c',
      property: 'strength-activity-index',
      condition: 'c311',
      age: readAge('28 d'),
      'at-least': '75 %',
    },
  ])

  it('judge, 32. a test that broke its conditions is not valid, whichever side of the limit it lies on', () => {
    const broken = {
      valid: false,
      reasons: [
        { code: 'range-beyond', params: { measure: 'range', of: 3, percent: 9.1, limitPercent: 8.7 } },
      ],
    } as const
    expect(
      [index('28 d', 60, broken), index('28 d', 90, broken)].map(
        (made) => judgeInWords(activity, evidenceOf([made])).outcome,
      ),
    ).toEqual(['not-valid', 'not-valid'])
    const unmade = {
      property: 'strength-activity-index',
      condition: 'c311',
      age: readAge('28 d'),
      laboratory: 'lab',
      sample: 'C',
      sampleKind: 'composite',
      tested: readMoment('2026-03-10'),
      begun: readMoment('2026-02-10'),
      reasons: [{ code: 'not-cast-together', params: { daysBefore: 14 } }],
    } as const
    expect(judgeInWords(activity, evidenceOf([], { unmade: [unmade] })).clauses[0]).toMatchObject({
      outcome: 'not-valid',
      reason: 'the test is not valid: cast 14 d before the test mortar; both must be cast on the same day',
    })
  })

  it('judge, 33. an index of another condition is never held against the limit', () => {
    expect(
      [index('28 d', 75), index('28 d', 74), index('28 d', 99, { condition: 'modified-50c' })].map(
        (made) => judgeInWords(activity, evidenceOf([made])).outcome,
      ),
    ).toEqual(['meets', 'does-not-meet', 'not-reported'])
  })

  it('judge, 34. the multiple factor is the product of loss and residue of one analysis', () => {
    const set = setOf([{ clause: 'c', property: 'multiple-factor', 'at-most': '255' }])
    const found = (loss: number, residue: number, more = {}) =>
      clauseOf(
        judgeInWords(
          set,
          evidenceOf([result('loss-on-ignition', loss), result('residue-45um', residue, more)]),
        ),
        'c',
      )
    expect(
      [found(5, 50), found(8.5, 30), found(9, 30)].map(({ outcome, value }) => [outcome, value]),
    ).toEqual([
      ['meets', 250],
      ['meets', 255],
      ['does-not-meet', 270],
    ])
    expect([
      found(5, 50, { sample: 'D' }).outcome,
      found(5, 50, { laboratory: 'other' }).outcome,
      // Less than 5 × 60 = 300, perhaps nothing.
      found(5, 60, { censored: 'below' }).outcome,
      found(5, 51, { censored: 'below' }).outcome,
    ]).toEqual(['not-reported', 'not-reported', 'not-reported', 'meets'])
  })

  // Worked number of the survey, section 11.4: 18.04 is 18.0 when rounded to one digit.
  it.each([
    ['the digits of the limit', {}, 'meets'],
    ['no rounding', { resolution: 'none' }, 'does-not-meet'],
    ['a step of 0.01', { resolution: 0.01 }, 'does-not-meet'],
    ['a step of 0.5', { resolution: 0.5 }, 'meets'],
  ])('judge, 35. 18.04 against at most 18.0, with %s', (_, resolution, outcome) => {
    const set = setOf([{ clause: 'c', property: 'CaO', 'at-most': '18.0 %', ...resolution }])
    expect(
      [18, 18.04, 18.3].map((value) => judgeInWords(set, evidenceOf([result('CaO', value)])).outcome),
    ).toEqual(['meets', outcome, 'does-not-meet'])
    expect(judgeInWords(set, evidenceOf([])).outcome).toBe('not-reported')
  })

  it('judge, 37. one document branches by the use of the material', () => {
    const by = (use: string, limit: string): WrittenClause => ({
      property: 'loss-on-ignition',
      'at-most': limit,
      when: [{ fact: 'use', is: [use] }],
    })
    const set = setOf([{ clause: 'c', 'all-of': [by('concrete', '5.0 %'), by('soil', '10.0 %')] }])
    const outcome = (value: number, use?: string) =>
      judgeInWords(set, evidenceOf([result('loss-on-ignition', value)], { facts: { use } })).outcome
    expect([
      outcome(5, 'concrete'),
      outcome(8, 'concrete'),
      outcome(8, 'soil'),
      outcome(10.1, 'soil'),
      outcome(2),
    ]).toEqual(['meets', 'does-not-meet', 'meets', 'does-not-meet', 'not-reported'])
  })
})

describe('judge, classification without a verdict', () => {
  const bands: WrittenClause = {
    clause: 'c',
    property: 'r3-heat',
    band: [
      { title: 'not reactive', below: '160 J/g' },
      { title: 'moderate', below: '400 J/g' },
      { title: 'high', 'at-least': '400 J/g' },
    ],
  }

  it.each([
    [100, 'not reactive'],
    [160, 'moderate'],
    [399, 'moderate'],
    [400, 'high'],
  ])('judge, 38. a heat of %s J/g is %s', (value, band) => {
    const verdict = judgeInWords(setOf([bands]), evidenceOf([result('r3-heat', value)]))
    expect(clauseOf(verdict, 'c')).toMatchObject({ outcome: 'reported', band, kind: 'bands' })
    expect(verdict.outcome).toBe('reported')
  })

  it('judge, 38. no result, a censored one, and one outside all bands', () => {
    expect(judgeInWords(setOf([bands]), evidenceOf([])).outcome).toBe('not-reported')
    expect(
      judgeInWords(setOf([bands]), evidenceOf([result('r3-heat', 300, { censored: 'below' })])).outcome,
    ).toBe('not-reported')
    const narrow = setOf([{ ...bands, band: [{ title: 'low', below: '100 J/g' }] }])
    expect(judgeInWords(narrow, evidenceOf([result('r3-heat', 200)])).clauses[0]).toMatchObject({
      outcome: 'reported',
      reason: 'in none of the bands',
    })
  })

  it('judge, 38. regions of two variables: heat and lime consumption', () => {
    const set = setOf([
      {
        clause: 'c',
        property: 'r3-heat',
        band: [
          {
            title: 'inert',
            'at-most': '190 J/g',
            and: [{ property: 'lime-consumption', 'at-most': '50 %' }],
          },
          {
            title: 'hydraulic',
            above: '190 J/g',
            and: [{ property: 'lime-consumption', 'at-most': '50 %' }],
          },
          { title: 'pozzolanic', and: [{ property: 'lime-consumption', above: '50 %' }] },
        ],
      },
    ])
    const found = (heat: number, lime?: number) =>
      judgeInWords(
        set,
        evidenceOf([
          result('r3-heat', heat),
          ...(lime === undefined ? [] : [result('lime-consumption', lime)]),
        ]),
      ).clauses[0]
    expect(
      [found(100, 20), found(190, 50), found(300, 50), found(300, 51), found(100, 80)].map(
        (clause) => clause?.band,
      ),
    ).toEqual(['inert', 'inert', 'hydraulic', 'pozzolanic', 'pozzolanic'])
    expect(found(100)).toMatchObject({
      outcome: 'not-reported',
      reason: expect.stringContaining('lime consumption'),
    })
  })

  it('judge, 39. what a set says on retests is kept, and changes no outcome', () => {
    const clause: WrittenClause = { clause: 'c', property: 'SO3', 'at-most': '5.0 %' }
    const set = setOf([clause], { retests: 'two further samples' })
    expect(set.retests).toBe('two further samples')
    expect(judgeInWords(set, evidenceOf([result('SO3', 6)]))).toEqual(
      judgeInWords(setOf([clause]), evidenceOf([result('SO3', 6)])),
    )
  })
})
