import { describe, expect, it } from 'vitest'
import {
  deviationAt,
  type LevelLaw,
  levelFits,
} from '../../../../src/core/studies/interlaboratory/level-dependence.ts'

const of = (pairs: readonly (readonly [number, number])[], law: LevelLaw) =>
  levelFits(pairs.map(([mean, deviation]) => ({ mean, deviation }))).find((fit) => fit.law === law)

/** ISO 5725-2:1994, the example of 7.5, table 3 (from memory): levels and deviations. */
const EXAMPLE = [
  [3.94, 0.092],
  [8.28, 0.179],
  [14.18, 0.127],
  [15.59, 0.337],
  [20.41, 0.393],
] as const

describe('levelFits', () => {
  // The example prints s = 0.019 m, s = 0.032 + 0.0154 m after its third round, and s = 0.031 m^0.77 (all from memory).
  it('gives the equations of the standard’s example to its digits', () => {
    expect(of(EXAMPLE, 'proportional')?.slope).toBeCloseTo(0.019, 3)
    const line = of(EXAMPLE, 'linear')
    expect(line?.intercept).toBeCloseTo(0.032, 3)
    expect(line?.slope).toBeCloseTo(0.0154, 4)
    const power = of(EXAMPLE, 'power')
    expect(10 ** (power?.intercept ?? 0)).toBeCloseTo(0.031, 3)
    expect(power?.slope).toBeCloseTo(0.77, 2)
  })
  // numpy 2.4: the weights iterated twelve times, polyfit on log10, the misfit written out.
  it('agrees with numpy on the same figures', () => {
    const line = of(EXAMPLE, 'linear')
    expect(line?.intercept).toBeCloseTo(0.032168107948, 9)
    expect(line?.slope).toBeCloseTo(0.015365836232, 9)
    expect(line?.misfit).toBeCloseTo(0.3271855418, 8)
    expect(of(EXAMPLE, 'power')?.intercept).toBeCloseTo(-1.50753953803, 9)
    expect(of(EXAMPLE, 'power')?.slope).toBeCloseTo(0.77017182063, 9)
    expect(of(EXAMPLE, 'constant')?.intercept).toBeCloseTo(0.2256, 12)
  })
  // √((ln² 3/7 + ln² 6/7 + ln² 12/7)/3) = 0.5866.
  it('runs through levels in proportion, all but the constant, by hand', () => {
    const all = levelFits([1, 2, 4].map((value) => ({ mean: value, deviation: value })))
    expect(all.map(({ law }) => law)).toEqual(['constant', 'proportional', 'linear', 'power'])
    expect(all[0]?.misfit).toBeCloseTo(0.5865700651840382, 12)
    for (const fit of all.slice(1)) {
      expect(fit.misfit).toBeCloseTo(0, 9)
      expect(deviationAt(fit, 3)).toBeCloseTo(3, 9)
    }
  })
  it('fits no line through two levels, nor through one level twice, and nothing where a deviation is nought', () => {
    const laws = (pairs: readonly (readonly [number, number])[]) =>
      levelFits(pairs.map(([mean, deviation]) => ({ mean, deviation }))).map(({ law }) => law)
    expect(
      laws([
        [1, 1],
        [2, 3],
      ]),
    ).toEqual(['constant', 'proportional'])
    expect(
      laws([
        [2, 1],
        [2, 3],
        [2, 2],
      ]),
    ).toEqual(['constant', 'proportional'])
    expect(
      laws([
        [1, 0],
        [2, 3],
        [3, 2],
      ]),
    ).toEqual([])
    expect(laws([[1, 1]])).toEqual([])
  })
  it('leaves out a line that falls to nought at a level', () => {
    expect(
      of(
        [
          [1, 1],
          [2, 0.01],
          [2.1, 0.001],
          [3, 0.0002],
        ],
        'linear',
      ),
    ).toBeUndefined()
  })
})
