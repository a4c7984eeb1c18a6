import { describe, expect, it } from 'vitest'
import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { type Quantity, readQuantity } from '../../../src/core/measure/units.ts'
import type { ControlMortar, TestMortar } from '../../../src/core/mortar/mortar.ts'
import { controlOf, hasStatedControl } from '../../../src/core/mortar/stated-control.ts'

const mpa = (text: string) => readQuantity(text, 'stress') as Quantity
const reading = { age: readAge('7 d'), tested: readMoment('2026-01-12'), mean: mpa('24.0 MPa') }
const test: TestMortar = {
  sample: 'C',
  condition: 'cool',
  laboratory: 'quay',
  cast: readMoment('2026-01-05'),
  strength: [{ ...reading, control: mpa('32.0 MPa') }, { age: readAge('28 d') }],
}
const K1: ControlMortar = { condition: 'cool', laboratory: 'quay', cast: readMoment('2026-01-04') }

describe('controlOf', () => {
  it('gives the batch that is named, and none for one that is not on record', () => {
    const named = { ...test, strength: [reading], control: 'K1' }
    expect(controlOf(named, { controls: new Map([['K1', K1]]) })).toBe(K1)
    expect(controlOf(named, { controls: new Map() })).toBeUndefined()
    expect(hasStatedControl(named)).toBe(false)
  })
  it('makes one of the strengths stated, at their ages, as if cast and tested with the mortar', () => {
    expect(hasStatedControl(test)).toBe(true)
    expect(controlOf(test, { controls: new Map() })).toEqual({
      condition: 'cool',
      laboratory: 'quay',
      cast: test.cast,
      strength: [{ age: reading.age, tested: reading.tested, mean: mpa('32.0 MPa') }],
    })
  })
  it('gives none where nothing is named or stated', () => {
    expect(controlOf({ ...test, strength: [reading] }, { controls: new Map() })).toBeUndefined()
  })
})
