import { describe, expect, it } from 'vitest'
import { readAge } from '../../../src/core/measure/age.ts'
import { batchIndices } from '../../../src/core/studies/batch-indices.ts'
import type { StudyReading } from '../../../src/core/studies/study-reading.ts'

/** "A1/2 42": material, batch, value; a plus for a reading above its ceiling. */
function readings(measure: StudyReading['measure'], ...texts: readonly string[]): StudyReading[] {
  return texts.map((text) => {
    const [, material = '', batch = '', value = '', plus] = /^(\w+)\/(\w+) ([\d.]+)(\+?)$/.exec(text) ?? []
    return {
      ...{ material, batch, measure, value: Number(value), above: plus === '+' },
      ...{ condition: 'R30', laboratory: '1', age: readAge('28 d') },
    }
  })
}

const figures = ({ indices }: ReturnType<typeof batchIndices>) =>
  indices.map(({ material, batch, value, above }) => `${material}/${batch} ${above ? '> ' : ''}${value}`)
const why = ({ unmade }: ReturnType<typeof batchIndices>) =>
  unmade.map((one) => `${one.test.material}/${one.test.batch} ${one.why}`)

describe('batchIndices', () => {
  // 45/50 = 90 % and 33/40 = 82.5 %, each by its own control.
  it('compares a test batch with the control batch of its code', () => {
    const found = batchIndices(readings('strength', 'control/1 50', 'control/2 40', 'A1/1 45', 'A1/2 33'))
    expect(figures(found)).toEqual(['A1/1 90', 'A1/2 82.5'])
    expect(found.indices.map(({ sharesControl }) => sharesControl)).toEqual([false, false])
    expect(found.controls.map(({ value }) => value)).toEqual([50, 40])
  })
  // Means of specimens first: (44 + 46)/2 over (48 + 52)/2.
  it('takes the means of the specimens before it divides', () => {
    const found = batchIndices(readings('strength', 'control/1 48', 'control/1 52', 'A1/1 44', 'A1/1 46'))
    expect(figures(found)).toEqual(['A1/1 90'])
    expect(found.indices[0]).toMatchObject({ test: { n: 2, value: 45 }, control: { n: 2, value: 50 } })
  })
  it('falls back on the only control batch, and says that two batches share it', () => {
    const found = batchIndices(readings('strength', 'control/9 50', 'A1/1 45', 'A1/2 40', 'Q1/1 35'))
    expect(figures(found)).toEqual(['A1/1 90', 'A1/2 80', 'Q1/1 70'])
    expect(found.indices.map(({ sharesControl }) => sharesControl)).toEqual([true, true, false])
  })
  it('makes no index without a control, or with several of other codes', () => {
    expect(why(batchIndices(readings('strength', 'A1/1 45')))).toEqual(['A1/1 no-control'])
    expect(why(batchIndices(readings('strength', 'control/1 50', 'control/2 50', 'A1/3 45')))).toEqual([
      'A1/3 several-controls',
    ])
  })
  it('takes no control of another condition, laboratory or age', () => {
    const [control, test] = readings('strength', 'control/1 50', 'A1/1 45') as [StudyReading, StudyReading]
    for (const other of [{ condition: 'R50' }, { laboratory: '2' }, { age: readAge('7 d') }])
      expect(why(batchIndices([{ ...control, ...other }, test]))).toEqual(['A1/1 no-control'])
    // 672 h and 28 d are one age.
    expect(figures(batchIndices([{ ...control, age: readAge('672 h') }, test]))).toEqual(['A1/1 90'])
  })
  it('makes no index over a control above the ceiling', () => {
    expect(why(batchIndices(readings('resistivity', 'control/1 900+', 'A1/1 900+')))).toEqual([
      'A1/1 control-above-ceiling',
    ])
  })
  // (800 + 900)/2 = 850 over 100.
  it('lies above the mean with the ceiling in its place where a specimen reads above it', () => {
    expect(figures(batchIndices(readings('resistivity', 'control/1 100', 'A1/1 800', 'A1/1 900+')))).toEqual([
      'A1/1 > 850',
    ])
  })
  // 125 kN on 50 mm × 50 mm are 50 MPa; (812 − 12) Ω × 0.05 m are 40 Ω m.
  it('computes with the shape of the specimens and the contact of their ends', () => {
    const shape = { cubeMm: 50, endContactOhm: 12 }
    const strength = batchIndices(readings('load', 'control/1 125', 'A1/1 112.5'), shape)
    expect(strength.controls[0]?.value).toBeCloseTo(50, 12)
    expect(strength.indices[0]?.value).toBeCloseTo(90, 12)
    const resistivity = batchIndices(readings('resistance', 'control/1 812', 'A1/1 1612'), shape)
    expect(resistivity.controls[0]?.value).toBeCloseTo(40, 12)
    expect(resistivity.indices[0]?.value).toBeCloseTo(200, 12)
  })
  it('makes no index where the ends resist as much as was read', () => {
    const shape = { cubeMm: 50, endContactOhm: 12 }
    expect(why(batchIndices(readings('resistance', 'control/1 812', 'A1/1 12'), shape))).toEqual([
      'A1/1 nothing-left',
    ])
    expect(why(batchIndices(readings('resistance', 'control/1 5', 'A1/1 812'), shape))).toEqual([
      'A1/1 nothing-left',
    ])
  })
  it('takes an index that a laboratory reports finished as it is', () => {
    const found = batchIndices(readings('strength-activity-index', 'A1/1 91.5', 'A1/2 93'))
    expect(figures(found)).toEqual(['A1/1 91.5', 'A1/2 93'])
    expect(found.indices[0]).toMatchObject({ test: null, control: null, sharesControl: false })
  })
  it('keeps the routes apart, and has nothing to say of no readings', () => {
    const both = [...readings('strength', 'control/1 50'), ...readings('resistivity', 'A1/1 80')]
    expect(why(batchIndices(both))).toEqual(['A1/1 no-control'])
    expect(batchIndices([])).toEqual({ indices: [], unmade: [], controls: [] })
  })
  it('refuses a load without a shape, which the reader has refused before', () => {
    expect(() => batchIndices(readings('load', 'A1/1 45'))).toThrow(RangeError)
  })
})
