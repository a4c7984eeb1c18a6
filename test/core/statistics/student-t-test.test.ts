import { describe, expect, it } from 'vitest'
import { fTest } from '../../../src/core/statistics/f-test.ts'
import { twoSampleT } from '../../../src/core/statistics/student-t-test.ts'

const AGENCY = [78.1, 79.4, 80.2, 77.6]
const PRODUCER = [84.0, 76.1, 88.2, 79.9, 81.4, 90.3, 72.7]

describe('twoSampleT', () => {
  // scipy 1.17.1: ttest_ind(equal_var), its df and confidence_interval(0.99).
  it.each([
    ['pooled', -0.9165401654984218, 9, 0.3832858861250457, -13.523649257481186, 7.5736492574811685],
    [
      'welch',
      -1.214571800221398,
      6.7230722564532455,
      0.26545972309283156,
      -11.668345275889264,
      5.718345275889247,
    ],
  ] as const)('twoSampleT, %s, agrees with an independent computation', (form, t, df, p, low, high) => {
    const found = twoSampleT(AGENCY, PRODUCER, { form, confidence: 0.99 })
    expect(found?.difference).toBeCloseTo(-2.975, 10)
    expect(found?.t).toBeCloseTo(t, 9)
    expect(found?.df).toBeCloseTo(df, 9)
    expect(found?.p).toBeCloseTo(p, 9)
    expect(found?.interval[0]).toBeCloseTo(low, 6)
    expect(found?.interval[1]).toBeCloseTo(high, 6)
  })

  it('twoSampleT of 1, 2, 3 and 3, 4, 5 is t = −√6 in both forms', () => {
    // By hand: variances 1 and 1, standard error √(2/3), difference −2; both forms have 4 degrees of freedom.
    for (const form of ['pooled', 'welch'] as const) {
      const found = twoSampleT([1, 2, 3], [3, 4, 5], { form, confidence: 0.95 })
      expect(found?.t).toBeCloseTo(-Math.sqrt(6), 12)
      expect(found?.df).toBeCloseTo(4, 12)
    }
  })

  it('twoSampleT, pooled, squared is the F of an analysis of variance of two groups', () => {
    // Between mean square 6 with 1 degree of freedom over within mean square 1: F = 6 = t².
    const t = twoSampleT([1, 2, 3], [3, 4, 5], { form: 'pooled', confidence: 0.95 })?.t ?? NaN
    expect(t * t).toBeCloseTo(6, 12)
  })

  it('twoSampleT says nothing of one result, nor where neither side scatters', () => {
    const choice = { form: 'welch', confidence: 0.95 } as const
    expect(twoSampleT([1], [1, 2], choice)).toBeNull()
    expect(twoSampleT([1, 1], [2, 2], choice)).toBeNull()
    expect(twoSampleT([1, 1], [2, 3], choice)?.df).toBeCloseTo(1, 12)
  })
})

/** Park and Miller's generator, whose products keep within whole numbers, and the polar method of Marsaglia. */
function normals(seed: number): () => number {
  let state = seed
  const uniform = () => {
    state = (state * 48_271) % 2_147_483_647
    return state / 2_147_483_647
  }
  return () => {
    for (;;) {
      const [x, y] = [2 * uniform() - 1, 2 * uniform() - 1]
      const square = x * x + y * y
      if (0 < square && square < 1) return x * Math.sqrt((-2 * Math.log(square)) / square)
    }
  }
}

describe('F, then t', () => {
  it.each([
    [4, 12],
    [6, 6],
  ])(
    'keep their level of one in a hundred with %s results against %s where both sides are alike',
    (small, large) => {
      const normal = normals(20_260_401 + small)
      const runs = 10_000
      let [scatter, means] = [0, 0]
      for (let run = 0; run < runs; run += 1) {
        const [first, second] = [small, large].map((n) => Array.from({ length: n }, normal))
        const unlike = (fTest(first ?? [], second ?? [])?.p ?? 1) < 0.01
        const form = unlike ? 'welch' : 'pooled'
        const t = twoSampleT(first ?? [], second ?? [], { form, confidence: 0.99 })
        if (unlike) scatter += 1
        if ((t?.p ?? 1) < 0.01) means += 1
      }
      // Three standard errors of a share of 1 % among 10,000 are 0.3 points.
      expect(scatter / runs).toBeGreaterThan(0.007)
      expect(scatter / runs).toBeLessThan(0.013)
      expect(means / runs).toBeGreaterThan(0.007)
      expect(means / runs).toBeLessThan(0.013)
    },
  )
})
