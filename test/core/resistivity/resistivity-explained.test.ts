import { describe, expect, it } from 'vitest'
import { explainResistivity, leavesWater } from '../../../src/core/resistivity/resistivity-explained.ts'
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

  // By equations 5 and 6 of Snyder and others with the figures of the paper, as in pore-solution.test.ts. Sodium and
  // hydroxide, mol/L, where a tenth and where a quarter of the alkalis is bound: test 2 × 0.00496/61.979/0.000362 =
  // 0.442139, times 0.9 and 0.75; control 2 × 0.00496/61.979/0.000316 = 0.506501, times 0.9 and 0.75.
  // 0.397925: root 0.630813, 0.0397925 × (50.1/1.462386 + 198/1.222677) = 7.80724 S/m
  // 0.331604: root 0.575851, 0.0331604 × (50.1/1.422099 + 198/1.203275) = 6.62480 S/m
  // 0.455851: root 0.675167, 0.0455851 × (50.1/1.494897 + 198/1.238334) = 8.81644 S/m
  // 0.379876: root 0.616340, 0.0379876 × (50.1/1.451777 + 198/1.217568) = 7.48845 S/m
  it('states the pore resistivity and the formation factor of either mortar, lowest to highest', () => {
    const found = explainResistivity(
      {
        testOhmMetre: 200,
        controlOhmMetre: 40,
        cementAlkalis: 0.62,
        materialAlkalis: 1.24,
        replacement: 0.5,
        waterToCementitious: 0.5,
      },
      { cementReaction: [0.8, 0.8], materialReaction: [0.4, 0.4], bound: [0.1, 0.25] },
    )
    const [test, control] = [
      [7.80724, 6.6248],
      [8.81644, 7.48845],
    ].map((both) => both.map((siemens) => 1 / siemens))
    expect([found.testPore.low, found.testPore.high]).toEqual(test?.map((ohm) => expect.closeTo(ohm, 5)))
    expect([found.controlPore.low, found.controlPore.high]).toEqual(
      control?.map((ohm) => expect.closeTo(ohm, 5)),
    )
    expect(found.testFormation.low).toBeCloseTo(200 * 6.6248, 1)
    expect(found.testFormation.high).toBeCloseTo(200 * 7.80724, 1)
    expect(found.controlFormation.low).toBeCloseTo(40 * 7.48845, 1)
    expect(found.controlFormation.high).toBeCloseTo(40 * 8.81644, 1)
    // A control never binds more than its test mortar: 0.1 with 0.1 and 0.25, 0.25 with 0.25.
    expect(found.poreSolution.low).toBeCloseTo(8.81644 / 7.80724, 5)
    expect(found.poreSolution.high).toBeCloseTo(8.81644 / 6.6248, 5)
  })

  it('is wide: the range usual for such mortars is honest', () => {
    const { poreSolution } = explainResistivity(pair)
    expect(poreSolution.high / poreSolution.low).toBeGreaterThan(2)
  })

  it('says so in one sentence that calls no factor a share', () => {
    expect(explanationWords(explainResistivity(pair))).toMatch(
      /^the pore solution may account for a factor of \d+\.\d to \d+\.\d and the pore structure for a factor of \d+\.\d to \d+\.\d; under each set of assumptions their product is the index, 4\.46 times the control$/,
    )
  })
})

describe('leavesWater', () => {
  // At most 95 % of the cement and 60 % of the material react, and bind 0.23 g per g: a control of cement alone takes
  // 0.95 × 0.23 = 0.2185; half replaced, (0.5 × 0.95 + 0.5 × 0.6) × 0.23 = 0.17825.
  it('asks for more water than the most that either mortar binds', () => {
    expect(leavesWater({ replacement: 0.5, waterToCementitious: 0.2186 })).toBe(true)
    expect(leavesWater({ replacement: 0.5, waterToCementitious: 0.2184 })).toBe(false)
  })
  it('lets a control have its own water', () => {
    const own = { replacement: 0.5, controlWaterToCementitious: 0.4 }
    expect(leavesWater({ ...own, waterToCementitious: 0.1783 })).toBe(true)
    expect(leavesWater({ ...own, waterToCementitious: 0.1782 })).toBe(false)
  })
  it('is what explaining needs', () => {
    expect(() => explainResistivity({ ...pair, waterToCementitious: 0.2 })).toThrow(/water left/)
    expect(leavesWater({ ...pair, waterToCementitious: 0.2 })).toBe(false)
  })
})
