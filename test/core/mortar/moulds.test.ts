import { describe, expect, it } from 'vitest'
import { assumedCube, withMould } from '../../../src/core/mortar/moulds.ts'
import { q, WARM } from '../readings/fixture.ts'

const side = q('2 in', 'length')

describe('withMould', () => {
  it('gives cubes of both tests the side of the mould, the same object each time', () => {
    const made = withMould(WARM, side)
    expect([made.strength?.specimen, made.resistivity?.specimen]).toEqual([
      { shape: 'cube', side, ofMould: true },
      { shape: 'cube', side, ofMould: true },
    ])
    expect(withMould(WARM, q('2 in', 'length'))).toBe(made)
    expect(withMould(WARM, q('50 mm', 'length'))).not.toBe(made)
  })
  it('changes nothing without a mould, and no specimen but a cube', () => {
    expect(withMould(WARM, undefined)).toBe(WARM)
    const prism = {
      ...WARM,
      strength: { specimen: { shape: 'half-prism' as const, side: q('40 mm', 'length') } },
    }
    expect(withMould(prism, side).strength).toEqual(prism.strength)
  })
})

describe('assumedCube', () => {
  const cube = { shape: 'cube' as const, side: q('50 mm', 'length') }
  it('is one of 2 in for pounds-force alone, where about as much is asked for', () => {
    expect(assumedCube({ unit: 'lbf' }, cube)?.side?.value).toBe(50.8)
    expect(assumedCube({ unit: 'kN' }, cube)).toBeUndefined()
    expect(assumedCube({ unit: 'lbf' }, { ...cube, side: q('70.7 mm', 'length') })).toBeUndefined()
    expect(assumedCube({ unit: 'lbf' }, { ...cube, ofMould: true })).toBeUndefined()
    expect(assumedCube({ unit: 'lbf' }, { shape: 'cube' })).toBeUndefined()
    expect(assumedCube({ unit: 'lbf' }, undefined)).toBeUndefined()
  })
})
