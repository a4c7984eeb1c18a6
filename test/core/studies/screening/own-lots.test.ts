import { describe, expect, it } from 'vitest'
import { readAge } from '../../../../src/core/measure/age.ts'
import { type LotIndex, lotsByCondition } from '../../../../src/core/studies/screening/own-lots.ts'

const MATERIALS = [
  { code: 'stone', class: 'inert' },
  { code: 'ash', class: 'reactive' },
  { code: 'tuff', class: 'reactive' },
] as const

function indices(source: string, values: readonly number[], age = '28 d'): LotIndex[] {
  return values.map((value) => ({
    ...{ source, property: 'strength-activity-index', condition: 'hot', age: readAge(age), value },
  }))
}

const LOTS = [...indices('stone', [64, 81, 90]), ...indices('ash', [80, 100]), ...indices('tuff', [70, 110])]

describe('lotsByCondition', () => {
  it('takes the source as the unit: one mean each, and the area of the means', () => {
    const [found] = lotsByCondition(LOTS, MATERIALS, 0.95)
    // By hand: (64 · 81 · 90)^(1/3), √(80 · 100), √(70 · 110).
    expect(found?.means.means.map(({ value }) => value)).toEqual([
      expect.closeTo(466560 ** (1 / 3), 10),
      expect.closeTo(8000 ** 0.5, 10),
      expect.closeTo(7700 ** 0.5, 10),
    ])
    expect(found?.separation).toMatchObject({ area: 1, inert: 1, reactive: 2, wrongSide: [] })
  })
  it('counts the area of the lots apart', () => {
    // Of 3 × 4 pairs 80 wins 1, 100 wins 3, 70 wins 1, 110 wins 3: scipy 1.17.1, mannwhitneyu([80, 100, 70, 110],
    // [64, 81, 90]).statistic is 8.
    expect(lotsByCondition(LOTS, MATERIALS, 0.95)[0]?.areaOfLots).toBeCloseTo(8 / 12, 12)
  })
  it('gives an interval so wide with one inert source that it shows nothing', () => {
    const [low, high] = lotsByCondition(LOTS, MATERIALS, 0.95)[0]?.areaInterval ?? [1, 0]
    expect(low).toBeLessThan(0.5)
    expect(high).toBe(1)
  })
  it('sets ages and conditions apart, and leaves out sources that do not say what they are', () => {
    const found = lotsByCondition(
      [...LOTS, ...indices('ash', [60], '7 d'), ...indices('slag', [120], '91 d')],
      MATERIALS,
      0.95,
    )
    expect(
      found.map(({ age, lots, separation }) => [age.text, lots.reactive.length, separation === null]),
    ).toEqual([
      ['7 d', 1, true],
      ['28 d', 4, false],
    ])
  })
})
