import { describe, expect, it } from 'vitest'
import { CHECKS } from '../../../src/core/checks/catalogue.ts'
import {
  readingsOfControl,
  specimensEqual,
  type SpecimensRead,
} from '../../../src/core/checks/copied-specimens.ts'
import { isFault, type Quantity, type QuantityKind, readQuantity } from '../../../src/core/measure/units.ts'
import { normal } from '../simulation/chance.ts'

const read = (text: string, kind: QuantityKind = 'force'): Quantity => {
  const quantity = readQuantity(text, kind)
  if (isFault(quantity)) throw new RangeError(`a quantity was expected, not ${text}`)
  return quantity
}
const set = (specimens: readonly string[], ofControl: readonly string[] = []): SpecimensRead => ({
  ...{ of: 'strength', condition: 'warm', age: '7 d', laboratory: 'quay', sample: 'C', control: 'K1' },
  specimens: specimens.map((text) => read(text)),
  ofControl: ofControl.map((text) => read(text)),
})

describe('specimensEqual(lot, sets)', () => {
  const found = (...specimens: readonly string[]) => specimensEqual('vale/1', [set(specimens)])

  it('asks about three readings that are one and the same, with the reading', () => {
    expect(
      found('78.4 kN', '78.4 kN', '78.4 kN').findings.map(({ id, reason }) => [id, reason.params]),
    ).toEqual([
      [
        'specimens-equal/vale/1/strength/warm/7-d/quay/C',
        expect.objectContaining({ specimens: 3, written: '78.4 kN' }),
      ],
    ])
  })
  it('asks nothing where one differs, or of two specimens', () => {
    expect(found('78.4 kN', '78.4 kN', '78.5 kN')).toMatchObject({ looked: 1, findings: [] })
    expect(found('78.4 kN', '78.4 kN')).toMatchObject({ looked: 0, findings: [] })
  })
  it('does not look at readings too coarse to differ: 0.2 % of the value and no more', () => {
    // 1/78 is 1.3 %, 100/17600 is 0.6 %, 0.1/49.9 is just above 0.2 %; 0.1/50 and 10/17650 are not.
    for (const text of ['78 kN', '17600 lbf', '49.9 kN']) expect(found(text, text, text).looked).toBe(0)
    for (const text of ['50.0 kN', '17650 lbf']) expect(found(text, text, text).findings).toHaveLength(1)
  })
  it('is raised by chance as often as its catalogue says, or less', () => {
    // Three specimens of 2.5 %, in steps of 0.1 kN at 78 kN: step²/(2π√3 sd²) = 2.4e-4, worked by hand.
    const draw = normal(11)
    const rounds = 400_000
    let alike = 0
    for (let round = 0; round < rounds; round++) {
      const [a, b, c] = [draw(), draw(), draw()].map((d) => Math.round(10 * (78 + 1.95 * d)))
      if (a === b && b === c) alike += 1
    }
    expect(alike / rounds).toBeCloseTo(0.01 / (2 * Math.PI * Math.sqrt(3) * 1.95 ** 2), 4)
    expect(alike / rounds).toBeLessThan(CHECKS['specimens-equal'].rate ?? 0)
  })
})

describe('readingsOfControl(lot, sets)', () => {
  const control = ['118.2 kN', '120.4 kN', '119.0 kN']

  it('asks about readings that are those of the control, in whatever order', () => {
    const own = ['120.4 kN', '119.0 kN', '118.2 kN']
    expect(readingsOfControl('vale/1', [set(own, control)]).findings.map(({ reason }) => reason)).toEqual([
      { code: 'readings-of-control', params: expect.objectContaining({ control: 'K1', specimens: 3 }) },
    ])
  })
  it('asks nothing where one differs, or where the control was read otherwise', () => {
    const near = ['118.2 kN', '120.4 kN', '119.1 kN']
    expect(readingsOfControl('vale/1', [set(near, control)])).toMatchObject({ looked: 1, findings: [] })
    expect(readingsOfControl('vale/1', [set(control, control.slice(1))])).toMatchObject({ looked: 0 })
    expect(readingsOfControl('vale/1', [set(control)])).toMatchObject({ looked: 0, findings: [] })
  })
})
