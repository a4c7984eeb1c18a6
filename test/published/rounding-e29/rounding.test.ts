import { describe, expect, it } from 'vitest'
import { roundToStep } from '../../../src/core/measure/rounding.ts'
import { publishedCases } from '../values.ts'

// Examples that road authorities print for the rounding method of ASTM E29: an exact half goes to the even digit.
describe('roundToStep', () => {
  it.each(publishedCases('rounding-e29'))('$title, $source: gives every number as printed', (published) => {
    const step = published.inputs['step'] as number
    const rounded = (published.inputs['values'] as number[]).map((value) => roundToStep(value, step))
    expect(rounded).toEqual(published.expected['rounded'])
  })
})
