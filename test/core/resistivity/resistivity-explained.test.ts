import { describe, expect, it } from 'vitest'
import { explainResistivity } from '../../../src/core/resistivity/resistivity-explained.ts'
import { explanationWords } from '../../../src/words/explanation-words.ts'

const pair = {
  testOhmMetre: 175.4,
  controlOhmMetre: 39.3,
  cementAlkalis: 0.65,
  materialAlkalis: 2,
  replacement: 0.5,
  waterToCementitious: 0.485,
}

describe('explainResistivity', () => {
  it('gives two ranges whose ends multiply to the index', () => {
    const found = explainResistivity(pair)
    // At each corner the factors' product is the index, so that the lowest of one belongs to the highest of
    // the other.
    expect(found.poreSolution.low * found.poreStructure.high).toBeCloseTo(found.ratio, 10)
    expect(found.poreSolution.high * found.poreStructure.low).toBeCloseTo(found.ratio, 10)
    expect(found.ratio).toBeCloseTo(175.4 / 39.3, 12)
  })

  it('leaves the factors where both resistivities grow alike', () => {
    const [one, other] = [
      explainResistivity(pair),
      explainResistivity({ ...pair, testOhmMetre: 1754, controlOhmMetre: 393 }),
    ]
    expect(other.poreStructure.low).toBeCloseTo(one.poreStructure.low, 10)
    expect(other.poreSolution).toEqual(one.poreSolution)
    expect(other.testFormation.low).toBeCloseTo(10 * one.testFormation.low, 8)
  })

  it('has a factor of one from the solution where nothing is replaced and as much is bound', () => {
    expect(explainResistivity({ ...pair, replacement: 0 }).poreSolution.low).toBeCloseTo(1, 12)
  })

  it('takes each mortar’s own water: a control with more of it has the thinner solution', () => {
    expect(explainResistivity({ ...pair, controlWaterToCementitious: 0.6 }).poreSolution.high).toBeLessThan(
      explainResistivity(pair).poreSolution.high,
    )
  })

  it('follows the reader’s own assumptions: one corner is one number', () => {
    const found = explainResistivity(pair, {
      cementReaction: [0.8, 0.8],
      materialReaction: [0.3, 0.3],
      bound: [0.2, 0.2],
    })
    expect(found.poreSolution.low).toBeCloseTo(found.poreSolution.high, 12)
  })

  it('is wide: the range usual for such mortars is honest', () => {
    const { poreSolution } = explainResistivity(pair)
    expect(poreSolution.high / poreSolution.low).toBeGreaterThan(2)
  })

  it('says so in one sentence that calls no factor a share', () => {
    expect(explanationWords(explainResistivity(pair))).toMatch(
      /^the pore solution may account for a factor \d+\.\d to \d+\.\d and the pore structure for a factor \d+\.\d to \d+\.\d; at each assumption their product is the index, 4\.46 times the control$/,
    )
  })
})
