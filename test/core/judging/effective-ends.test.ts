import { describe, expect, it } from 'vitest'
import type { ClassLimit } from '../../../src/core/criteria/limits-for-class.ts'
import { compareWithLimit } from '../../../src/core/judging/compare-with-limit.ts'
import { effectiveEnds, unroundedEnds } from '../../../src/core/judging/effective-ends.ts'
import { isFault, type QuantityKind, readQuantity } from '../../../src/core/measure/units.ts'

function limit(operator: ClassLimit['operator'], kind: QuantityKind, ...written: string[]): ClassLimit {
  const quantities = written.map((text) => {
    const read = readQuantity(text, kind)
    if (isFault(read)) throw new Error(`${text} is no quantity`)
    return read
  })
  return { operator, quantities }
}

describe('effectiveEnds', () => {
  it('effectiveEnds lie half a step beyond a limit that counts, half a step inside one that does not', () => {
    expect(effectiveEnds(limit('at-least', 'fraction', '75 %'))).toEqual({ low: { at: 74.5, step: 1 } })
    expect(effectiveEnds(limit('above', 'fraction', '18.0 %'))).toEqual({ low: { at: 18.05, step: 0.1 } })
    expect(effectiveEnds(limit('at-most', 'fraction', '6.0 %'))).toEqual({ high: { at: 6.05, step: 0.1 } })
    expect(effectiveEnds(limit('below', 'fraction', '6 %'))).toEqual({ high: { at: 5.5, step: 1 } })
    expect(effectiveEnds(limit('magnitude-at-most', 'fraction', '0.8 %'))).toEqual({
      low: { at: -0.85, step: 0.1 },
      high: { at: 0.85, step: 0.1 },
    })
    expect(effectiveEnds(limit('between', 'fraction', '2 %', '7.0 %'))).toEqual({
      low: { at: 1.5, step: 1 },
      high: { at: 7.05, step: 0.1 },
    })
  })

  it('effectiveEnds of a limit between two steps begin at the next step inside it', () => {
    expect(effectiveEnds(limit('at-least', 'fraction', '72 %'), 5)).toEqual({ low: { at: 72.5, step: 5 } })
    expect(effectiveEnds(limit('at-most', 'fraction', '72 %'), 5)).toEqual({ high: { at: 72.5, step: 5 } })
  })

  it('effectiveEnds are in the stored unit', () => {
    // 4000 psi in steps of 1 psi; 1 psi is 0.00689475729 MPa.
    const { low } = effectiveEnds(limit('at-least', 'stress', '4000 psi'))
    expect(low?.at).toBeCloseTo(3999.5 * 0.00689475729317, 8)
    expect(low?.step).toBeCloseTo(0.00689475729317, 8)
  })

  it('effectiveEnds without rounding are the limits', () => {
    expect(unroundedEnds(limit('between', 'fraction', '2 %', '7.0 %'))).toEqual({
      low: { at: 2, step: 0 },
      high: { at: 7, step: 0 },
    })
    expect(unroundedEnds(limit('below', 'fraction', '7 %'))).toEqual({ high: { at: 7, step: 0 } })
  })

  it('effectiveEnds part what is met from what is not', () => {
    for (const operator of ['at-least', 'above', 'at-most', 'below'] as const)
      for (const resolution of [undefined, 0.1, 5, 2]) {
        const held = limit(operator, 'fraction', '75 %')
        const { low, high } = effectiveEnds(held, resolution)
        const [at, inward] = [low?.at ?? high?.at ?? Number.NaN, low === undefined ? -1e-6 : 1e-6]
        const answer = (value: number) =>
          compareWithLimit({ value }, operator, held.quantities, resolution).answer
        expect([operator, resolution, answer(at + inward), answer(at - inward)]).toEqual([
          operator,
          resolution,
          'met',
          'not-met',
        ])
      }
  })
})
