/** Bunching at a limit: what a moved result shows, what a clean shape does not, and how often chance alone flags. */
import { describe, expect, it } from 'vitest'
import { atLimit } from '../../../src/core/checks/bunching.ts'
import { quantile } from '../../../src/core/statistics/distributions.ts'

const EDGE = 74.5

/** Quantiles of a normal distribution: a clean shape without any chance. */
const clean = (n: number, centre: number, deviation: number) =>
  Array.from({ length: n }, (_, place) => centre + deviation * quantile((place + 0.5) / n))

/** Numbers from 0 to 1, the same each time. */
function chance(seed: number): () => number {
  let state = seed
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return (state + 0.5) / 2 ** 32
  }
}

/** Correlated by so much from one to the next. */
function normals(next: () => number, n: number, correlation: number): number[] {
  const values: number[] = []
  for (let place = 0; place < n; place += 1) {
    const fresh = quantile(next())
    const before = values.at(-1)
    values.push(before === undefined ? fresh : correlation * before + Math.sqrt(1 - correlation ** 2) * fresh)
  }
  return values
}

describe('atLimit', () => {
  it('finds results that were moved from just outside to just inside, by the expected number as well', () => {
    const values = clean(60, 78, 4).map((value) => (71 < value && value < EDGE ? EDGE + 0.3 : value))
    const shape = atLimit({ values, edge: EDGE, meets: 'above' })
    expect([shape?.justInside, shape?.justOutside, shape?.n]).toEqual([14, 0, 60])
    // Nine quantiles lie between 71 and the edge, five within the window inside it.
    expect(shape?.p).toBeLessThan(0.01)
    // From Φ(-0.625) = 0.266 to Φ(-0.875) = 0.191 of 60 lie within 1 point inside: 4.5.
    expect(shape?.expectedInside).toBeGreaterThan(2.5)
    expect(shape?.expectedInside).toBeLessThan(6)
  })

  it('sees nothing in a clean shape, where more lie just inside than just outside all the same', () => {
    const shape = atLimit({ values: clean(200, 80, 4), edge: EDGE, meets: 'above' })
    expect(shape && shape.justOutside < shape.justInside).toBe(true)
    expect(shape?.p).toBeGreaterThan(0.2)
  })

  it('looks at an upper limit from the other side, with its bins in the order of the values', () => {
    const lower = atLimit({ values: clean(60, 78, 4), edge: EDGE, meets: 'above' })
    const upper = atLimit({ values: clean(60, 78, 4).map((value) => -value), edge: -EDGE, meets: 'below' })
    expect([upper?.justInside, upper?.p]).toEqual([lower?.justInside, lower?.p])
    const bins = upper?.histogram ?? []
    expect(
      bins.every(({ from, to }, place) => from < to && (bins[place - 1]?.to ?? from) <= from + 1e-9),
    ).toBe(true)
    expect(bins.reduce((total, { count }) => total + count, 0)).toBe(60)
  })

  it('says nothing of few results, or of few beyond the window', () => {
    expect(atLimit({ values: clean(29, 80, 4), edge: EDGE, meets: 'above' })).toBeNull()
    expect(atLimit({ values: clean(40, 72, 4), edge: EDGE, meets: 'above' })).toBeNull()
  })

  it.each([0, 0.4])('flags at most one clean series in a hundred, correlated by %s', (correlation) => {
    const next = chance(20_260_410)
    let [flags, looks] = [0, 0]
    for (let series = 0; series < 2000; series += 1) {
      const values = normals(next, 60, correlation).map((score) => 79 + 4 * score)
      const shape = atLimit({ values, edge: EDGE, meets: 'above' })
      if (shape === null) continue
      looks += 1
      if (shape.p < 0.01) flags += 1
    }
    expect(looks).toBeGreaterThan(1900)
    // The binomial count at one in a hundred: 20 expected of 2000, 30 and more in 2 of 100 runs.
    expect(flags).toBeLessThan(30)
  })
})
