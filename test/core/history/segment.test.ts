import { describe, expect, it } from 'vitest'
import type { Shown } from '../../../src/core/history/not-shown.ts'
import { segmentOf, type SegmentContext } from '../../../src/core/history/segment.ts'
import type { SeriesLimit } from '../../../src/core/history/source-history.ts'
import { momentOfDay } from '../../../src/core/measure/moment.ts'
import { mean, standardDeviation } from '../../../src/core/statistics/descriptive.ts'
import { LEVEL_VALUES, pointsOf } from './points-fixture.ts'

const LIMIT: SeriesLimit = {
  criterion: 'c618',
  clause: 'activity',
  low: 74.5,
  high: null,
  written: ['75 %'],
  operator: 'at-least',
}
const BARE: SegmentContext = { limits: [LIMIT], phases: [], divertedWithoutResults: [] }

function segment(values: readonly number[], made: Parameters<typeof pointsOf>[1] = {}, context = BARE) {
  return segmentOf({ points: pointsOf(values, made), begins: 'first' }, context)
}

function reasonOf(figure: Shown<object>): unknown {
  return figure.shown ? 'shown' : figure.reason
}

function shown<Figure>(figure: Shown<Figure> | undefined): Figure {
  if (figure?.shown !== true) throw new Error(`not shown: ${JSON.stringify(figure)}`)
  return figure
}

describe('segmentOf, few points', () => {
  const own = segment([80, 82, 81])

  it('says of each figure how many results it needs', () => {
    expect(reasonOf(own.chart)).toEqual({ code: 'too-few', params: { n: 3, needed: 8 } })
    expect(reasonOf(own.slope)).toEqual({ code: 'too-few', params: { n: 3, needed: 8 } })
    expect(reasonOf(own.correlation)).toEqual({ code: 'too-few', params: { n: 3, needed: 10 } })
    expect(reasonOf(own.scatter)).toEqual({ code: 'too-few', params: { n: 3, needed: 5 } })
    expect(own.movingAverage).toEqual([])
  })

  it('knows the margins all the same, the smallest with its place', () => {
    expect(own.margins).toMatchObject([
      {
        side: 'low',
        end: 74.5,
        last: { place: 2, margin: 6.5 },
        smallest: { place: 0, margin: 5.5 },
        mean: 6.5,
        inDeviations: null,
        n: 3,
      },
    ])
  })
})

describe('segmentOf, a level source', () => {
  const own = segment(LEVEL_VALUES)

  it('sets limits by the first twenty points and finds nothing', () => {
    const chart = shown(own.chart)
    expect(chart.baseline).toMatchObject({ by: 'first-points' })
    expect(chart.baseline.places).toHaveLength(20)
    expect(chart.centre).toBeCloseTo(mean(LEVEL_VALUES.slice(0, 20)), 12)
    expect(chart.signals).toEqual([])
  })

  it('states the false alarms for its own correlation and length', () =>
    expect(shown(own.chart).falseAlarms[0]).toMatchObject({
      rule: 'beyond-limits',
      phi: 0,
      baseline: 20,
      watched: 24,
      simulated: true,
    }))

  it('shows no trend and projects none', () => {
    const slope = shown(own.slope)
    expect(slope.clear).toBe(false)
    expect(slope.interval.low).toBeLessThan(0)
    expect(slope.interval.high).toBeGreaterThan(0)
    expect(reasonOf(own.projection)).toEqual({ code: 'no-trend', params: {} })
  })

  it('gives capability by the overall scatter', () => {
    const capability = shown(own.margins[0]?.capability)
    const q = (mean(LEVEL_VALUES) - 74.5) / standardDeviation(LEVEL_VALUES)
    expect(capability.index).toBeCloseTo(q / 3, 12)
    expect(capability.percentWithin).toBeGreaterThan(99.9)
    expect(capability.n).toBe(24)
  })

  it('takes a declared phase for its baseline, where that holds enough points', () => {
    const phase = (from: number, to: number) => ({
      from: momentOfDay(20_454 + 7 * from),
      to: momentOfDay(20_454 + 7 * to),
      title: 'settled',
    })
    const baseline = (context: Partial<SegmentContext>) =>
      shown(segment(LEVEL_VALUES, {}, { ...BARE, ...context }).chart).baseline
    expect(baseline({ phases: [phase(4, 13)] })).toEqual({
      by: 'phase',
      title: 'settled',
      places: [4, 5, 6, 7, 8, 9, 10, 11, 12, 13],
    })
    expect(baseline({ phases: [phase(4, 8)] }).by).toBe('first-points')
  })

  it('counts nine results that follow each other for what they are worth, and withholds capability', () => {
    // Lag 1 of 8.37 over 15.56, 0.538; raised (9 × 0.538 + 1)/6 = 0.97, taken as 0.9: worth 1.3 results.
    const wave = [80, 81, 82, 83, 84, 83, 82, 81, 80]
    expect(segment(wave).margins[0]?.capability).toMatchObject({
      shown: false,
      reason: { code: 'too-few-independent', params: { n: 9, effectiveN: expect.closeTo(1.3, 1) as number } },
    })
  })

  it('withholds capability while material diverted in the meantime has no results', () => {
    const diverted = (day: number) =>
      segment(LEVEL_VALUES, {}, { ...BARE, divertedWithoutResults: [day] }).margins[0]?.capability
    expect(diverted(20_470)).toEqual({
      shown: false,
      reason: { code: 'diverted-without-results', params: { entries: 1 } },
    })
    // Before the first point was taken it says nothing of these.
    expect(diverted(20_400)?.shown).toBe(true)
  })
})

describe('segmentOf, a source that moves', () => {
  it('withholds capability where the chart signals more than chance explains, and says so', () => {
    const moved = segment([...LEVEL_VALUES.slice(0, 20), 84.5, 85, 84.8, 85.2, 84.6, 85.1])
    expect(shown(moved.chart).signals.map(({ rule }) => rule)).toContain('beyond-limits')
    expect(moved.margins[0]?.capability).toMatchObject({ shown: false, reason: { code: 'out-of-control' } })
  })

  it('withholds a share inside that its own results contradict', () => {
    const below = (low: number) =>
      segment([...LEVEL_VALUES, 76.9], {}, { ...BARE, limits: [{ ...LIMIT, low }] }).margins[0]?.capability
    // One of 25 beyond 77, some three standard deviations from the mean, where a thousandth is expected.
    expect(below(77)).toMatchObject({
      shown: false,
      reason: { code: 'not-as-estimated', params: { outside: 1, n: 25 } },
    })
    expect(below(76)?.shown).toBe(true)
    // Two of 25 beyond 78.7, where some tenth is expected.
    expect(shown(below(78.7)).percentWithin).toBeLessThan(95)
  })

  it('finds a clear fall, and where its line meets the limit, at most half of the span ahead', () => {
    const falling = LEVEL_VALUES.map((value, at) => value - 0.2 * at)
    const own = segment(falling)
    const slope = shown(own.slope)
    expect(slope.clear).toBe(true)
    expect(slope.perTenLots).toBeCloseTo(-2, 0)
    // At the last point the line stands near 80 − 0.2 · 23 = 75.4: some four and a half lots above 74.5.
    const { lotsAhead, end } = shown(own.projection)
    expect(end).toBe(74.5)
    expect(lotsAhead).toBeGreaterThan(3)
    expect(lotsAhead).toBeLessThan(6)
    const far = segment(falling, {}, { ...BARE, limits: [{ ...LIMIT, low: 60 }] })
    expect(reasonOf(far.projection)).toEqual({ code: 'limit-not-reached', params: { withinLots: 11 } })
  })
})

describe('segmentOf, lots that share control batches', () => {
  const clusters = LEVEL_VALUES.map((_, at) => `K${Math.floor(at / 3)}`)

  it('counts a batch once: twenty-four lots of eight batches are eight to a slope and too few for a correlation', () => {
    const own = segment(LEVEL_VALUES, { clusters })
    expect(shown(own.slope).interval.df).toBeLessThanOrEqual(6)
    expect(reasonOf(own.correlation)).toEqual({
      code: 'too-few-batches',
      params: { batches: 8, needed: 10 },
    })
    expect(shown(own.margins[0]?.capability).effectiveN).toBe(8)
  })

  it('correlates an index with its control over batches', () => {
    const controls = clusters.map((name) => 40 + Number(name.slice(1)))
    const falling = controls.map((control) => (100 * 32) / control)
    const { r, p, batches } = shown(segment(falling, { clusters, controls }).againstControl)
    expect(batches).toBe(8)
    expect(r).toBeLessThan(-0.99)
    expect(p).toBeLessThan(1e-6)
    expect(reasonOf(segment(LEVEL_VALUES).againstControl)).toEqual({ code: 'no-control', params: {} })
  })
})

describe('segmentOf, the error of testing', () => {
  it('comes from duplicates before what the laboratory states', () => {
    const found = shown(
      shown(segment(LEVEL_VALUES, { duplicates: [0.5, 0.7], stated: 2 }).scatter).withinSource,
    )
    // (0.5 + 0.7)/2 over 2/√π.
    expect(found).toMatchObject({ from: 'duplicates', pairs: 2 })
    expect(found.testing).toBeCloseTo((0.6 * Math.sqrt(Math.PI)) / 2, 12)
    const stated = shown(shown(segment(LEVEL_VALUES, { stated: 0.5 }).scatter).withinSource)
    expect(stated).toMatchObject({ from: 'stated-repeatability', testing: 0.5, pairs: 0 })
    expect(stated.corrected).toBeCloseTo(Math.sqrt(standardDeviation(LEVEL_VALUES) ** 2 - 0.25), 12)
  })

  it('does not come from one pair, whose one degree of freedom says next to nothing', () => {
    const one = (stated?: number) =>
      shown(segment(LEVEL_VALUES, { duplicates: [0.5], ...(stated === undefined ? {} : { stated }) }).scatter)
        .withinSource
    expect(one()).toEqual({ shown: false, reason: { code: 'single-duplicate', params: {} } })
    expect(shown(one(0.7))).toMatchObject({ from: 'stated-repeatability', testing: 0.7, pairs: 0 })
  })
})

describe('segmentOf, results known only within bounds', () => {
  it('gives no figure that rests on them', () => {
    const points = pointsOf(LEVEL_VALUES).map((point, at) => ({ ...point, bounded: at === 3 }))
    const own = segmentOf({ points, begins: 'first' }, BARE)
    const reason = { code: 'known-within-bounds', params: { n: 1 } }
    expect([own.chart, own.slope, own.scatter, own.correlation].map(reasonOf)).toEqual([
      reason,
      reason,
      reason,
      reason,
    ])
    expect(own.movingAverage).toEqual([])
  })
})

describe('segmentOf, equal results', () => {
  it('has neither correlation nor slope, though their mean be off by dust', () => {
    // The mean of 24 of these is 96.28099173553717.
    const own = segment(Array.from({ length: 24 }, () => 96.28099173553719))
    for (const figure of [own.chart, own.correlation, own.slope])
      expect(reasonOf(figure)).toEqual({ code: 'no-scatter', params: {} })
  })
})
