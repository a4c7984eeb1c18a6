import { describe, expect, it } from 'vitest'
import { commaReadings } from '../../../src/core/measure/comma-numbers.ts'

describe('commaReadings', () => {
  it.each([
    ['17,500', ['17500', '17.500']],
    ['3,020', ['3020', '3.020']],
    ['-1,450', ['-1450', '-1.450']],
    ['1.234,5', ['1234.5', '1.2345']],
    ['1.234.567,5', ['1234567.5']],
    ['1450,5', ['1450.5']],
    ['24,8', ['24.8']],
    ['0,485', ['0.485']],
    ['1,234,567', ['1234567']],
    ['1,234.5', ['1234.5']],
    ['1,23,4', ['1234']],
  ])('gives %s as %j', (text, readings) => {
    expect(commaReadings(text)).toEqual(readings)
  })
})
