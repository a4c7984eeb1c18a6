import { describe, expect, it } from 'vitest'
import { fittedComponents, satterthwaite } from '../../../src/core/statistics/fitted-components.ts'
import { varianceComponents } from '../../../src/core/statistics/variance-components.ts'

/** Material, laboratory, batch, value: made for this test, one cell and one batch missing. */
const ROWS: readonly (readonly [string, string, string, number])[] = (
  'I1 A0 4.35,I1 A1 4.356,I1 A2 4.345,I1 B0 4.282,I1 B1 4.291,I2 A0 4.26,I2 A1 4.281,I2 A2 4.307,I2 B0 4.22,I2 B1 4.218,' +
  'I3 A0 4.38,I3 A1 4.377,I3 A2 4.372,R1 A0 4.711,R1 A1 4.729,R1 A2 4.744,R1 B0 4.653,R1 B1 4.671,R2 A0 4.472,R2 A2 4.484,' +
  'R2 B0 4.423,R2 B1 4.455,R3 A0 4.675,R3 A1 4.705,R3 A2 4.703,R3 B0 4.646,R3 B1 4.6,R4 A0 4.589,R4 A1 4.599,R4 A2 4.602,' +
  'R4 B0 4.519,R4 B1 4.54'
)
  .split(',')
  .map((text) => {
    const [material = '', place = '', value = ''] = text.split(' ')
    return [material, place[0] ?? '', place, Number(value)]
  })

describe('fittedComponents', () => {
  const of = (own: string) => ROWS.map(([material]) => (material.startsWith(own) ? material : null))
  const found = fittedComponents(
    ROWS.map(([, , , value]) => value),
    ROWS.map(([material]) => material[0] ?? ''),
    [
      { name: 'inert', groups: of('I') },
      { name: 'reactive', groups: of('R') },
      { name: 'laboratory', groups: ROWS.map(([, laboratory]) => laboratory) },
      { name: 'control', groups: ROWS.map(([, , batch]) => batch) },
      { name: 'cell', groups: ROWS.map(([material, laboratory]) => material + laboratory) },
    ],
  )
  // numpy 2.4: P = X X⁺ for each step, traces of Zᵀ (P₂ − P₁) Z written out, the system solved by numpy.linalg.solve.
  it('gives the components of an unbalanced crossed layout as numpy has them from projections', () => {
    expect(found?.terms.map(({ df }) => df)).toEqual([2, 3, 1, 3, 5])
    expect(found?.residual.df).toBe(16)
    const variances = [0.0031414741463, 0.01102521627816, 0.00192889517112, 3.521093702e-5, -3.57891205e-5]
    for (const [place, variance] of variances.entries())
      expect(found?.terms[place]?.variance).toBeCloseTo(variance, 12)
    expect(found?.residual.meanSquare).toBeCloseTo(2.0433234133e-4, 12)
  })
  it('gives each variance as its factors of the mean squares', () => {
    const squares = [...(found?.terms ?? []), found?.residual].map((one) => one?.meanSquare ?? 0)
    for (const [place, { variance }] of (found?.terms ?? []).entries())
      expect(
        found?.factors[place]?.reduce((total, factor, at) => total + factor * (squares[at] ?? 0), 0),
      ).toBeCloseTo(variance ?? Number.NaN, 14)
  })
  // Batches 1 and 3, 5 and 9, 2 and 4: variances within 2, 8 and 2, so 4; means 2, 7 and 3 with variance 7, less 4/2.
  it('is the classical analysis in a balanced layout, by hand', () => {
    const one = fittedComponents([1, 3, 5, 9, 2, 4], Array(6).fill('all'), [
      { name: 'batch', groups: ['a', 'a', 'b', 'b', 'c', 'c'] },
    ])
    expect(one?.residual.meanSquare).toBeCloseTo(4, 12)
    expect(one?.residual.df).toBe(3)
    expect(one?.terms[0]?.variance).toBeCloseTo(7 - 2, 12)
  })
  it('agrees with the two-level components where there are but two levels, of unequal size', () => {
    const batches = [[1, 3, 2], [6], [4, 9]]
    const two = varianceComponents(batches.map((values) => ({ group: 'one', values })))
    const one = fittedComponents(batches.flat(), Array(6).fill('all'), [
      { name: 'batch', groups: batches.flatMap((values, place) => values.map(() => String(place))) },
    ])
    expect(one?.terms[0]?.variance).toBeCloseTo(two?.betweenVariance ?? Number.NaN, 12)
  })
  it('leaves a term without a degree of freedom undetermined, and one with a group for each value to the residual', () => {
    const one = fittedComponents([1, 3, 5, 9], Array(4).fill('all'), [
      { name: 'material', groups: ['a', 'a', 'b', 'b'] },
      { name: 'laboratory', groups: Array(4).fill('1') },
      { name: 'cell', groups: ['a1', 'a2', 'b1', 'b2'] },
    ])
    expect(one?.terms.map(({ variance }) => variance === null)).toEqual([false, true, true])
    expect(one?.withinResidual).toEqual(['cell'])
    // Means 2 and 7: variance 12.5, less (2 + 8)/2 over 2.
    expect(one?.terms[0]?.variance).toBeCloseTo(12.5 - 2.5, 12)
  })
  it('is null where each value has a mean of its own', () => {
    expect(fittedComponents([1, 2], ['a', 'b'], [{ name: 'material', groups: ['x', 'y'] }])).toBeNull()
    expect(fittedComponents([], [], [])).toBeNull()
  })
})

describe('satterthwaite', () => {
  // (1·4 + ½·6)² / (4²/2 + 3²/9) = 49/9.
  it('joins mean squares by hand', () => {
    expect(
      satterthwaite([
        { factor: 1, meanSquare: 4, df: 2 },
        { factor: 0.5, meanSquare: 6, df: 9 },
        { factor: 0, meanSquare: 0, df: 0 },
      ]),
    ).toBeCloseTo(49 / 9, 12)
  })
  it('is null for a sum that is not above zero', () => {
    expect(satterthwaite([{ factor: -1, meanSquare: 4, df: 2 }])).toBeNull()
  })
})
