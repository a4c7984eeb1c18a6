import { describe, expect, it } from 'vitest'
import { leaveOneOut, withoutEachMaterial } from '../../../../src/core/studies/screening/left-out.ts'
import { conditionMeans } from '../../../../src/core/studies/screening/material-means.ts'

/** { I1: 70, R1: 100 }: one batch of each, "+" for one above a ceiling; the letter is the class. */
const at = (id: string, all: Readonly<Record<string, number | string>>) => ({
  id,
  means: conditionMeans(
    Object.entries(all).map(([material, value]) => ({
      material,
      class: material.startsWith('I') ? 'inert' : material.startsWith('W') ? 'weak' : 'reactive',
      batches: [{ value: Number(`${value}`.replace('+', '')), above: `${value}`.endsWith('+') }],
    })),
    0.95,
  ),
})

describe('leaveOneOut', () => {
  it('chooses condition and threshold without the material, then judges it', () => {
    const condition = at('C', { I1: 70, I2: 95, W1: 80, R1: 100, R2: 130 })
    // Without I2 the threshold is √(70 · 100) = 84, under which I2 passes.
    expect(
      leaveOneOut(withoutEachMaterial([condition]), 1).map(({ left, threshold, judged }) => [
        left,
        threshold,
        judged,
      ]),
    ).toEqual([
      ['I1', 97, [{ material: 'I1', right: true }]],
      ['I2', 84, [{ material: 'I2', right: false }]],
      ['R1', 111, [{ material: 'R1', right: false }]],
      ['R2', 97, [{ material: 'R2', right: true }]],
    ])
  })
  it('judges all materials of a laboratory by what the others choose', () => {
    const others = [at('C', { I1: 70, R1: 100 }), at('D', { I1: 70, R1: 90 })]
    const own = [at('C', { I1: 86, W1: 99, R1: 90, R2: '80+' }), at('D', { I1: 60, R3: 95 })]
    // The others choose C with √(70 · 100) = 84; I1 passes there, R2 is above 80, and R3 was not tested there.
    expect(leaveOneOut([{ left: '2', rest: others, itself: own }], 1)).toEqual([
      {
        left: '2',
        condition: 'C',
        threshold: 84,
        judged: [
          { material: 'I1', right: false },
          { material: 'R1', right: true },
          { material: 'R2', right: null },
          { material: 'R3', right: null },
        ],
      },
    ])
  })
  it('judges nothing where the others set no threshold', () => {
    const [found] = leaveOneOut(
      [{ left: '2', rest: [at('C', { I1: 70 })], itself: [at('C', { I1: 70, R1: 100 })] }],
      1,
    )
    expect(found?.threshold).toBeNull()
    expect(found?.judged.every(({ right }) => right === null)).toBe(true)
  })
})
