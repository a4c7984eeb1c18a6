import { describe, expect, it } from 'vitest'
import { resistivityIndex } from '../../../src/core/resistivity/resistivity-index.ts'

describe('resistivityIndex', () => {
  it('is 100 A/B: 175 Ω·m over 35 Ω·m is 500 %', () => {
    expect(resistivityIndex(175, 35)).toBe(500)
    expect(resistivityIndex(21, 84)).toBe(25)
  })
})
