import { describe, expect, it } from 'vitest'
import { pairedT } from '../../../src/core/statistics/paired-t.ts'

describe('pairedT', () => {
  it('pairedT of 1, 2, 3 is a mean of 2 with t = 2√3', () => {
    // By hand: s = 1, s/√3 = 0.57735; with 2 degrees of freedom P(|T| > t) = 1 − t / √(t² + 2) = 1 − √(12/14).
    const found = pairedT([1, 2, 3], 0.95)
    expect(found).toMatchObject({ n: 3, mean: 2, standardDeviation: 1, df: 2 })
    expect(found?.t).toBeCloseTo(2 * Math.sqrt(3), 12)
    expect(found?.p).toBeCloseTo(1 - Math.sqrt(12 / 14), 10)
    // t(0.975; 2) = 4.30265273 (tables).
    expect(found?.interval[0]).toBeCloseTo(2 - 4.30265273 / Math.sqrt(3), 7)
    expect(found?.interval[1]).toBeCloseTo(2 + 4.30265273 / Math.sqrt(3), 7)
  })

  it('pairedT of Student’s ten patients gives the mean of 1.58 hours and t of 4.06', () => {
    // Student 1908, Biometrika 6, 20: extra sleep under two drugs (data from memory, as in R's data set sleep);
    // digits by scipy 1.17.1, ttest_rel.
    const first = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0]
    const second = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4]
    const found = pairedT(
      first.map((value, place) => value - (second[place] ?? NaN)),
      0.95,
    )
    expect(found?.mean).toBeCloseTo(-1.58, 12)
    expect(found?.standardDeviation).toBeCloseTo(1.2299954832798732, 12)
    expect(found?.t).toBeCloseTo(-4.062127683382037, 10)
    expect(found?.p).toBeCloseTo(0.002832890197384273, 10)
    expect(found?.interval[0]).toBeCloseTo(-2.459885763276983, 8)
    expect(found?.interval[1]).toBeCloseTo(-0.7001142367230175, 8)
  })

  it('pairedT turns its sign with the sides and keeps the chance', () => {
    const [found, turned] = [pairedT([0.3, 0.9, -0.2], 0.95), pairedT([-0.3, -0.9, 0.2], 0.95)]
    expect(turned?.mean).toBe(-(found?.mean ?? NaN))
    expect(turned?.p).toBe(found?.p)
  })

  it('pairedT says nothing of one pair, nor of differences that agree but for the computer’s rounding', () => {
    expect(pairedT([1], 0.95)).toBeNull()
    expect(pairedT([0.3 - 0.2, 0.4 - 0.3, 0.8 - 0.7], 0.95)).toBeNull()
    expect(pairedT([0, 0, 0], 0.95)).toBeNull()
  })
})
