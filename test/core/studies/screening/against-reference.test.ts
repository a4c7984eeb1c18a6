import { describe, expect, it } from 'vitest'
import {
  againstReference,
  type Referenced,
} from '../../../../src/core/studies/screening/against-reference.ts'

/** { I1: [index, heat] }; a negative index is a bound that the material lies above. */
const all = (given: Readonly<Record<string, readonly [number, number]>>): Referenced[] =>
  Object.entries(given).map(([material, [value, reference]]) => ({
    mean: {
      material,
      class: material.startsWith('I') ? 'inert' : material.startsWith('W') ? 'weak' : 'reactive',
      n: 3,
      restsOn: 3,
      value: Math.abs(value),
      above: value < 0,
      censored: 0,
      interval: null,
    },
    reference,
  }))

describe('againstReference', () => {
  const given = { I1: [50, 10], I2: [55, 20], W1: [60, 120], R1: [90, 100], R2: [58, 150] } as const

  it('sets the boundary halfway from the highest inert to the lowest reactive value', () => {
    expect(againstReference(all(given), 80)).toMatchObject({
      highestInert: 20,
      lowestReactive: 100,
      boundary: 60,
    })
  })
  it('names who stands on the other side, weak materials too', () => {
    expect(againstReference(all(given), 80).disagreements).toEqual([
      { material: 'W1', index: 'below' },
      { material: 'R2', index: 'below' },
    ])
    expect(againstReference(all({ ...given, I2: [85, 20] }), 80).disagreements).toContainEqual({
      material: 'I2',
      index: 'above',
    })
  })
  it('counts a material at its threshold and at the boundary as above both', () => {
    const found = againstReference(all({ I1: [50, 10], I2: [50, 20], W1: [80, 60], R1: [90, 100] }), 80)
    expect(found.disagreements).toEqual([])
  })
  it('has no boundary where the classes overlap in the reference, and names nobody', () => {
    expect(againstReference(all({ ...given, I2: [55, 110] }), 80)).toMatchObject({
      boundary: null,
      disagreements: null,
    })
    expect(againstReference(all(given), null).disagreements).toBeNull()
  })
  it('leaves a material open whose bound lies below the threshold, and off the line', () => {
    const found = againstReference(all({ ...given, R1: [-70, 100], I1: [50, 0] }), 80)
    expect(found.undecided).toEqual(['R1'])
    expect(found.disagreements?.map(({ material }) => material)).toEqual(['W1', 'R2'])
    expect(found.offLine).toEqual(['I1', 'R1'])
    // On the line are I2, W1 and R2 alone.
    expect(found.line?.n).toBe(3)
  })
  // index = 10 √heat, so ln index = ln 10 + ½ ln heat, whatever the ratio.
  it('finds a power law exactly', () => {
    const { line, rankCorrelation } = againstReference(
      all({ I1: [10, 1], I2: [20, 4], R1: [90, 81], R2: [100, 100] }),
      50,
    )
    expect(line?.slope).toBeCloseTo(0.5, 12)
    expect(line?.intercept).toBeCloseTo(Math.log(10), 12)
    expect(rankCorrelation).toBeCloseTo(1, 12)
  })
})
