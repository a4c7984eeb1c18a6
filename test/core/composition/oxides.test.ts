import { describe, expect, it } from 'vitest'
import { alkaliEquivalent, classByCalcium, oxideSum } from '../../../src/core/composition/oxides.ts'

describe('oxideSum', () => {
  it('adds the three oxides: 50 + 20 + 5', () => {
    expect(oxideSum({ SiO2: 50, Al2O3: 20, Fe2O3: 5 })).toBe(75)
  })
})

describe('alkaliEquivalent', () => {
  it('takes potash for 0.658 of soda: 1 + 0.658 × 2', () => {
    expect(alkaliEquivalent(1, 2)).toBeCloseTo(2.316, 12)
  })
})

describe('classByCalcium', () => {
  it('calls a coal ash F up to 18.0 % and C beyond it', () => {
    expect([classByCalcium(18, 'coal-fly-ash'), classByCalcium(18.01, 'coal-fly-ash')]).toEqual(['F', 'C'])
    expect(classByCalcium(25, 'coal-bottom-ash')).toBe('C')
    expect(classByCalcium(5, 'harvested-coal-ash')).toBe('F')
  })
  it('has no class for what is no coal ash', () => {
    expect(classByCalcium(5, 'raw-natural-pozzolan')).toBeNull()
    expect(classByCalcium(40, 'slag')).toBeNull()
  })
})
