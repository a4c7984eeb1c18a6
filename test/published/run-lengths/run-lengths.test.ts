import { describe, expect, it } from 'vitest'
import { CUSUM_DECISION, cusum } from '../../../src/core/statistics/cusum.ts'
import { EWMA_LAMBDA, EWMA_WIDTH, steadyLimits } from '../../../src/core/statistics/ewma.ts'
import { individualsLimits } from '../../../src/core/statistics/individuals-chart.ts'
import { correlated } from '../../../src/core/statistics/false-alarms.ts'
import { runSignals } from '../../../src/core/statistics/run-rules.ts'
import { normal } from '../../core/simulation/chance.ts'

/** Mean number of points up to the first signal, over so many series, and its standard error. */
function runLength(trials: number, first: () => number): { mean: number; error: number } {
  const lengths = Array.from({ length: trials }, first)
  const mean = lengths.reduce((sum, one) => sum + one, 0) / trials
  const squares = lengths.reduce((sum, one) => sum + (one - mean) ** 2, 0)
  return { mean, error: Math.sqrt(squares / trials / (trials - 1)) }
}

function agrees({ mean, error }: { mean: number; error: number }, wanted: number): void {
  expect(Math.abs(mean - wanted)).toBeLessThan(3.3 * error)
}

describe('run lengths of the weighted average with steady limits', () => {
  const draw = normal(101)
  const firstBeyond = (lambda: number, width: number, shift: number) => {
    const { high } = steadyLimits({ centre: 0, sigma: 1, lambda, width })
    return () => {
      for (let [average, at] = [0, 1]; ; at += 1) {
        average = lambda * (draw() + shift) + (1 - lambda) * average
        if (high < Math.abs(average)) return at
      }
    }
  }

  // Crowder 1987, Technometrics 29, 401-407, as a public statistics package prints them; without a shift computed.
  it.each([
    [0, 502.8952],
    [0.5, 48.453],
    [1, 11.1543],
    [1.5, 5.4697],
    [2, 3.61677],
  ])('λ 0.25 and L 3, shift %d: %d points', (shift, wanted) =>
    agrees(runLength(2000, firstBeyond(0.25, 3, shift)), wanted),
  )

  // Computed by the same integral equation; 0.2 with 2.7 is often quoted with 370.
  it('λ 0.2: L 2.7 signals once in 237.7 points, the width in use once in 499.7', () => {
    agrees(runLength(3000, firstBeyond(EWMA_LAMBDA, 2.7, 0)), 237.7)
    agrees(runLength(2000, firstBeyond(EWMA_LAMBDA, EWMA_WIDTH, 0)), 499.7)
  })
})

describe('run lengths of the cumulative sum', () => {
  const draw = normal(202)
  /** The first point beyond, in a series that is long enough for any trial of these. */
  const firstBeyond = (decision: number, shift: number, points: number) => () => {
    const sums = cusum(Array.from({ length: points }, () => draw() + shift))
    const at = sums.findIndex(({ high, low }) => decision < Math.max(high, low))
    if (at < 0) throw new Error('no signal: a longer series is needed')
    return at + 1
  }

  // Textbook values 168 and 8.38, 465 and 10.4; computed by a Gauss-Legendre solution of the integral equation.
  it.each([
    [4, 1, 8.383],
    [CUSUM_DECISION, 1, 10.376],
    [4, 0, 167.7],
    [CUSUM_DECISION, 0, 465.4],
  ])('decision %d and a shift of %d: %d points', (decision, shift, wanted) =>
    agrees(runLength(1200, firstBeyond(decision, shift, shift === 0 ? 8000 : 400)), wanted),
  )
})

describe('a run of points on one side', () => {
  it('of eight is complete after 2^8 − 1 = 255 points, exactly', () => {
    const draw = normal(303)
    agrees(
      runLength(1500, () => {
        for (let points = 4096; ; points *= 4) {
          const signal = runSignals(correlated(0, points, draw)).find(({ rule }) => rule === 'run-of-eight')
          if (signal !== undefined) return signal.at + 1
        }
      }),
      255,
    )
  })
})

// Limits from 30 points by the moving range, the next 30 watched. Two independent simulations of 20,000 series gave 0.008 and
// 0.0077, 0.033 and 0.0338 a point, and 0.12 and 0.130, 0.44 and 0.441 of series; a third with numpy, of 200,000
// series, 0.1318 where the first two stand apart.
describe('false alarms of correlated points', () => {
  it.each([
    { phi: 0, perPoint: 0.008, runs: 0.1318 },
    { phi: 0.4, perPoint: 0.033, runs: 0.441 },
  ])(
    'of correlation $phi: $perPoint a point, a run of eight in $runs of series',
    ({ phi, perPoint, runs }) => {
      const draw = normal(404)
      const TRIALS = 8000
      let [beyond, withRun, sigmas] = [0, 0, 0]
      for (let trial = 0; trial < TRIALS; trial += 1) {
        const values = correlated(phi, 60, draw)
        const { centre, sigma } = individualsLimits(values.slice(0, 30))
        const signals = runSignals(values.slice(30).map((value) => (value - centre) / sigma))
        beyond += signals.filter(({ rule }) => rule === 'beyond-limits').length
        withRun += signals.some(({ rule }) => rule === 'run-of-eight') ? 1 : 0
        sigmas += sigma
      }
      expect(Math.abs(beyond / TRIALS / 30 - perPoint)).toBeLessThan(0.0015)
      expect(Math.abs(withRun / TRIALS - runs)).toBeLessThan(0.015)
      if (phi === 0.4) expect(Math.abs(sigmas / TRIALS - 0.776)).toBeLessThan(0.01)
    },
  )
})
