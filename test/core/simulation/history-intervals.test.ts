/** How often a history finds a step, a season or a trend that is not there. */
import { describe, expect, it } from 'vitest'
import { stepsOf } from '../../../src/core/history/event-steps.ts'
import { monthEffects } from '../../../src/core/history/month-effects.ts'
import { momentOfDay } from '../../../src/core/measure/moment.ts'
import { correlated } from '../../../src/core/statistics/false-alarms.ts'
import { slopeOf } from '../../../src/core/history/segment-trend.ts'
import { pointsOf } from '../history/points-fixture.ts'
import { normal, shareOf } from './chance.ts'

const TRIALS = 1500

describe('of a level source that knows no events', () => {
  // Intervals of 95 % leave out zero in 5 % of sources; that the correlation is estimated widens most and narrows some.
  it.each([
    { phi: 0, n: 16, most: 0.06 },
    { phi: 0, n: 40, most: 0.06 },
    { phi: 0.4, n: 40, most: 0.08 },
  ])(
    'a step among $n results of correlation $phi is clear in $most of sources at most',
    ({ phi, n, most }) => {
      const draw = normal(51)
      const event = { date: momentOfDay(20_454 + (7 * n) / 2), title: 'x', kind: 'outage' }
      const found = shareOf(TRIALS, () => {
        const [step] = stepsOf(pointsOf(correlated(phi, n, draw)), [event])
        return step?.figures.shown === true && step.figures.clear
      })
      expect(found).toBeLessThan(most)
      expect(found).toBeGreaterThan(0.01)
    },
  )

  it.each([
    { phi: 0, n: 90, most: 0.07 },
    { phi: 0.4, n: 90, most: 0.07 },
  ])(
    'a month among $n results of correlation $phi is clear in $most of sources at most',
    ({ phi, n, most }) => {
      const draw = normal(52)
      const found = shareOf(600, () => {
        const points = pointsOf(correlated(phi, n, draw), { every: 10 })
        const effects = monthEffects([{ points, begins: 'first' }])
        return effects.shown && effects.months.some(({ clear }) => clear)
      })
      expect(found).toBeLessThan(most)
    },
  )

  it.each([
    { phi: 0, n: 12, most: 0.06 },
    { phi: 0.4, n: 30, most: 0.08 },
  ])(
    'a trend among $n results of correlation $phi is clear in $most of sources at most',
    ({ phi, n, most }) => {
      const draw = normal(53)
      const found = shareOf(TRIALS, () => {
        const slope = slopeOf(pointsOf(correlated(phi, n, draw)))
        return slope.shown && slope.clear
      })
      expect(found).toBeLessThan(most)
      expect(found).toBeGreaterThan(0.005)
    },
  )
})
