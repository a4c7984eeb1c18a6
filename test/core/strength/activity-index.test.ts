import { describe, expect, it } from 'vitest'
import { activityIndex } from '../../../src/core/strength/activity-index.ts'

describe('activityIndex', () => {
  it('is 100 A/B: 30 MPa over 40 MPa is 75 %, and inverts with the mortars', () => {
    expect(activityIndex(30, 40)).toBe(75)
    expect(activityIndex(40, 32)).toBe(125)
  })
})
