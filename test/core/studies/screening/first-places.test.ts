import { describe, expect, it } from 'vitest'
import { orderedConditions, type ScreenedCondition } from '../../../../src/core/studies/screening/choice.ts'
import { firstPlaces } from '../../../../src/core/studies/screening/first-places.ts'
import type { MaterialMean } from '../../../../src/core/studies/screening/material-means.ts'

/** Park and Miller's generator: the same draws in every run. */
const chanceFrom = (seed: number) => {
  let state = seed
  return () => {
    state = (state * 16_807) % 2_147_483_647
    return state / 2_147_483_647
  }
}

const placed = (material: string, value: number, above = false): MaterialMean => ({
  material,
  class: material.startsWith('I') ? 'inert' : 'reactive',
  ...{ n: 1, restsOn: 1, value, above, censored: 0, interval: null },
})

const condition = (id: string, means: readonly MaterialMean[]): ScreenedCondition => ({
  id,
  means: { means, between: null, level: 0.95 },
})

describe('firstPlaces', () => {
  const conditions = [
    condition('A', [placed('I1', 70), placed('I2', 75), placed('R1', 90), placed('R2', 120)]),
    condition('B', [placed('I1', 60), placed('I2', 85), placed('R1', 110), placed('R2', 95)]),
  ]
  it('gives shares that sum to one, the same for the same chance', () => {
    const found = firstPlaces(conditions, 500, chanceFrom(1))
    expect(found).toEqual(firstPlaces(conditions, 500, chanceFrom(1)))
    expect(found.reduce((total, { share }) => total + share, 0)).toBeCloseTo(1, 12)
  })
  // Drawn I1 I1 R1 R1: 110/60 beats 90/70; I2 I2 R2 R2: 120/75 beats 95/85. Each by a draw whose numbers are given.
  it('puts the wider gap of a draw first, by hand', () => {
    const numbers = (all: readonly number[]) => {
      const left = [...all]
      return () => left.shift() ?? 0
    }
    expect(firstPlaces(conditions, 1, numbers([0, 0, 0, 0]))).toEqual([{ id: 'B', share: 1 }])
    expect(firstPlaces(conditions, 1, numbers([0.9, 0.9, 0.9, 0.9]))).toEqual([{ id: 'A', share: 1 }])
  })
  it('draws materials that only a later condition holds', () => {
    const late = [condition('A', [placed('I1', 70)]), condition('B', [placed('I1', 70), placed('R1', 90)])]
    expect(firstPlaces(late, 20, chanceFrom(3))).toEqual([{ id: 'B', share: 1 }])
  })
  it('is empty where no condition holds both classes', () => {
    expect(firstPlaces([condition('A', [placed('I1', 70)])], 20, chanceFrom(3))).toEqual([])
    expect(firstPlaces([], 20, chanceFrom(3))).toEqual([])
  })
  // Oracle: the rule itself, on lists of the materials drawn; ties, bounds and overlaps included.
  it('orders the conditions of every draw as orderedConditions does', () => {
    for (let seed = 1; seed <= 400; seed += 1) {
      const values = chanceFrom(seed)
      const codes = ['I1', 'I2', 'I3', 'R1', 'R2', 'R3', 'R4']
      const own = ['A', 'B', 'C'].map((id) =>
        condition(
          id,
          codes.map((code) => placed(code, 40 + 5 * Math.floor(8 * values()), values() < 0.15)),
        ),
      )
      const [draws, again] = [chanceFrom(seed + 1000), chanceFrom(seed + 1000)]
      const drawn = [codes.slice(0, 3), codes.slice(3)].flatMap((all) =>
        all.map(() => all[Math.floor(again() * all.length)]),
      )
      const first = orderedConditions(
        own.map(({ id, means }) =>
          condition(
            id,
            drawn.flatMap((code) => means.means.filter(({ material }) => material === code)),
          ),
        ),
        5,
      )[0]
      expect(firstPlaces(own, 1, draws), `seed ${seed}`).toEqual([{ id: first?.id, share: 1 }])
    }
  })
})
