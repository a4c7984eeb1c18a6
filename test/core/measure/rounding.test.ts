import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { decimalsOfStep, roundToStep, stepOfDecimals } from '../../../src/core/measure/rounding.ts'

describe('roundToStep', () => {
  it('roundToStep sends a tie to the even neighbour', () => {
    expect([0.5, 1.5, 2.5, 74.5, 75.5].map((value) => roundToStep(value, 1))).toEqual([0, 2, 2, 74, 76])
    expect([0.25, 0.35, 0.45].map((value) => roundToStep(value, 0.1))).toEqual([0.2, 0.4, 0.4])
  })

  it('roundToStep reads decimals as written, where binary arithmetic would lose the tie', () => {
    // In binary 2.675 and 2.665 lie off their ties: toFixed(2) gives 2.67 and 2.67.
    expect(roundToStep(2.675, 0.01)).toBe(2.68)
    expect(roundToStep(2.665, 0.01)).toBe(2.66)
    expect(roundToStep(1.005, 0.01)).toBe(1)
  })

  it('roundToStep takes the dust off a computed value before it looks for a tie', () => {
    expect(roundToStep(74.50000000000001, 1)).toBe(74)
    expect(roundToStep(74.49999999999999, 1)).toBe(74)
    expect(roundToStep(74.500000001, 1)).toBe(75)
  })

  it('roundToStep rounds to steps that are no power of ten', () => {
    expect(roundToStep(2.525, 0.05)).toBe(2.5)
    expect(roundToStep(2.575, 0.05)).toBe(2.6)
    expect(roundToStep(12.5, 5)).toBe(10)
    expect(roundToStep(17.5, 5)).toBe(20)
  })

  it('roundToStep mirrors negative values and never gives minus zero', () => {
    expect(roundToStep(-0.25, 0.1)).toBe(-0.2)
    expect(Object.is(roundToStep(-0.04, 0.1), 0)).toBe(true)
    expect(roundToStep(-2.5, 1)).toBe(-2)
  })

  it('roundToStep takes very small and very large values', () => {
    expect(roundToStep(1.25e-7, 1e-8)).toBe(1.2e-7)
    expect(roundToStep(123456789012, 1)).toBe(123456789012)
    expect(roundToStep(1e15, 10)).toBe(1e15)
  })

  it('roundToStep refuses a value that is not finite and a step that is not above zero', () => {
    expect(() => roundToStep(Number.NaN, 1)).toThrow('roundToStep needs a finite value, got NaN')
    expect(() => roundToStep(1, 0)).toThrow('roundToStep needs a step above zero, got 0')
  })

  it('roundToStep agrees with the formatter of the platform on every written decimal, mirrors, and leaves a rounded value alone', () => {
    const formatter = new Intl.NumberFormat('en-US', {
      maximumFractionDigits: 1,
      useGrouping: false,
      roundingMode: 'halfEven',
    } as Intl.NumberFormatOptions)
    const format = (text: string): number => Number((formatter.format as (value: string) => string)(text))
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 99_999_999 }),
        fc.integer({ min: 1, max: 4 }),
        (digits, decimals) => {
          const text = (digits / 10 ** decimals).toFixed(decimals)
          const rounded = roundToStep(Number(text), 0.1)
          expect(rounded).toBe(format(text))
          expect(roundToStep(rounded, 0.1)).toBe(rounded)
          expect(roundToStep(-Number(text), 0.1)).toBe(rounded === 0 ? 0 : -rounded)
        },
      ),
    )
  })
})

describe('stepOfDecimals and decimalsOfStep', () => {
  it('stepOfDecimals gives the step of a written number, decimalsOfStep its decimals', () => {
    expect([0, 1, 2].map(stepOfDecimals)).toEqual([1, 0.1, 0.01])
    expect([5, 1, 0.1, 0.05, 0.25, 1e-7].map(decimalsOfStep)).toEqual([0, 0, 1, 2, 2, 7])
  })
})

describe('the three-cube trap', () => {
  /** Loads of three cubes in tenths of a kN that add up to a total. */
  const loads = (total: number): number[] =>
    [Math.floor(total / 3) - 7, Math.floor(total / 3) + 2, total - 2 * Math.floor(total / 3) + 5].map(
      (tenths) => tenths / 10,
    )
  const meanMPa = (loadsKN: readonly number[]): number =>
    loadsKN.reduce((sum, loadKN) => sum + (loadKN * 1000) / 2500, 0) / loadsKN.length
  // 149 to 200 is 74.5 % exactly, so every one of these 405 sets of cubes has the same true index.
  const indices = Array.from(
    { length: 405 },
    (_, place) => (100 * meanMPa(loads(149 * (place + 10)))) / meanMPa(loads(200 * (place + 10))),
  )

  it('some sets come out above 74.5 % in binary arithmetic, which would round up to 75 and meet a limit of 75 %', () => {
    expect(indices).toContain(74.50000000000001)
    expect(indices.filter((index) => 74.5 < index).length).toBeGreaterThan(0)
  })

  it('roundToStep gives 74 for every one of them', () => {
    expect(new Set(indices.map((index) => roundToStep(index, 1)))).toEqual(new Set([74]))
  })
})
