import { readMoment } from '../../../src/core/measure/moment.ts'
import { randomLcg, randomNormal } from 'd3'
import { describe, expect, it } from 'vitest'
import { chanceOfMeeting, guardFactor } from '../../../src/core/criteria/decision-rule.ts'
import {
  type Batch,
  pooledKey,
  pooledSteps,
  pooledUncertainty,
  repeatedKey,
  repeatedUncertainty,
} from '../../../src/core/doubt/pooled-repeatability.ts'
import { quantile } from '../../../src/core/statistics/distributions.ts'
import { index, statedUncertainty } from '../judging/fixture.ts'

const batch = (group: string, tested: string, mean: number): Batch => ({
  group,
  tested: readMoment(tested),
  mean,
})

/** Two passes over all batches at once, as a textbook does it. */
function pooledAtOnce(batches: readonly Batch[]): { cv: number; df: number } {
  const groups = [...Map.groupBy(batches, ({ group }) => group).values()].map((members) =>
    members.map(({ mean }) => Math.log(mean)),
  )
  const squares = groups.map((values) => {
    const centre = values.reduce((sum, value) => sum + value, 0) / values.length
    return values.reduce((sum, value) => sum + (value - centre) ** 2, 0)
  })
  const df = groups.reduce((sum, values) => sum + values.length - 1, 0)
  return { cv: 100 * Math.sqrt(squares.reduce((sum, value) => sum + value, 0) / df), df }
}

describe('pooledSteps', () => {
  it('gives nothing before two degrees of freedom are there, then a step for each day', () => {
    const steps = pooledSteps([
      batch('A', '2026-01-05', 30),
      batch('A', '2026-01-12T09:00', 31),
      batch('A', '2026-01-19', 29),
      batch('B', '2026-02-02', 40),
    ])
    expect(steps.map(([after, , df]) => [after.text, df])).toEqual([
      ['2026-01-19', 2],
      ['2026-02-02', 2],
    ])
  })

  it('pools within groups, hand-worked: e to the 0.01 apart twice, with two batches each', () => {
    // ln means 0, 0.01 and 5, 5.01: squares 2 × 0.00005 over 2 degrees of freedom, root 0.00707.
    const steps = pooledSteps([
      batch('A', '2026-01-05', 1),
      batch('A', '2026-01-06', Math.exp(0.01)),
      batch('B', '2026-01-07', Math.exp(5)),
      batch('B', '2026-01-08', Math.exp(5.01)),
    ])
    expect(steps.at(-1)?.[1]).toBeCloseTo(0.707107, 6)
    expect(steps.at(-1)?.[2]).toBe(2)
  })

  it('takes batches in order of time, whatever their order and groups, with one step for a day', () => {
    // In order: B, A, A (1 degree of freedom), then on one day B and A (3), then A (4). Each is e to the 0 or
    // to the 0.03: B has 0 and 0.03 with the squares 2 × 0.015² = 0.00045, A has 0, 0 and 0.03 with 0.0006,
    // then a further 0 with 0.000675.
    const moved = Math.exp(0.03)
    const batches = [
      batch('A', '2026-01-09', 1),
      batch('B', '2026-01-08T09:00', moved),
      batch('A', '2026-01-07', 1),
      batch('A', '2026-01-08T15:00', moved),
      batch('B', '2026-01-05', 1),
      batch('A', '2026-01-06', 1),
    ]
    const steps = pooledSteps(batches)
    expect(steps.map(([after, , df]) => [after.text, df])).toEqual([
      ['2026-01-08', 3],
      ['2026-01-09', 4],
    ])
    expect(steps[0]?.[1]).toBeCloseTo(100 * Math.sqrt(0.00105 / 3), 4)
    expect(steps[1]?.[1]).toBeCloseTo(100 * Math.sqrt(0.001125 / 4), 4)
    expect(pooledSteps(batches.toReversed())).toEqual(steps)
  })

  it('leaves out a mean of zero or below, which has no logarithm', () => {
    const batches = [1, 2, 3].map((mean, place) => batch('A', `2026-01-0${place + 1}`, mean))
    expect(pooledSteps([batch('A', '2026-01-01', 0), ...batches, batch('A', '2026-01-04', -1)])).toEqual(
      pooledSteps(batches),
    )
  })

  it('agrees with the sums over all batches at once, whatever their order', () => {
    const normal = randomNormal.source(randomLcg(0.25))(0, 1)
    const batches = Array.from({ length: 60 }, (_, place) =>
      batch(
        `cement ${place % 7}`,
        `2026-${String(1 + (place % 12)).padStart(2, '0')}-${String(1 + (place % 27)).padStart(2, '0')}`,
        (30 + (place % 7)) * (1 + 0.03 * normal()),
      ),
    )
    const wanted = pooledAtOnce(batches)
    const [, cv, df] = pooledSteps(batches.toReversed()).at(-1) ?? [readMoment(''), 0, 0]
    expect(df).toBe(wanted.df)
    expect(cv).toBeCloseTo(wanted.cv, 4)
  })
})

describe('pooledSteps of batches that changed', () => {
  const lasting = [batch('A', '2026-01-01', 30), batch('A', '2026-01-02', 32), batch('A', '2026-01-03', 34)]
  const until = readMoment('2026-01-10').day
  const replaced = { ...batch('A', '2026-01-04', 60), until }
  const last = (steps: ReturnType<typeof pooledSteps>) => steps.at(-1)

  it('count a batch from its day until the day on which it no longer stood', () => {
    const steps = pooledSteps([replaced, ...lasting])
    const [with60, without] = [steps.at(-2), steps.at(-1)]
    expect(with60?.slice(1)).toEqual(last(pooledSteps([...lasting, batch('A', '2026-01-04', 60)]))?.slice(1))
    expect(without?.slice(1)).toEqual(last(pooledSteps(lasting))?.slice(1))
    expect([with60?.[0].text, without?.[0].text]).toEqual(['2026-01-04', '2026-01-10'])
  })
  it('count one that was reported later from then on', () => {
    const late = { ...batch('A', '2026-01-01', 30), from: until }
    expect(pooledSteps([late, ...lasting.slice(1)]).map(([after]) => after.text)).toEqual(['2026-01-10'])
  })
  it('give no uncertainty once fewer than two degrees of freedom are left', () => {
    const steps = pooledSteps([...lasting.slice(1), { ...batch('A', '2026-01-04', 60), until }])
    const on = (tested: string) => pooledUncertainty(steps, index('28 d', 80, { tested: readMoment(tested) }))
    expect([on('2026-01-10')?.df, on('2026-01-11')]).toEqual([2, undefined])
  })
  it('hold an index against what was known before it was, not before it was tested', () => {
    const steps = pooledSteps(lasting)
    const tested = readMoment('2026-01-03')
    expect(pooledUncertainty(steps, index('28 d', 80, { tested }))).toBeUndefined()
    const known = readMoment('2026-01-04')
    expect(pooledUncertainty(steps, index('28 d', 80, { tested, known }))?.df).toBe(2)
  })
})

describe('pooledUncertainty', () => {
  const steps = pooledSteps([
    ...Array.from({ length: 5 }, (_, place) => batch('A', `2026-01-0${place + 1}`, 30 + place)),
    batch('A', '2026-03-10', 90),
  ])
  const result = (tested: string) => index('28 d', 80, { tested: readMoment(tested) })

  it('uses earlier batches only: those of the same day and later do not count', () => {
    expect(pooledUncertainty(steps, result('2026-01-03'))).toBeUndefined()
    expect(pooledUncertainty(steps, result('2026-01-04'))?.df).toBe(2)
    expect(pooledUncertainty(steps, result('2026-03-10T08:00'))?.df).toBe(4)
    expect(pooledUncertainty(steps, result('2026-03-11'))?.df).toBe(5)
  })

  it('is the value times root two times the scatter, and says that few batches are few', () => {
    const [, cv] = steps[1] ?? [readMoment(''), 0, 0]
    const found = pooledUncertainty(steps, result('2026-01-05'))
    expect(found?.u).toBeCloseTo((80 * Math.SQRT2 * cv) / 100, 10)
    expect(found?.basis).toEqual({ code: 'control-batches', params: { cvPercent: cv, df: 3 } })
  })

  it('has one series for each property, condition and age', () => {
    expect(pooledKey(result('2026-01-05'))).toBe('strength-activity-index|c311|672')
    expect(pooledKey({ property: 'density' })).toBe('density||')
    expect(repeatedKey(result('2026-01-05'))).toBe('strength-activity-index|c311|672|repeated')
  })
})

describe('repeatedUncertainty', () => {
  const steps = pooledSteps(
    Array.from({ length: 6 }, (_, place) => batch('lot', `2026-01-0${place + 1}`, 80 + place)),
  )

  it('takes the scatter of the index itself, without the root of two, once five degrees of freedom are there', () => {
    const [, cv] = steps.at(-1) ?? [readMoment(''), 0, 0]
    const found = repeatedUncertainty(steps, index('28 d', 80, { tested: readMoment('2026-02-01') }))
    expect(found?.u).toBeCloseTo((80 * cv) / 100, 10)
    expect(found?.df).toBe(5)
    expect(found?.basis).toEqual({ code: 'repeated-batches', params: { cvPercent: cv, df: 5 } })
    expect(
      repeatedUncertainty(steps, index('28 d', 80, { tested: readMoment('2026-01-06') })),
    ).toBeUndefined()
  })
})

describe('a decision interval from pooled control batches', () => {
  // Fixed seed. Truth 80 % of control, batches of either mortar scatter by 3 %; eight earlier control batches
  // of one cement. The
  // interval value ± t u holds the truth in 95 % of 3,000 rounds within four binomial standard errors
  // (0.016); the log scale and the
  // ratio shift it by less than that.
  it('holds the true index as often as it says', () => {
    const normal = randomNormal.source(randomLcg(0.7))(0, 1)
    const rounds = 3000
    let held = 0
    for (let round = 0; round < rounds; round += 1) {
      const steps = pooledSteps(
        Array.from({ length: 8 }, (_, place) =>
          batch('A', `2026-01-0${place + 1}`, 40 * (1 + 0.03 * normal())),
        ),
      )
      const value = (100 * (32 * (1 + 0.03 * normal()))) / (40 * (1 + 0.03 * normal()))
      const uncertainty = pooledUncertainty(steps, index('28 d', value, { tested: readMoment('2026-02-01') }))
      if (uncertainty === undefined) throw new Error('eight batches give an uncertainty')
      if (Math.abs(value - 80) <= quantile(0.975, uncertainty.df) * uncertainty.u) held += 1
    }
    expect(held / rounds).toBeGreaterThan(0.95 - 0.016)
    expect(held / rounds).toBeLessThan(0.95 + 0.016)
  })

  it('widens the guard with few degrees of freedom, as Student’s distribution does', () => {
    // t(0.95) with 7 degrees of freedom is 1.894579 (tables).
    expect(guardFactor(1.6448536269514722, 7)).toBeCloseTo(1.894579, 5)
    expect(
      chanceOfMeeting(80, { low: 75, high: Number.POSITIVE_INFINITY }, statedUncertainty(3.4, 7)),
    ).toBeLessThan(chanceOfMeeting(80, { low: 75, high: Number.POSITIVE_INFINITY }, statedUncertainty(3.4)))
  })
})
