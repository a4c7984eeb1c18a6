import { describe, expect, it } from 'vitest'
import {
  conductivity,
  ionicStrength,
  poreSolution,
  type Solution,
  withHydroxide,
} from '../../../src/core/resistivity/pore-solution.ts'
import { publishedCases } from '../values.ts'

const [mixed, divalent] = publishedCases('pore-solution-conductivity')
if (mixed === undefined || divalent === undefined) throw new Error('two published cases')

describe('conductivity of a pore solution', () => {
  // Snyder, Feng, Keen and Mason 2003, Table 2: calculated and measured conductivities of KOH and NaOH
  // mixtures.
  it('gives the calculated column as printed, in the last digit', () => {
    const solutions = mixed.inputs['solutions_mol_per_L'] as Solution[]
    const printed = mixed.expected['sigma_calculated_published_S_per_m'] as number[]
    const exact = mixed.expected['sigma_unrounded'] as number[]
    expect(solutions.length).toBe(8)
    solutions.forEach((solution, place) => {
      const digits = String(printed[place]).split('.')[1]?.length ?? 0
      expect(Math.abs(conductivity(solution) - (printed[place] ?? 0))).toBeLessThanOrEqual(
        0.5 * 10 ** -digits * 1.02,
      )
      expect(conductivity(solution)).toBeCloseTo(exact[place] ?? 0, 6)
    })
  })

  it('lies within 8 % of what was measured', () => {
    const measured = mixed.expected['sigma_measured_published_S_per_m'] as number[]
    ;(mixed.inputs['solutions_mol_per_L'] as Solution[]).forEach((solution, place) => {
      expect(Math.abs(conductivity(solution) / (measured[place] ?? 0) - 1)).toBeLessThan(0.08)
    })
  })

  it('counts divalent ions by their equivalents, undivided', () => {
    const solution = divalent.inputs['solution_mol_per_L'] as Solution
    expect(ionicStrength(solution)).toBeCloseTo(divalent.expected['ionic_strength'] as number, 10)
    expect(
      Math.abs(conductivity(solution) / (divalent.expected['sigma_S_per_m'] as number) - 1),
    ).toBeLessThan(1e-7)
  })

  it('sets hydroxide by charge, as the tables do', () => {
    const { OH: hydroxide, ...cations } = (mixed.inputs['solutions_mol_per_L'] as Solution[])[0] ?? {}
    expect(withHydroxide(cations).OH).toBeCloseTo(hydroxide ?? 0, 12)
    const { OH: _balanced, ...others } = divalent.inputs['solution_mol_per_L'] as Solution
    expect(withHydroxide(others).OH).toBeCloseTo(0.496, 12)
  })
})

describe('the pore solution of a paste', () => {
  const paste = {
    cementAlkalis: 0.61979,
    materialAlkalis: 0,
    replacement: 0,
    waterToCementitious: 0.43,
    cementReaction: 1,
    materialReaction: 0,
    bound: 0,
  }

  it('holds the alkalis of the cement in the water that reaction leaves, hand-worked', () => {
    // 0.61979 % of 1 g is 0.1 mmol Na2O, 0.2 mmol Na; water left 0.43 − 0.23 = 0.20 mL: 1.0 mol/L.
    expect(poreSolution(paste).Na).toBeCloseTo(1, 10)
    expect(poreSolution({ ...paste, bound: 0.5 }).Na).toBeCloseTo(0.5, 10)
  })

  it('is thinner where an inert material takes the place of cement, and stronger with more alkalis', () => {
    const inert = poreSolution({ ...paste, replacement: 0.5 })
    expect(inert.Na).toBeCloseTo(0.1 / 0.315, 10)
    expect(conductivity(poreSolution({ ...paste, cementAlkalis: 0.9 }))).toBeGreaterThan(
      conductivity(poreSolution(paste)),
    )
  })

  it('refuses a paste that reaction dries out', () => {
    expect(() => poreSolution({ ...paste, waterToCementitious: 0.2 })).toThrow(
      'poreSolution needs water left after reaction',
    )
  })
})
