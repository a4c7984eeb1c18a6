import { describe, expect, it } from 'vitest'
import { roundToStep } from '../../../src/core/measure/rounding.ts'
import { fixedDigits } from '../../../src/words/numbers.ts'
import { publishedCases } from '../values.ts'

const cases = publishedCases('rounding-e29').map(({ title, source, inputs, expected }) => ({
  title,
  source,
  step: inputs['step'] as number,
  values: inputs['values'] as number[],
  rounded: expected['rounded'] as number[],
}))
/** Steps of a power of ten alone are those of printed decimals. */
const printed = cases.filter(({ step }) => Number.isInteger(Math.log10(step)))

// Examples that road authorities print for the rounding method of ASTM E29: an exact half goes to the even digit.
describe('roundToStep', () => {
  it.each(cases)('$title, $source: gives every number as printed', ({ step, values, rounded }) => {
    expect(values.map((value) => roundToStep(value, step))).toEqual(rounded)
  })
})

// What is printed follows the same examples as what is judged, so that no value reads otherwise than it was judged.
describe('fixedDigits', () => {
  it.each(printed)('$title, $source: prints every number so', ({ step, values, rounded }) => {
    const decimals = -Math.log10(step)
    expect(values.map((value) => Number(fixedDigits(value, decimals)))).toEqual(rounded)
  })
  it('is held to most of the examples', () => {
    expect(printed.length).toBeGreaterThan(cases.length / 2)
  })
})
