import { describe, expect, it } from 'vitest'
import { isOfStandard } from '../../../src/core/measure/designation.ts'

describe('isOfStandard', () => {
  it.each([
    ['ASTM C311-22', 'ASTM C311'],
    ['ASTM C311/C311M-22', 'ASTM C311'],
    ['astm c 311', 'ASTM C311'],
    ['ASTM C311-22', 'C311'],
    ['EN 196-1:2016', 'EN 196-1'],
    ['EN 196-1:2016', 'EN 196'],
    ['ASTM C311-22', 'ASTM C311-22'],
  ])('takes %s as of %s', (method, standard) => {
    expect(isOfStandard(method, standard)).toBe(true)
  })
  it.each([
    ['ASTM C3110', 'ASTM C311'],
    ['ASTM C311M', 'ASTM C311'],
    ['EN 196-10', 'EN 196-1'],
    ['ASTM C311-18', 'ASTM C311-22'],
    ['ASTM C430', 'ASTM C311'],
    ['ASTM', 'C311'],
    ['ASTM C311', '  '],
  ])('does not take %s as of %s', (method, standard) => {
    expect(isOfStandard(method, standard)).toBe(false)
  })
})
