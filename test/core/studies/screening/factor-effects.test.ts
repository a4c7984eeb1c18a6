import { describe, expect, it } from 'vitest'
import { factorEffects, interactions } from '../../../../src/core/studies/screening/factor-effects.ts'
import { factorLayout, type StatedFactor } from '../../../../src/core/studies/screening/factors.ts'
import { conditionMeans } from '../../../../src/core/studies/screening/material-means.ts'

/** { I1: 0.2 }: logarithms of one batch each; "1+" for one above a bound; the letter is the class. */
const means = (logs: Readonly<Record<string, number | string>>) =>
  conditionMeans(
    Object.entries(logs).map(([material, log]) => ({
      material,
      class: material.startsWith('I') ? 'inert' : material.startsWith('W') ? 'weak' : 'reactive',
      batches: [{ value: Math.exp(Number(`${log}`.replace('+', ''))), above: `${log}`.endsWith('+') }],
    })),
    0.95,
  )

const FACTORS: readonly StatedFactor[] = [
  { name: 'replacement', levels: ['20', '30'] },
  { name: 'temperature', levels: ['23', '40', '50'] },
  { name: 'flow', levels: ['constant', 'free'] },
  { name: 'curing', levels: ['lime'] },
  { name: 'age', levels: ['7', '28'] },
]

/** { "30 23 free lime 28": logarithms }. */
const layout = (all: Readonly<Record<string, Readonly<Record<string, number | string>>>>) =>
  factorLayout(
    FACTORS,
    Object.entries(all).map(([levels, logs]) => ({ levels: levels.split(' '), means: means(logs) })),
  )

describe('factorLayout', () => {
  it('keeps factors that vary, joins those that change together, and leaves out what two conditions share', () => {
    const found = layout({
      '20 23 constant lime 28': { I1: 0 },
      '30 23 free lime 28': { I1: 0 },
      '30 40 free lime 28': { I1: 0 },
    })
    expect(found.factors).toEqual([
      {
        names: ['replacement', 'flow'],
        levels: [
          ['20', 'constant'],
          ['30', 'free'],
        ],
      },
      { names: ['temperature'], levels: [['23'], ['40']] },
    ])
    const twice = factorLayout(FACTORS.slice(0, 1), [
      { levels: ['20'], means: means({ I1: 0 }) },
      { levels: ['20'], means: means({ I1: 0 }) },
      { levels: ['30'], means: means({ I1: 0 }) },
    ])
    expect([twice.cells.length, twice.leftOut]).toEqual([1, 2])
  })
})

describe('factorEffects', () => {
  // Changes: inert 0 and 2, reactive 5 and 7. Apart by 6 − 1 = 5; variances of the means 1 and 1, so √2 with (1 + 1)²/(1 + 1) = 2
  // degrees of freedom, and t of 2 at 97.5 % is 4.302653 in any table. Gap: lowest reactive 10 less highest inert 2, then 15 less 4.
  it('takes what a step does to reactive materials less what it does to inert ones, by hand', () => {
    const [effect] = factorEffects(
      layout({
        '30 23 free lime 28': { I1: 1, I2: 2, W1: 3, R1: 10, R2: 12 },
        '30 50 free lime 28': { I1: 1, I2: 4, W1: 9, R1: 15, R2: 19 },
      }),
      0.95,
    )
    expect(effect).toMatchObject({ from: 0, to: 1, pairs: 1 })
    expect(effect?.apart?.change).toBeCloseTo(5, 12)
    expect(effect?.apart?.interval?.[1]).toBeCloseTo(5 + 4.302653 * Math.SQRT2, 5)
    expect(effect?.gap?.change).toBeCloseTo(11 - 8, 12)
  })
  it('leaves a material above a bound out of the means, and a gap open where the bound may be the lowest', () => {
    const [effect] = factorEffects(
      layout({
        '30 23 free lime 28': { I1: 1, R1: 10, R2: 12 },
        '30 50 free lime 28': { I1: 1, R1: 15, R2: '14+' },
      }),
      0.95,
    )
    expect(effect?.apart).toMatchObject({ leftOut: ['R2'], reactive: 1, interval: null })
    expect(effect?.apart?.change).toBeCloseTo(5, 12)
    expect(effect?.gap).toBeNull()
  })
  it('names nothing where something else differs each time, and not the same', () => {
    const [effect] = factorEffects(
      layout({
        '20 23 free lime 28': { I1: 0, R1: 1 },
        '30 40 free lime 28': { I1: 0, R1: 1 },
        '30 23 free lime 7': { I1: 0, R1: 1 },
      }),
      0.95,
    )
    expect(effect).toMatchObject({ factor: 0, pairs: 0, with: [], apart: null })
  })
  it('names the factors that differ each time', () => {
    const [effect] = factorEffects(
      layout({
        '20 23 constant lime 28': { I1: 0, R1: 1 },
        '30 40 constant lime 28': { I1: 0, R1: 1 },
        '30 50 constant lime 28': { I1: 0, R1: 1 },
      }),
      0.95,
    )
    expect(effect).toMatchObject({ factor: 0, pairs: 0, with: [1], apart: null, gap: null })
  })
})

describe('interactions', () => {
  const grid = {
    '30 23 free lime 7': { I1: 0, I2: 1, R1: 2, R2: 3 },
    '30 50 free lime 7': { I1: 0, I2: 1, R1: 4, R2: 6 },
    '30 23 free lime 28': { I1: 0, I2: 1, R1: 3, R2: 4 },
    '30 50 free lime 28': { I1: 0, I2: 2, R1: 9, R2: 12 },
    '30 40 free lime 28': { I1: 0, I2: 1, R1: 5, R2: 6 },
  }
  // (28 d: 50 − 23) − (7 d: 50 − 23): I1 0 − 0, I2 1 − 0, R1 6 − 2 = 4, R2 8 − 3 = 5. Apart 4.5 − 0.5 = 4.
  it('is the step at the upper level less that at the lower, by hand', () => {
    const [found, ...rest] = interactions(layout(grid), 0.95)
    expect(rest).toEqual([])
    expect(found?.apart.change).toBeCloseTo(4, 12)
    expect(found).toMatchObject({ settings: 1, firstLevels: [0, 2], secondLevels: [0, 1] })
    const at = (first: number, second: number) =>
      found?.points.find((one) => one.first === first && one.second === second)?.apart
    expect(at(2, 1)).toBeCloseTo(10.5 - 1, 12)
    expect(at(1, 1)).toBeCloseTo(5.5 - 0.5, 12)
    expect(at(1, 0)).toBeUndefined()
  })
  it('is nought for parallel lines, whatever the steps', () => {
    const [found] = interactions(
      layout({
        '30 23 free lime 7': { I1: 0, R1: 1 },
        '30 50 free lime 7': { I1: 1, R1: 5 },
        '30 23 free lime 28': { I1: 2, R1: 7 },
        '30 50 free lime 28': { I1: 3, R1: 11 },
      }),
      0.95,
    )
    expect(found?.apart.change).toBeCloseTo(0, 12)
  })
  it('is none where no four conditions hold two levels of both', () => {
    const { '30 23 free lime 7': _, ...without } = grid
    expect(interactions(layout(without), 0.95)).toEqual([])
  })
})
