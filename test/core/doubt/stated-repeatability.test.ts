import { readAge } from '../../../src/core/measure/age.ts'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import { type StatedRepeatability, statedUncertainty } from '../../../src/core/doubt/stated-repeatability.ts'
import type { PropertyKey } from '../../../src/core/measure/properties.ts'
import { isFault, readQuantity } from '../../../src/core/measure/units.ts'
import { index, result } from '../judging/fixture.ts'

describe('statedUncertainty', () => {
  const entry: StatedRepeatability = {
    property: 'strength-activity-index',
    condition: 'c311',
    age: readAge('28 d'),
    'standard-deviation': '1.9 percentage points',
    from: readMoment('2026-01-01'),
    to: readMoment('2026-06-30'),
    basis: '24 batches',
  }
  const own = index('28 d', 80)
  const cv = (text: string) => {
    const read = readQuantity(text, 'fraction')
    if (isFault(read)) throw new Error(text)
    return {
      property: 'compressive-strength',
      'coefficient-of-variation': read,
      from: readMoment('2026-01-01'),
      basis: '12 batches',
    } satisfies StatedRepeatability
  }

  it('statedUncertainty gives the standard deviation with its degrees of freedom and basis', () => {
    expect(statedUncertainty([entry], own)).toEqual({
      u: 1.9,
      basis: { code: 'stated', params: { basis: '24 batches' } },
    })
    expect(statedUncertainty([{ ...entry, 'degrees-of-freedom': 23 }], own)).toEqual({
      u: 1.9,
      df: 23,
      basis: { code: 'stated', params: { basis: '24 batches' } },
    })
  })

  it.each([
    ['another property', { property: 'resistivity-index' }],
    ['another condition', { condition: 'modified-50c' }],
    ['another age', { age: readAge('7 d') }],
    ['a later time', { from: readMoment('2026-03-11') }],
    ['an earlier time', { to: readMoment('2026-03-09') }],
  ])('statedUncertainty finds nothing in an entry of %s', (_, other) => {
    expect(statedUncertainty([{ ...entry, ...other }], own)).toBeUndefined()
    expect(
      statedUncertainty(
        [
          { ...entry, ...other },
          { ...entry, 'standard-deviation': '2.5 percentage points' },
        ],
        own,
      )?.u,
    ).toBe(2.5)
  })

  it('statedUncertainty takes the first and the last day in, and the day of a test with a clock', () => {
    expect(
      [{ from: readMoment('2026-03-10') }, { to: readMoment('2026-03-10') }].map(
        (other) =>
          statedUncertainty([{ ...entry, ...other }], { ...own, tested: readMoment('2026-03-10T15:30') })?.u,
      ),
    ).toEqual([1.9, 1.9])
  })

  it('statedUncertainty of an entry without condition or age holds for all of them', () => {
    const { condition: _condition, age: _age, ...general } = entry
    expect(
      [index('7 d', 80), index('28 d', 80, { condition: 'modified-50c' })].map(
        (made) => statedUncertainty([general], made)?.u,
      ),
    ).toEqual([1.9, 1.9])
  })

  it('statedUncertainty takes the most particular of several entries, wherever it stands', () => {
    const { condition: _condition, age: _age, ...bare } = entry
    const at = (points: number, more: Partial<StatedRepeatability> = {}) => ({
      ...bare,
      ...more,
      'standard-deviation': `${points} percentage points`,
    })
    const [condition, age] = ['c311', readAge('28 d')]
    const u = (...entries: StatedRepeatability[]) =>
      [entries, entries.toReversed()].map((list) => statedUncertainty(list, own)?.u)
    expect(u(at(3), at(2, { condition }))).toEqual([2, 2])
    expect(u(at(3), at(2, { age }))).toEqual([2, 2])
    expect(u(at(3, { condition }), at(2, { condition, age }))).toEqual([2, 2])
    expect(u(at(3, { age }), at(2, { condition, age }))).toEqual([2, 2])
  })

  it('statedUncertainty finds nothing in an entry that states no scatter, or none that can be read', () => {
    const { 'standard-deviation': _, ...bare } = entry
    expect([
      statedUncertainty([bare], own),
      statedUncertainty([{ ...entry, 'standard-deviation': '1.9 MPa' }], own),
    ]).toEqual([undefined, undefined])
  })

  it('statedUncertainty takes a coefficient of variation of the result’s own value', () => {
    expect(statedUncertainty([cv('3.6 %')], result('compressive-strength', 25))?.u).toBeCloseTo(0.9, 12)
    expect(
      statedUncertainty(
        [{ ...cv('10 %'), property: 'autoclave-expansion' }],
        result('autoclave-expansion', -0.05),
      )?.u,
    ).toBeCloseTo(0.005, 12)
  })

  it('statedUncertainty reads a standard deviation in the property’s own unit, and of an index in points alone', () => {
    const scatter = (property: PropertyKey, text: string, value: number) =>
      statedUncertainty(
        [{ property, 'standard-deviation': text, from: readMoment('2026-01-01'), basis: 'b' }],
        result(property, value),
      )?.u
    expect([
      scatter('density', '20 kg/m3', 2.4),
      scatter('loss-on-ignition', '0.12 %', 3),
      scatter('loss-on-ignition', '0.12 percentage points', 3),
    ]).toEqual([0.02, 0.12, 0.12])
    expect(scatter('strength-activity-index', '1.9 %', 80)).toBeUndefined()
  })
})
