import { describe, expect, it } from 'vitest'
import { waterRequirement } from '../../../src/core/mortar/water-requirement.ts'

describe('waterRequirement', () => {
  it('is the test mortar’s water in per cent of the control’s: 100 × 230/250 is 92', () => {
    expect(waterRequirement(230, 250)).toBe(92)
    expect(waterRequirement(250, 250)).toBe(100)
  })
})
