/**
 * The kinds of clause logic, numbered as in the survey of specifications that the criteria were designed
 * from: kinds 25 to 30, on
 * a source's history. Each has a passing, a failing and a not-determined case, and the very limit.
 */
import { readMoment } from '../../../src/core/measure/moment.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import { describe, expect, it } from 'vitest'
import type { Evidence } from '../../../src/core/evidence/evidence.ts'
import { acceptanceNumber } from '../../../src/core/judging/by-attributes.ts'
import { meanOfPreceding } from '../../../src/core/judging/deviation.ts'
import type { PrecedingResult } from '../../../src/core/result/result.ts'
import { isFault, type Quantity, type QuantityKind, readQuantity } from '../../../src/core/measure/units.ts'
import type { WrittenClause, WrittenStatistic } from '../../../src/records/criteria/written-criterion.ts'
import { clauseOf, evidenceOf, history, index, judgeInWords, result, setOf } from './fixture.ts'

function quantity(text: string, kind: QuantityKind): Quantity {
  const read = readQuantity(text, kind)
  if (isFault(read)) throw new Error(`${text}: ${read.fault}`)
  return read
}

/** The control period that a history answers with, whatever the days asked for. */
function period(values: readonly number[]): NonNullable<Evidence['period']> {
  const all: PrecedingResult[] = values.map((value, place) => ({
    lot: `s/L${place + 1}`,
    sampled: readMoment('2026-01-01'),
    value,
  }))
  return () => all
}

function times(count: number, value: number): number[] {
  return Array.from({ length: count }, () => value)
}

describe('judge, variation from preceding and declared values', () => {
  const density: WrittenClause = {
    clause: 'c',
    property: 'density',
    'deviation-from': { preceding: 10 },
    relative: 'yes',
    'magnitude-at-most': '5 %',
  }
  const residue: WrittenClause = {
    clause: 'c',
    property: 'residue-45um',
    'deviation-from': { preceding: 10 },
    'magnitude-at-most': '5 percentage points',
  }

  // Worked numbers of the survey, section 11.4: mean 2.40, allowed 2.28 to 2.52.
  it.each([
    [2.4, 'meets'],
    [2.28, 'meets'],
    [2.52, 'meets'],
    [2.53, 'does-not-meet'],
    [2.27, 'does-not-meet'],
  ])('judge, 25. density %s against a mean of 2.40 of three results', (value, outcome) => {
    expect(
      judgeInWords(
        setOf([density]),
        evidenceOf([result('density', value)], { preceding: history('density', [2.3, 2.4, 2.5]) }),
      ).outcome,
    ).toBe(outcome)
  })

  it('judge, 25. the eleventh preceding result drops out of the mean', () => {
    const clause = clauseOf(
      judgeInWords(
        setOf([density]),
        evidenceOf([result('density', 2.4)], { preceding: history('density', [9, ...times(10, 2.4)]) }),
      ),
      'c',
    )
    expect(clause).toMatchObject({ outcome: 'meets', compared: 0, against: { n: 10 } })
    expect(clause.against?.mean).toBeCloseTo(2.4, 12)
  })

  // 15.0 to 25.0: percentage points, not 5 % of 20.
  it.each([
    [20, 'meets'],
    [15, 'meets'],
    [25, 'meets'],
    [25.1, 'does-not-meet'],
    [14.9, 'does-not-meet'],
  ])('judge, 25. residue %s against a mean of 20.0, in points', (value, outcome) => {
    expect(
      judgeInWords(
        setOf([residue]),
        evidenceOf([result('residue-45um', value)], { preceding: history('residue-45um', [19, 20, 21]) }),
      ).outcome,
    ).toBe(outcome)
  })

  it('judge, 25. without a preceding result it is not evaluable, which is no fail', () => {
    expect(judgeInWords(setOf([density]), evidenceOf([result('density', 2.4)])).outcome).toBe(
      'insufficient-history',
    )
    expect(meanOfPreceding([])).toBeNull()
  })

  it.each([
    ['2000 kg/m3', 2.1, 'meets'],
    ['2000 kg/m3', 2.2, 'meets'],
    ['2000 kg/m3', 1.8, 'meets'],
    ['2000 kg/m3', 2.21, 'does-not-meet'],
    [undefined, 2.1, 'not-reported'],
  ])('judge, 27. declared %s, found %s g/cm3, tolerance 200 kg/m3', (declared, value, outcome) => {
    const set = setOf([
      {
        clause: 'c',
        property: 'density',
        'deviation-from': { declared: 'yes' },
        'magnitude-at-most': '200 kg/m3',
      },
    ])
    expect(
      judgeInWords(
        set,
        evidenceOf(
          [result('density', value)],
          declared === undefined ? {} : { declared: { density: declared } },
        ),
      ).outcome,
    ).toBe(outcome)
  })

  it('judge, 27. the declared value itself may have a limit', () => {
    const set = setOf([
      { clause: 'c', property: 'residue-45um', 'at-most': '40 %', statistic: { declared: 'yes' } },
    ])
    const outcome = (declared?: string) =>
      judgeInWords(
        set,
        evidenceOf(
          [result('residue-45um', 50)],
          declared === undefined ? {} : { declared: { 'residue-45um': declared } },
        ),
      ).outcome
    expect([outcome('35 %'), outcome('40 %'), outcome('41 %'), outcome()]).toEqual([
      'meets',
      'meets',
      'does-not-meet',
      'not-reported',
    ])
  })
})

describe('judge, several results of a source', () => {
  const rolling = (resolution?: number) =>
    setOf([
      {
        clause: 'c',
        'all-of': [
          {
            clause: 'mean',
            property: 'strength-activity-index',
            condition: 'c311',
            age: readAge('28 d'),
            'at-least': resolution === undefined ? '95.0 %' : '95 %',
            statistic: { 'rolling-mean': 5 },
            ...(resolution === undefined ? {} : { resolution }),
          },
          {
            clause: 'floor',
            property: 'strength-activity-index',
            condition: 'c311',
            age: readAge('28 d'),
            'at-least': '90 %',
          },
        ],
      },
    ])
  const lastOf = (values: readonly number[]) =>
    evidenceOf([index('28 d', values.at(-1) ?? Number.NaN)], {
      preceding: history('strength-activity-index', values.slice(0, -1)),
    })

  // Worked numbers of the survey, section 11.4.
  it.each([
    [[96, 94, 95, 97, 93], 'meets', 'meets'],
    [[99, 99, 99, 99, 89], 'meets', 'does-not-meet'],
    [[92, 94, 95, 96, 97], 'does-not-meet', 'meets'],
  ])('judge, 26. mean of five at least 95.0 and none below 90: %s', (values, ofMean, ofFloor) => {
    const verdict = judgeInWords(rolling(), lastOf(values))
    expect([clauseOf(verdict, 'mean').outcome, clauseOf(verdict, 'floor').outcome]).toEqual([ofMean, ofFloor])
    expect(clauseOf(verdict, 'mean').against).toMatchObject({ n: 5, lots: ['s/L1', 's/L2', 's/L3', 's/L4'] })
  })

  it('judge, 26. a mean of 94.8 is met where the set compares whole numbers: rounding is data', () => {
    expect(clauseOf(judgeInWords(rolling(1), lastOf([92, 94, 95, 96, 97])), 'mean')).toMatchObject({
      outcome: 'meets',
      compared: 95,
    })
  })

  it('judge, 26. with fewer results the mean has no history yet, and the single floor is judged', () => {
    const verdict = judgeInWords(rolling(), lastOf([96, 94, 89]))
    expect(clauseOf(verdict, 'mean')).toMatchObject({
      outcome: 'insufficient-history',
      reason: '3 results of the 5 that the clause needs',
    })
    expect(clauseOf(verdict, 'floor').outcome).toBe('does-not-meet')
    expect(judgeInWords(rolling(), lastOf([96, 94, 90])).outcome).toBe('insufficient-history')
  })

  const variables = (limit: Pick<WrittenClause, 'at-least' | 'at-most' | 'between' | 'resolution'>) =>
    setOf([
      {
        clause: 'c',
        property: 'oxide-sum',
        ...limit,
        statistic: {
          variables: {
            period: quantity('365 d', 'duration'),
            'at-least': 20,
            share: quantity('90 %', 'fraction'),
            confidence: quantity('95 %', 'fraction'),
          },
        },
      },
    ])
  /** Twenty results with the mean 80 and the standard deviation s: ten above and ten below by s √(19/20). */
  const spread = (s: number) => [
    ...times(10, 80 - s * Math.sqrt(19 / 20)),
    ...times(10, 80 + s * Math.sqrt(19 / 20)),
  ]
  const over = (values: readonly number[]) =>
    evidenceOf([result('oxide-sum', values.at(-1) ?? Number.NaN)], { period: period(values.slice(0, -1)) })

  it('judge, 28. by variables: 80.0 − 1.926 × 2.0 = 76.1 conforms to 75, and 74.2 with s of 3.0 does not though no result is below 75', () => {
    const conforming = clauseOf(judgeInWords(variables({ 'at-least': '75 %' }), over(spread(2))), 'c')
    expect(conforming).toMatchObject({ outcome: 'meets', against: { n: 20 } })
    expect(conforming.value).toBeCloseTo(76.1, 1)
    expect(conforming.reason).toContain('factor 1.926 for 20 results')
    const failing = clauseOf(judgeInWords(variables({ 'at-least': '75 %' }), over(spread(3))), 'c')
    expect(failing.outcome).toBe('does-not-meet')
    expect(failing.value).toBeCloseTo(74.2, 1)
    expect(Math.min(...spread(3))).toBeGreaterThan(75)
  })

  it('judge, 28. by variables: upper and two-sided limits, the limit itself, and too few results', () => {
    expect([
      judgeInWords(variables({ 'at-most': '84 %' }), over(spread(2))).outcome,
      judgeInWords(variables({ 'at-most': '83.8 %' }), over(spread(2))).outcome,
    ]).toEqual(['meets', 'does-not-meet'])
    expect([
      judgeInWords(variables({ between: ['76 %', '84 %'] }), over(spread(2))).outcome,
      judgeInWords(variables({ between: ['76 %', '83.8 %'] }), over(spread(2))).outcome,
    ]).toEqual(['meets', 'does-not-meet'])
    expect(judgeInWords(variables({ 'at-least': '75 %' }), over(times(20, 75))).outcome).toBe('meets')
    expect(clauseOf(judgeInWords(variables({ 'at-least': '75 %' }), over(times(19, 80))), 'c')).toMatchObject(
      {
        outcome: 'insufficient-history',
        reason: '19 results of the 20 that the clause needs',
      },
    )
  })

  it('judge, 28. by variables: the estimate is compared unrounded', () => {
    // 80 − 1.92599 × 2.6 = 74.992: whole numbers would make it 75.
    expect(judgeInWords(variables({ 'at-least': '75 %' }), over(spread(2.6))).outcome).toBe('does-not-meet')
    expect(judgeInWords(variables({ 'at-least': '75 %', resolution: 1 }), over(spread(2.6))).outcome).toBe(
      'meets',
    )
  })

  it('judge, 28. by variables: a limit on the magnitude holds on both sides', () => {
    const set = setOf([
      {
        clause: 'c',
        property: 'autoclave-expansion',
        'magnitude-at-most': '0.8 %',
        statistic: {
          variables: {
            period: quantity('365 d', 'duration'),
            'at-least': 3,
            share: quantity('90 %', 'fraction'),
            confidence: quantity('95 %', 'fraction'),
          },
        },
      },
    ])
    const outcome = (value: number) =>
      judgeInWords(
        set,
        evidenceOf([result('autoclave-expansion', value)], { period: period(times(4, value)) }),
      ).outcome
    expect([outcome(0.8), outcome(-0.8), outcome(0.9), outcome(-0.9)]).toEqual([
      'meets',
      'meets',
      'does-not-meet',
      'does-not-meet',
    ])
  })

  const bare = {
    period: quantity('365 d', 'duration'),
    'at-least': 3,
    share: quantity('90 %', 'fraction'),
    confidence: quantity('95 %', 'fraction'),
  }
  it.each<[string, WrittenStatistic]>([
    ['rolling mean', { 'rolling-mean': 3 }],
    ['variables', { variables: bare }],
    ['attributes', { attributes: { period: bare.period, acceptance: [{ from: 1, allow: 0 }] } }],
    ['tolerance', { tolerance: { results: 3, 'at-least': 3, share: bare.share } }],
    ['declared', { declared: 'yes' }],
  ])('judge, 28. a statistic without a limit is refused or reported, never met: %s', (_, statistic) => {
    const outcome = () => {
      let set: ReturnType<typeof setOf>
      try {
        set = setOf([{ clause: 'c', property: 'SO3', report: 'yes', statistic }])
      } catch {
        return 'refused'
      }
      return judgeInWords(
        set,
        evidenceOf([result('SO3', 2)], {
          preceding: history('SO3', [1, 3]),
          period: period([1, 3]),
          declared: { SO3: '2 %' },
        }),
      ).outcome
    }
    expect(['refused', 'reported']).toContain(outcome())
  })

  // Acceptance numbers of EN 197-1 (from memory); EN 413-1, table 8, prints the same to 136 results (read).
  const acceptance = [
    { from: 20, allow: 0 },
    { from: 40, allow: 1 },
    { from: 55, allow: 2 },
    { from: 70, allow: 3 },
    { from: 85, allow: 4 },
    { from: 100, allow: 5 },
  ]
  const beyond = { factor: 0.075, less: 30 }

  it.each([
    [19, null],
    [20, 0],
    [39, 0],
    [40, 1],
    [54, 1],
    [55, 2],
    [69, 2],
    [70, 3],
    [84, 3],
    [85, 4],
    [99, 4],
    [100, 5],
    [109, 5],
    [110, 6],
    [150, 9],
    [190, 12],
    [200, 12],
  ])('acceptanceNumber, 28. of %s results allows %s', (n, allowed) => {
    expect(acceptanceNumber(n, { acceptance, beyond })).toBe(allowed)
  })

  it('acceptanceNumber, 28. stays at the last number of a table without a rule beyond it', () => {
    expect(acceptanceNumber(500, { acceptance })).toBe(5)
  })

  const attributes = setOf([
    {
      clause: 'c',
      property: 'SO3',
      'at-most': '3.0 %',
      statistic: { attributes: { period: quantity('365 d', 'duration'), acceptance, beyond } },
    },
  ])
  const sulfates = (values: readonly number[]) =>
    evidenceOf([result('SO3', values.at(-1) ?? Number.NaN)], { period: period(values.slice(0, -1)) })

  it.each([
    ['none of 20 beyond', times(20, 2), 'meets'],
    ['one of 20 beyond', [3.1, ...times(19, 2)], 'does-not-meet'],
    ['20 on the limit', times(20, 3), 'meets'],
    ['one of 40 beyond', [...times(39, 2), 3.1], 'meets'],
    ['two of 40 beyond', [3.1, ...times(38, 2), 3.1], 'does-not-meet'],
    ['six of 110 beyond', [...times(6, 4), ...times(104, 2)], 'meets'],
    ['seven of 110 beyond', [...times(7, 4), ...times(103, 2)], 'does-not-meet'],
    ['19 results', times(19, 2), 'insufficient-history'],
  ])('judge, 28. by attributes: %s', (_, values, outcome) => {
    expect(judgeInWords(attributes, sulfates(values)).outcome).toBe(outcome)
  })

  it('judge, 28. a result reported as below a limit of determination enters no statistic', () => {
    expect(
      judgeInWords(
        attributes,
        evidenceOf([result('SO3', 1, { censored: 'below' })], { period: period(times(30, 2)) }),
      ).outcome,
    ).toBe('not-reported')
    expect(judgeInWords(attributes, evidenceOf([], { period: period(times(30, 2)) })).outcome).toBe(
      'not-reported',
    )
  })

  const tolerance = (limit: string, atLeast = 3) =>
    setOf([
      {
        clause: 'c',
        property: 'share-fly-ash',
        'deviation-from': { declared: 'yes' },
        'magnitude-at-most': `${limit} percentage points`,
        statistic: { tolerance: { results: 10, 'at-least': atLeast, share: quantity('99 %', 'fraction') } },
      },
    ])
  const shares = (values: readonly number[], declared: string | null = '30 %') =>
    evidenceOf([result('share-fly-ash', values.at(-1) ?? Number.NaN)], {
      preceding: history('share-fly-ash', values.slice(0, -1)),
      ...(declared === null ? {} : { declared: { 'share-fly-ash': declared } }),
    })

  // 29, 30, 31 against 30 declared: mean deviation 0, s 1. Normal shares within ±2.5 and ±2.6 s: 98.758 % and
  // 99.068 % (normal tables).
  it('judge, 29. the estimated share of results within a tolerance around the declared value', () => {
    const met = clauseOf(judgeInWords(tolerance('2.6'), shares([29, 30, 31])), 'c')
    expect(met).toMatchObject({ outcome: 'meets', unit: '%', limit: { operator: 'at-least', values: [99] } })
    expect(met.value).toBeCloseTo(99.068, 3)
    const missed = clauseOf(judgeInWords(tolerance('2.5'), shares([29, 30, 31])), 'c')
    expect(missed.outcome).toBe('does-not-meet')
    expect(missed.value).toBeCloseTo(98.758, 3)
  })

  it('judge, 29. results without scatter: all on the limit are within, all beyond are not', () => {
    expect([
      judgeInWords(tolerance('2.5'), shares([32.5, 32.5, 32.5])).outcome,
      judgeInWords(tolerance('2.5'), shares([32.75, 32.75, 32.75])).outcome,
    ]).toEqual(['meets', 'does-not-meet'])
  })

  it('judge, 29. too few results, and no declared value', () => {
    expect([
      judgeInWords(tolerance('2.5'), shares([30, 30])).outcome,
      judgeInWords(tolerance('2.5'), shares([29, 30, 31], null)).outcome,
    ]).toEqual(['insufficient-history', 'not-reported'])
  })

  it('judge, 30. variability is reported and never decides', () => {
    const set = setOf([{ clause: 'c', property: 'density', statistic: { variability: { results: 10 } } }])
    const verdict = judgeInWords(
      set,
      evidenceOf([result('density', 2.4)], { preceding: history('density', [2.3, 2.5]) }),
    )
    // Mean 2.4, deviations 0.1, 0.1 and 0: s = √(0.02 / 2) = 0.1.
    expect(clauseOf(verdict, 'c')).toMatchObject({
      outcome: 'reported',
      reason:
        'fewer than five results for a moving average; standard deviation 0.100 g/cm³ of 3 results; no duplicate tests from which to separate the testing error',
    })
    expect(verdict.outcome).toBe('reported')
    expect(judgeInWords(set, evidenceOf([result('density', 2.4)])).outcome).toBe('insufficient-history')
    expect(judgeInWords(set, evidenceOf([])).outcome).toBe('not-reported')
  })
})
