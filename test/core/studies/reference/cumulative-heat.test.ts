import { describe, expect, it } from 'vitest'
import {
  type CumulativeHeat,
  cumulativeHeat,
  type HeatTest,
  trapezoids,
} from '../../../../src/core/studies/reference/cumulative-heat.ts'
import { readAt } from '../../../../src/core/studies/reference/reading-table.ts'

const points = (...rows: readonly (readonly [number, number])[]) => rows.map(([x, y]) => ({ x, y }))

/** 6 mW falling to 2 mW over 10 h, then level. */
const SMALL: HeatTest = {
  readings: points([0, 6], [10, 2], [20, 2]),
  of: 'power',
  sampleG: 8,
  share: 0.25,
  baseline: points([0, 0.5]),
  startHours: 5,
  atHours: 15,
}
const heat = (test: Partial<HeatTest>) => cumulativeHeat({ ...SMALL, ...test })

describe('trapezoids', () => {
  it('is exact on straight lines, and on a line cut anywhere', () => {
    expect(trapezoids(points([0, 6], [10, 2], [20, 2]))).toBe(60)
    expect(trapezoids(points([0, 6], [5, 4], [10, 2], [20, 2]))).toBe(60)
  })
})

describe('cumulativeHeat', () => {
  // By hand: at 5 h 4 mW; 5 × 3 + 5 × 2 = 25 mW h = 90 J, less 0.5 × 10 × 3.6 = 18 J; over 2 g: 36 J/g.
  it('sums power less a constant baseline, over grams of material', () => {
    expect(heat({})).toEqual({ value: 36, sampleJ: 72, materialG: 2, baselineJ: 18, intervals: 2 })
  })
  // Baseline 0.5 at 5 h and 1.0 at 15 h: mean 0.75 over 10 h, 27 J; 63 J over 2 g.
  it('takes off a drift between two blank readings', () => {
    expect(heat({ baseline: points([0, 0.25], [20, 1.25]) })).toMatchObject({ baselineJ: 27, value: 31.5 })
  })
  // 10 to 40 J over 10 h to 20 h: at 5 h 5 J, at 15 h 25 J.
  it('takes the difference of a table of heat', () => {
    expect(heat({ of: 'heat', readings: points([0, 0], [10, 10], [20, 40]), baseline: [] })).toEqual({
      ...{ value: 10, sampleJ: 20, materialG: 2, baselineJ: null, intervals: 0 },
    })
  })
  it('keeps a heat below zero, as an inert material may read', () => {
    expect(heat({ baseline: points([0, 3]) })).toMatchObject({ value: -9 })
  })
  // Oracle: numpy 2.4.6, trapezoid of interp at both ends, for the rows and for the drift.
  it('agrees with numpy on uneven times', () => {
    const hours = [0, 0.5, 1, 1.7, 2.5, 4, 6, 9, 13, 18, 24, 30, 36, 48, 60, 72, 96, 120, 144, 168]
    const powers = [
      10.92, 10.68, 10.445, 10.126, 9.775, 9.152, 8.389, 7.375, 6.235, 5.086, 4.027, 3.229, 2.627, 1.822,
      1.346, 1.055, 0.741, 0.58, 0.478, 0.404,
    ]
    const found = heat({
      readings: hours.map((x, place) => ({ x, y: powers[place] ?? Number.NaN })),
      baseline: points([0, 0.1], [170, 0.16]),
      ...{ sampleG: 15, share: 0.111, startHours: 1.2, atHours: 150 },
    }) as CumulativeHeat
    expect(found.baselineJ).toBeCloseTo(67.86120282352941, 9)
    expect(found.sampleJ).toBeCloseTo(1093.2502114285712 - 67.86120282352941, 9)
    expect(found.value).toBeCloseTo(615.8492544174426, 9)
    expect(found.intervals).toBe(17)
  })
  it('is additive: to a time, and from it on', () => {
    const [whole, first, second] = [heat({}), heat({ atHours: 12 }), heat({ startHours: 12 })] as [
      CumulativeHeat,
      CumulativeHeat,
      CumulativeHeat,
    ]
    expect(first.value + second.value).toBeCloseTo(whole.value, 12)
  })
  it.each([
    ['an age beyond the table', { atHours: 21 }, { fault: 'outside-table', what: 'at', asked: 21, last: 20 }],
    ['a start before it', { readings: points([6, 6], [20, 2]) }, { fault: 'outside-table', what: 'start' }],
    ['an age at the start', { atHours: 5 }, { fault: 'ends-before-start' }],
    ['one row', { readings: points([0, 6]) }, { fault: 'few-rows', rows: 1 }],
    ['a time twice', { readings: points([0, 6], [9, 2], [9, 2]) }, { fault: 'not-increasing', row: 2 }],
    ['no baseline', { baseline: [] }, { fault: 'few-rows', least: 1 }],
    [
      'a drift that ends early',
      { baseline: points([0, 0], [12, 0]) },
      { fault: 'outside-blanks', asked: 15 },
    ],
    ['two blanks at once', { baseline: points([3, 0], [3, 1]) }, { fault: 'blanks-alike' }],
  ] as const)('refuses %s', (_, test, fault) => {
    expect(heat(test)).toMatchObject(fault)
  })
})

describe('readAt', () => {
  it('reads rows as they are, between them on a line, and nothing beyond', () => {
    const table = points([1, 10], [3, 20])
    expect([1, 1.5, 3].map((x) => readAt(table, x, 'at'))).toEqual([10, 12.5, 20])
    for (const x of [0.999, 3.001])
      expect(readAt(table, x, 'at')).toMatchObject({ fault: 'outside-table', asked: x })
  })
})
