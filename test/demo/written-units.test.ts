import { describe, expect, it } from 'vitest'
import { flowMapping } from '../../src/demo/flow-mapping.ts'
import { load, mass, temperature } from '../../src/demo/written-units.ts'

describe('mass', () => {
  it('is written in the unit of the source, as a multiple of its step there', () => {
    expect(mass(1630, 'SI', { decimals: 0, step: 50 })).toBe('1650 t')
    // 907.18474 t are 1000 short tons.
    expect(mass(907.18474, 'US', { decimals: 1, step: 0 })).toBe('1000.0 short ton')
  })
})

describe('load', () => {
  it('is written to 0.1 kN or to 10 lbf', () => {
    expect(load(78.44, 'SI')).toBe('78.4 kN')
    // 1 lbf is 4.448 N: 78.44 kN are 17 634 lbf.
    expect(load(78.44, 'US')).toBe('17630 lbf')
  })
})

describe('temperature', () => {
  it('is written in either scale', () => {
    expect([temperature(23, 'SI'), temperature(23, 'US')]).toEqual(['23.0 degC', '73.4 degF'])
  })
})

describe('flowMapping', () => {
  it('writes members in their order and leaves out what is undefined', () => {
    expect(flowMapping({ b: 1, a: 'x', c: undefined })).toBe('{ b: 1, a: x }')
  })
})
