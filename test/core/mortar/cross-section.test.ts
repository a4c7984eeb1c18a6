import { describe, expect, it } from 'vitest'
import { crossSectionMm2, electrodeDistanceMm } from '../../../src/core/mortar/cross-section.ts'
import { q } from '../readings/fixture.ts'

const mm = (value: number) => q(`${value} mm`, 'length')

describe('crossSectionMm2', () => {
  it('comes from the measured sizes alone where no shape is given', () => {
    expect(crossSectionMm2(undefined, { side: mm(50), 'other-side': mm(52) })).toBe(2600)
    expect(crossSectionMm2(undefined, { diameter: mm(100) })).toBeCloseTo(7853.981634, 6)
  })
  it('is the square of a side that is measured or nominal, the measured one first', () => {
    expect(crossSectionMm2({ shape: 'cube', side: mm(50) })).toBe(2500)
    expect(crossSectionMm2({ shape: 'cube', side: mm(50) }, { side: mm(51) })).toBe(2601)
    expect(crossSectionMm2({ shape: 'half-prism', side: mm(40) }, { 'other-side': mm(41) })).toBe(1640)
  })
  it('is the circle of a cylinder, whose measured diameter goes before the nominal one', () => {
    // π/4 × 50² and π/4 × 52².
    expect(crossSectionMm2({ shape: 'cylinder', diameter: mm(50) })).toBeCloseTo(1963.495408, 6)
    expect(crossSectionMm2({ shape: 'cylinder', diameter: mm(50) }, { diameter: mm(52) })).toBeCloseTo(
      2123.716634,
      6,
    )
  })
  it('takes a stated area before every size', () => {
    expect(crossSectionMm2({ shape: 'cube', side: mm(50) }, { area: q('26 cm2', 'area'), side: mm(9) })).toBe(
      2600,
    )
  })
  it('is not known without a size of that shape: a cylinder has no side, a cube no diameter', () => {
    expect(crossSectionMm2(undefined)).toBeNull()
    expect(crossSectionMm2({ shape: 'cube' })).toBeNull()
    expect(crossSectionMm2({ shape: 'cylinder', side: mm(50) }, { side: mm(50) })).toBeNull()
    expect(crossSectionMm2({ shape: 'cube' }, { diameter: mm(50) })).toBeNull()
    expect(crossSectionMm2({ shape: 'cube' }, { 'other-side': mm(50) })).toBeNull()
  })
})

describe('electrodeDistanceMm', () => {
  it('is the length, measured before nominal', () => {
    expect(electrodeDistanceMm(undefined, { length: mm(75) })).toBe(75)
    expect(electrodeDistanceMm({ shape: 'prism', length: mm(160) })).toBe(160)
    expect(electrodeDistanceMm({ shape: 'prism', length: mm(160) }, { length: mm(158) })).toBe(158)
  })
  it('is the edge of a cube that has no length, measured before nominal', () => {
    expect(electrodeDistanceMm({ shape: 'cube', side: mm(50) })).toBe(50)
    expect(electrodeDistanceMm({ shape: 'cube', side: mm(50) }, { side: mm(51) })).toBe(51)
    expect(electrodeDistanceMm({ shape: 'cube', side: mm(50) }, { length: mm(49) })).toBe(49)
    expect(electrodeDistanceMm({ shape: 'cube' })).toBeNull()
  })
  it('is not the side of any other shape', () => {
    expect(electrodeDistanceMm(undefined, { side: mm(50) })).toBeNull()
    expect(electrodeDistanceMm({ shape: 'prism', side: mm(40) }, { side: mm(40) })).toBeNull()
    expect(electrodeDistanceMm({ shape: 'cylinder', diameter: mm(50) })).toBeNull()
  })
})
