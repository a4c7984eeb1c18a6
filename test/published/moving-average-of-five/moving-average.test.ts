import { expect, it } from 'vitest'
import { movingAverages } from '../../../src/core/statistics/moving-average.ts'

// Data of the NIST/SEMATECH e-Handbook, 6.3.2.4; the averages were computed with numpy.
const DATA = [
  52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4,
  53.6, 52.1,
]
const AVERAGES = [
  50.28, 49.28, 50.08, 49.5, 49.88, 49.96, 50.48, 49.8, 49.76, 49.78, 49.24, 49.56, 50.56, 51.06, 51.52,
  52.38,
]

it('movingAverages gives the sixteen averages of five, from the fifth value on', () => {
  const found = movingAverages(DATA, 5)
  expect(found.map(({ at }) => at)).toEqual(Array.from({ length: 16 }, (_, place) => place + 4))
  for (const [place, { value }] of found.entries())
    expect(value).toBeCloseTo(AVERAGES[place] ?? Number.NaN, 9)
})
