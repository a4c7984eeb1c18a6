import { describe, expect, it } from 'vitest'
import { varianceComponents } from '../../../src/core/statistics/variance-components.ts'
import { publishedCases } from '../values.ts'

interface Recipe {
  readonly first: number
  readonly then_alternate: readonly [number, number]
  readonly n: number
}

/** The groups as listed, or made as the NIST file describes them: a first value, then two in turn. */
function groupsOf(inputs: Record<string, unknown>): number[][] {
  if ('groups' in inputs) return Object.values(inputs['groups'] as Record<string, number[]>)
  const recipes = Object.values(inputs['generator_per_group'] as Record<string, Recipe>)
  return recipes.map(({ first, then_alternate: [odd, even], n }) => [
    first,
    ...Array.from({ length: n - 1 }, (_, place) => (place % 2 === 0 ? odd : even)),
  ])
}

// NIST Statistical Reference Datasets, one-way analysis of variance: certified values of SiRstv, SmLs01,
// SmLs03 and SmLs04.
describe('NIST StRD, one-way analysis of variance', () => {
  it.each(publishedCases('nist-strd-anova'))(
    '$title: degrees of freedom, F and residual deviation are the certified ones',
    ({ inputs, expected, tolerance }) => {
      const found = varianceComponents(groupsOf(inputs).map((values) => ({ group: 'one', values })))
      const certified = (key: string) => expected[key] as number
      expect([found?.between.df, found?.within.df]).toEqual([certified('df_between'), certified('df_within')])
      const [between = NaN, within = NaN] = [found?.between.meanSquare, found?.within.meanSquare]
      expect(Math.abs(between / within / certified('F') - 1)).toBeLessThanOrEqual(tolerance['F_rel'] ?? 0)
      expect(Math.abs(Math.sqrt(within) / certified('residual_sd') - 1)).toBeLessThanOrEqual(
        tolerance['F_rel'] ?? 0,
      )
    },
  )
})
