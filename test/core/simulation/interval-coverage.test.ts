/** The level that an interval states, against how often it holds the true ratio in many trials. */
import { describe, expect, it } from 'vitest'
import { judgeBatch } from '../../../src/core/mortar/batch-range.ts'
import { strengthInterval } from '../../../src/core/statistics/ratio-interval.ts'
import { resultReasonWords } from '../../../src/words/result-reasons.ts'
import { chanceError, normal } from './chance.ts'

const TRIALS = 1500
const CUBES = [
  { of: 3, rangePercent: 8.7 },
  { of: 2, rangePercent: 7.6 },
]
const HALF_PRISMS = [
  { of: 6, withinPercent: 10 },
  { of: 5, withinPercent: 10 },
]

/** Share of intervals that hold 75 %, of trials with or without a dropped specimen. */
function coverage(
  cv: number,
  count: number,
  rules: typeof CUBES | typeof HALF_PRISMS,
  drops: 'some' | 'none',
) {
  const draw = normal(41)
  let [held, seen] = [0, 0]
  while (seen < TRIALS) {
    const batch = (mean: number) => Array.from({ length: count }, () => mean * (1 + cv * draw()))
    const mortars = [batch(30), batch(40)].map((values) => ({ values, judged: judgeBatch(values, rules) }))
    if (mortars.some(({ judged }) => !judged.valid)) continue
    if (mortars.some(({ judged }) => 0 < judged.dropped.length) !== (drops === 'some')) continue
    seen += 1
    const [test = [], control = []] = mortars.map(({ values, judged }) =>
      judged.kept.map((place) => values[place] ?? Number.NaN),
    )
    const { shape, low, high } = strengthInterval(test, control) ?? {}
    if (shape === 'bounded' && (low ?? 0) <= 75 && 75 <= (high ?? 0)) held += 1
  }
  return held / seen
}

describe('the interval of a strength activity index', () => {
  it.each([
    [0.03, 3, CUBES],
    [0.05, 3, CUBES],
    [0.08, 3, CUBES],
    [0.05, 6, HALF_PRISMS],
    [0.08, 6, HALF_PRISMS],
  ] as const)(
    'after a drop holds the ratio as seldom as its note says: scatter %d, %d specimens',
    (cv, n, rules) => {
      const note = resultReasonWords({ code: 'interval-too-narrow', params: { levelPercent: 95 } })
      const [least = Number.NaN, most = Number.NaN] =
        /in (\d+) to (\d+) %/.exec(note)?.slice(1).map(Number) ?? []
      const found = coverage(cv, n, rules as typeof CUBES, 'some')
      expect(found).toBeGreaterThan(least / 100 - chanceError(least / 100, TRIALS))
      expect(found).toBeLessThan(most / 100 + chanceError(most / 100, TRIALS))
      expect(found).toBeLessThan(0.95 - chanceError(0.95, TRIALS) / 2)
    },
  )

  it('of six specimens without a drop holds it in 95 % of cases at least', () => {
    expect(coverage(0.02, 6, HALF_PRISMS, 'none')).toBeGreaterThan(0.95 - chanceError(0.95, TRIALS))
  })
})
