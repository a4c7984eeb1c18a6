import { describe, expect, it } from 'vitest'
import { pooledVariance } from '../../../src/core/statistics/pooled-variance.ts'
import { varianceComponents } from '../../../src/core/statistics/variance-components.ts'

describe('pooledVariance', () => {
  // (1, 3) has squares 2 about its mean, (2, 4, 6) has 8: 10 over 1 + 2 degrees of freedom.
  it('pools by degrees of freedom, and leaves a single value out', () => {
    const found = pooledVariance([[1, 3], [7], [2, 4, 6]])
    expect(found?.meanSquare).toBeCloseTo(10 / 3, 12)
    expect(found?.df).toBe(3)
  })
  it('is the variance within of the components', () => {
    const groups = [[1.2, 3.4, 2.2], [5, 5.5], [0.3]]
    const components = varianceComponents(groups.map((values) => ({ group: 'one', values })))
    expect(pooledVariance(groups)?.meanSquare).toBeCloseTo(components?.within.meanSquare ?? NaN, 12)
  })
  it('has nothing to say without two values of any group', () => {
    expect(pooledVariance([[1], [2]])).toBeNull()
    expect(pooledVariance([])).toBeNull()
  })
})
