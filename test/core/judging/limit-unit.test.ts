import { describe, expect, it } from 'vitest'
import {
  inUnitOf,
  isWrittenAsStored,
  limitNumber,
  storedDecimals,
  storedFrom,
  storedUnitOf,
} from '../../../src/core/judging/limit-unit.ts'
import { isFault, type QuantityKind, readQuantity } from '../../../src/core/measure/units.ts'

function limit(text: string, kind: QuantityKind) {
  const read = readQuantity(text, kind)
  if (isFault(read)) throw new Error(`${text}: ${read.fault}`)
  return read
}
const density = limit('2400 kg/m3', 'density')

describe('the unit that a limit is written in', () => {
  it('limitNumber is the number as written, whatever unit it is stored in', () => {
    expect([limitNumber(density), density.value]).toEqual([2400, 2.4])
  })

  it('inUnitOf and storedFrom are each other’s way back', () => {
    expect([inUnitOf(density, 2.45), storedFrom(density, 2450)]).toEqual([2450, 2.45])
    const own = limit('2.4 g/cm3', 'density')
    expect([inUnitOf(own, 2.45), storedFrom(own, 2.45)]).toEqual([2.45, 2.45])
  })

  it('inUnitOf and storedFrom count a temperature from the zero of its scale', () => {
    // 77 °F is 25 °C, and 32 °F is 0 °C.
    const warm = limit('77 degF', 'temperature')
    expect([inUnitOf(warm, 25), storedFrom(warm, 77)]).toEqual([
      expect.closeTo(77, 10),
      expect.closeTo(25, 10),
    ])
    expect(storedFrom(warm, 32)).toBeCloseTo(0, 10)
  })

  it('storedDecimals shows a step of the written unit in the stored one', () => {
    expect([storedDecimals(density, 0), storedDecimals(limit('2.40 g/cm3', 'density'), 2)]).toEqual([3, 2])
  })

  it('isWrittenAsStored tells a unit of the stored one’s size from any other', () => {
    const units = [
      limit('5 %', 'fraction'),
      limit('5 g/100 g', 'fraction'),
      limit('5 mg/kg', 'fraction'),
      limit('73 degF', 'temperature'),
      limit('23 degC', 'temperature'),
    ]
    expect(units.map(isWrittenAsStored)).toEqual([true, true, false, false, true])
  })

  it('storedUnitOf is the unit that the numbers are kept in', () => {
    expect(storedUnitOf({ quantities: [density] })).toBe('g/cm3')
  })

  it('inUnitOf refuses a unit that its kind does not have', () => {
    expect(() => inUnitOf({ ...density, unit: 'lb' }, 2.4)).toThrow(
      new RangeError('writtenUnit needs a unit of density, got "lb"'),
    )
  })
})
