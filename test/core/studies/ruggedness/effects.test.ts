import { describe, expect, it } from 'vitest'
import { aliases, designFaults, type Level } from '../../../../src/core/studies/ruggedness/design.ts'
import { ruggedness } from '../../../../src/core/studies/ruggedness/effects.ts'
import { normal, shareOf, chanceError } from '../../simulation/chance.ts'

const runs = (...all: string[]) =>
  all.map((signs) => ({ levels: [...signs].map((sign): Level => (sign === '+' ? 1 : -1)) }))

const EIGHT = ['+++-+--', '-+++-+-', '--+++-+', '+--+++-', '-+--+++', '+-+--++', '++-+--+', '-------']
/** Plackett and Burman's first row for twelve runs, moved on by one each time (from memory); its columns are held below. */
const FIRST = '++-+++---+-'
const TWELVE = [
  ...Array.from(FIRST, (_, place) => FIRST.slice(-place) + FIRST.slice(0, -place || undefined)),
  '-'.repeat(11),
].map((row) => row.slice(0, 11))

describe('designFaults', () => {
  it('finds none in the designs of eight and of twelve runs', () => {
    expect(designFaults(runs(...EIGHT))).toEqual([])
    expect(designFaults(runs(...TWELVE))).toEqual([])
  })
  it('names factors that change together, and one that is not balanced', () => {
    expect(designFaults(runs('++', '++', '--', '--'))).toEqual([{ code: 'not-orthogonal', factors: [0, 1] }])
    expect(designFaults(runs('+-', '++', '+-', '-+'))).toContainEqual({
      code: 'unbalanced',
      factor: 0,
      high: 3,
      low: 1,
    })
    expect(designFaults(runs('+-', '+'))).toEqual([{ code: 'unequal-levels', run: 1 }])
    expect(designFaults([])).toEqual([{ code: 'no-runs' }])
  })
})

describe('aliases', () => {
  it('mixes a third of an interaction into each effect of twelve runs', () => {
    const parts = new Set(aliases(runs(...TWELVE)).map(({ part }) => Math.abs(Math.round(3 * part) / 3)))
    expect(parts).toEqual(new Set([1 / 3]))
  })
  it('finds none in a full factorial of two factors', () => {
    expect(aliases(runs('--', '-+', '+-', '++'))).toEqual([])
  })
})

describe('ruggedness', () => {
  // Four runs of two factors, two replicates each, 1 apart: s² = ½ with 4 df; SE = 2/4 √(½ · 4 · ½) = ½.
  it('takes the error of an effect from the replicates, worked by hand', () => {
    const values = [
      [0, 1],
      [2, 3],
      [10, 11],
      [12, 13],
    ]
    const found = ruggedness(
      runs('--', '-+', '+-', '++').map((run, place) => ({ ...run, values: values[place] ?? [] })),
      0.95,
    )
    expect(found.effects.map(({ effect }) => effect)).toEqual([10, 2])
    expect(found.error).toEqual({ from: 'replicates', standardError: 0.5, df: 4 })
    // t of 4 degrees of freedom at 97.5 %: 2.776 in any table.
    expect(found.effects[0]?.half).toBeCloseTo(2.776 / 2, 3)
    expect(found.repeatability).toBeCloseTo(Math.SQRT1_2, 12)
  })
  // Effects: (10 + 12 − 2 − 4)/2 = 8, (10 + 2 − 12 − 4)/2 = −2, (12 + 2 − 10 − 4)/2 = 0. The second and third as dummies: √((4 + 0)/2).
  it('takes the error from dummy columns where no run is repeated, worked by hand', () => {
    const values = [10, 12, 2, 4]
    const all = runs('++-', '+-+', '-++', '---').map((run, place) => ({
      ...run,
      values: [values[place] ?? 0],
    }))
    const found = ruggedness(all, 0.95, [1, 2])
    expect(found.effects.map(({ effect }) => effect)).toEqual([8, -2, 0])
    expect(found.error).toEqual({ from: 'dummy-columns', standardError: Math.SQRT2, df: 2 })
    // t of 2 degrees of freedom at 97.5 %: 4.302653 in any table.
    expect(found.effects[0]?.half).toBeCloseTo(4.302653 * Math.SQRT2, 5)
    expect(found.effects.slice(1).map(({ half, p }) => [half, p])).toEqual([
      [null, null],
      [null, null],
    ])
    expect(ruggedness(all, 0.95, [2]).error).toBeNull()
  })
  it('holds dummy columns against the error of replicates where there are some', () => {
    const all = runs('++-', '+-+', '-++', '---').map((run, place) => ({ ...run, values: [place, place + 1] }))
    const found = ruggedness(all, 0.95, [2])
    expect(found.error?.from).toBe('replicates')
    expect(found.effects[2]?.half).not.toBeNull()
  })
  it('covers an effect of nought in 95 % of studies with three dummy columns', () => {
    const next = normal(11)
    const covered = shareOf(1000, () => {
      const found = ruggedness(
        runs(...TWELVE).map((run) => ({ ...run, values: [next()] })),
        0.95,
        [8, 9, 10],
      )
      const [first] = found.effects
      return Math.abs(first?.effect ?? 9) <= (first?.half ?? 0)
    })
    expect(Math.abs(covered - 0.95)).toBeLessThan(chanceError(0.95, 1000))
  })
  it('has no error where nothing scatters and nothing acts', () => {
    const found = ruggedness(
      runs('--', '-+', '+-', '++').map((run) => ({ ...run, values: [5] })),
      0.95,
    )
    expect(found.error).toBeNull()
    expect(found.effects.map(({ p }) => p)).toEqual([null, null])
  })
  it('covers an effect of nought in 95 % of studies with replicates', () => {
    const next = normal(9)
    const covered = shareOf(1000, () => {
      const found = ruggedness(
        runs(...EIGHT).map((run) => ({ ...run, values: [next(), next()] })),
        0.95,
      )
      const [first] = found.effects
      return Math.abs(first?.effect ?? 9) <= (first?.half ?? 0)
    })
    expect(Math.abs(covered - 0.95)).toBeLessThan(chanceError(0.95, 1000))
  })
})
