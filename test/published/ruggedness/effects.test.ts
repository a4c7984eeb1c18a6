import { describe, expect, it } from 'vitest'
import { aliases, designFaults, type Level } from '../../../src/core/studies/ruggedness/design.ts'
import { halfNormal, ruggedness } from '../../../src/core/studies/ruggedness/effects.ts'
import { onlyCase } from '../values.ts'

// Box, Hunter and Hunter 1978, p. 391: time up a hill by bicycle, seven factors in eight runs.
const { inputs, expected, tolerance } = onlyCase('ruggedness')
const results = inputs['results'] as number[]
const runs = (inputs['design_rows_plus_minus'] as Level[][]).map((levels, run) => ({
  levels,
  values: [results[run] ?? NaN],
}))

describe('Box, Hunter and Hunter, the bicycle', () => {
  const found = ruggedness(runs, 0.95)

  it('designFaults finds none: the columns are balanced and orthogonal', () => {
    expect(designFaults(runs)).toEqual([])
  })
  it('ruggedness gives the printed effects and mean', () => {
    expect(found.mean).toBe(expected['mean'])
    for (const [factor, { effect }] of found.effects.entries())
      expect(
        Math.abs(effect - ((expected['published_effects'] as number[])[factor] ?? NaN)),
      ).toBeLessThanOrEqual(tolerance['published_abs'] ?? 0)
  })
  it('ruggedness takes Lenth’s error from the small effects', () => {
    expect(found.error).toEqual({ from: 'small-effects', standardError: expected['lenth_pse'], df: 7 / 3 })
    expect(found.repeatability).toBeNull()
  })
  it('halfNormal gives order and scores', () => {
    const points = halfNormal(found.effects.map(({ effect }) => effect))
    for (const [place, { score }] of points.entries())
      expect(score).toBeCloseTo(
        (expected['half_normal_scores_i_minus_half_over_7'] as number[])[place] ?? NaN,
        4,
      )
    expect(points.map(({ factor }) => factor + 1)).toEqual(expected['order_of_absolute_effects'])
  })
  it('aliases finds that each effect holds three interactions whole', () => {
    const found = aliases(runs)
    expect(found).toHaveLength(21)
    expect(new Set(found.map(({ part }) => Math.abs(part)))).toEqual(new Set([1]))
  })
})
