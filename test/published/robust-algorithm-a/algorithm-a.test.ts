import { describe, expect, it } from 'vitest'
import { algorithmA } from '../../../src/core/studies/interlaboratory/algorithm-a.ts'
import { publishedCases } from '../values.ts'

describe('ISO 13528, algorithm A', () => {
  it.each(publishedCases('robust-algorithm-a'))('algorithmA: $title', ({ inputs, expected, tolerance }) => {
    const found = algorithmA(inputs['results'] as number[])
    const within = tolerance['converged_rel'] ?? 0
    for (const [value, key] of [
      [found?.mean, 'x_star_converged_exact_factor'],
      [found?.deviation, 's_star_converged_exact_factor'],
    ] as const)
      expect(Math.abs((value ?? NaN) / (expected[key] as number) - 1)).toBeLessThanOrEqual(within)
    const published = expected['published'] as { x_star: number; s_star: number }
    // Printed to the digits given.
    expect(found?.mean.toFixed(decimals(published.x_star))).toBe(
      published.x_star.toFixed(decimals(published.x_star)),
    )
    expect(found?.deviation.toFixed(decimals(published.s_star))).toBe(
      published.s_star.toFixed(decimals(published.s_star)),
    )
  })
})

function decimals(value: number): number {
  return String(value).split('.')[1]?.length ?? 0
}
