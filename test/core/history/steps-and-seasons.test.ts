import { describe, expect, it } from 'vitest'
import { ageFit } from '../../../src/core/history/age-prediction.ts'
import { stepsOf } from '../../../src/core/history/event-steps.ts'
import { monthEffects } from '../../../src/core/history/month-effects.ts'
import { momentOfDay, readMoment } from '../../../src/core/measure/moment.ts'
import { pointsOf } from './points-fixture.ts'

const WEEK = 7
const dayOf = (place: number) => momentOfDay(20_454 + WEEK * place)

describe('stepsOf', () => {
  const before = [80, 81, 79, 80, 81, 79]
  const after = [84, 85, 83, 84, 85, 83]

  it('compares the means on either side of an event, by hand: 80 before, 84 after', () => {
    const event = { date: dayOf(6), title: 'second coal', kind: 'fuel-change' }
    const [step, ...others] = stepsOf(pointsOf([...before, ...after]), [event])
    expect(others).toEqual([])
    expect(step?.event).toEqual({ by: 'event', ...event })
    expect(step?.figures).toMatchObject({
      shown: true,
      before: { n: 6, mean: 80 },
      after: { n: 6, mean: 84 },
      difference: 4,
      clear: true,
      alsoChanged: [],
    })
    // Variances of 0.8 on both sides and ten degrees of freedom: 4 ± 2.2281 √(2 · 0.8/6) without correlation.
    if (step?.figures.shown)
      expect(step.figures.interval.low).toBeCloseTo(4 - 2.228139 * Math.sqrt(1.6 / 6), 5)
  })

  it('leaves out what was sampled during an outage', () => {
    const outage = { date: dayOf(6), to: dayOf(7), title: 'outage', kind: 'outage' }
    const [step] = stepsOf(pointsOf([...before, 200, 200, ...after]), [outage])
    expect(step?.figures).toMatchObject({ before: { mean: 80 }, after: { mean: 84 } })
  })

  it('says what else changed, and names a change of control cement by itself', () => {
    const points = [...pointsOf(before, { cement: 'A' }), ...pointsOf(after, { cement: 'B', from: 6 })]
    const coal = { date: dayOf(6), title: 'second coal', kind: 'fuel-change' }
    const steps = stepsOf(points, [coal])
    expect(steps.map(({ event }) => event.by)).toEqual(['event', 'control-cement'])
    expect(steps.map(({ figures }) => figures.shown && figures.alsoChanged)).toEqual([
      ['control-cement'],
      ['control-cement'],
    ])
  })

  it('gives a change that the record names once', () => {
    const points = [...pointsOf(before), ...pointsOf(after, { laboratory: 'quay', from: 6 })]
    const moved = { date: dayOf(6), title: 'new laboratory', kind: 'laboratory-change' }
    expect(stepsOf(points, [moved]).map(({ event }) => event.by)).toEqual(['event'])
    expect(stepsOf(points, []).map(({ event }) => event.by)).toEqual(['laboratory'])
  })

  it('says how many results are too few', () => {
    const [step] = stepsOf(pointsOf([80, 81, 84, 85, 84, 83]), [
      { date: dayOf(2), title: 'x', kind: 'fuel-change' },
    ])
    expect(step?.figures).toEqual({
      shown: false,
      reason: { code: 'too-few', params: { n: 2, needed: 4 } },
    })
  })

  it('says nothing of an event before the first result or after the last', () =>
    expect(
      stepsOf(pointsOf(before), [
        { date: readMoment('2020-01-01'), title: 'x', kind: 'outage' },
        { date: readMoment('2030-01-01'), title: 'y', kind: 'outage' },
      ]),
    ).toEqual([]))
})

describe('monthEffects', () => {
  /** Two years and more, ten days apart: 2 higher in July, with some scatter. */
  const values = Array.from({ length: 90 }, (_, at) => {
    const month = Number(momentOfDay(20_454 + 10 * at).text.slice(5, 7))
    return 80 + (month === 7 ? 2 : 0) + ([0.3, -0.4, 0.1, 0.5, -0.5][at % 5] ?? 0)
  })

  it('finds July, and no other month higher', () => {
    const effects = monthEffects([{ points: pointsOf(values, { every: 10 }), begins: 'first' }])
    if (!effects.shown) throw new Error(JSON.stringify(effects))
    const clear = effects.months.filter((one) => one.clear && 0 < one.difference)
    expect(clear.map(({ month }) => month)).toEqual([7])
    expect(clear[0]?.difference).toBeCloseTo(2, 0)
    expect(effects.months.every(({ n }) => 3 <= n)).toBe(true)
  })

  it('spends a degree of freedom on the mean of each segment', () => {
    const points = pointsOf(values, { every: 10 })
    const groups = [0, 30, 60].map((from) => ({
      points: points.slice(from, from + 30),
      begins: 'first' as const,
    }))
    const dfOf = (own: Parameters<typeof monthEffects>[0]) => {
      const effects = monthEffects(own)
      return effects.shown && effects.months[0]?.interval.df
    }
    // Ninety results, one effect of a month, and one mean or three.
    expect([dfOf([{ points, begins: 'first' }]), dfOf(groups)]).toEqual([88, 86])
  })

  it('needs two years', () => {
    const effects = monthEffects([{ points: pointsOf(values.slice(0, 40), { every: 10 }), begins: 'first' }])
    expect(effects).toEqual({
      shown: false,
      reason: { code: 'too-short', params: { months: 13, needed: 24 } },
    })
  })

  it('needs three results of a month', () => {
    const effects = monthEffects([{ points: pointsOf(values.slice(0, 16), { every: 50 }), begins: 'first' }])
    expect(effects).toEqual({ shown: false, reason: { code: 'too-few-a-month', params: { needed: 3 } } })
  })
})

describe('ageFit', () => {
  const pairs = Array.from({ length: 12 }, (_, at) => ({
    lot: `ash/${at}`,
    early: 70 + at,
    late: 20 + 0.9 * (70 + at) + (at % 2 === 0 ? 1 : -1),
  }))

  it('foretells the later result of a lot that awaits it', () => {
    const fit = ageFit([...pairs, { lot: 'ash/12', early: 75.5 }])
    if (!fit.shown) throw new Error(JSON.stringify(fit))
    expect(fit.pairs).toBe(12)
    expect(fit.slope).toBeCloseTo(0.9, 0)
    const [open] = fit.open
    expect(open).toMatchObject({ lot: 'ash/12', early: 75.5, extrapolated: false })
    // The mean of the early results foretells the mean of the later ones.
    expect(open?.predicted).toBeCloseTo(20 + 0.9 * 75.5, 10)
    expect((open?.interval.high ?? 0) - (open?.predicted ?? 0)).toBeGreaterThan(2)
  })

  it('marks an early result beyond those of the pairs', () => {
    const fit = ageFit([...pairs, { lot: 'ash/12', early: 60 }])
    expect(fit.shown && fit.open[0]?.extrapolated).toBe(true)
  })

  it('needs ten pairs', () =>
    expect(ageFit(pairs.slice(3))).toEqual({
      shown: false,
      reason: { code: 'too-few', params: { n: 9, needed: 10 } },
    }))
})
