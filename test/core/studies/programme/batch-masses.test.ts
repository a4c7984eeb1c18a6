import { describe, expect, it } from 'vitest'
import { batchMasses } from '../../../../src/core/studies/programme/batch-masses.ts'
import { plannedCondition } from './tiny-programme.ts'

describe('batchMasses', () => {
  it('replaces by mass: 30 % of 500 g, with water of 0.485', () => {
    // 500 × 0.3 = 150; 500 − 150 = 350; 500 × 0.485 = 242.5.
    const condition = plannedCondition('R30')
    expect(batchMasses('Q', condition)).toEqual({ cement: 350, material: 150, water: 242.5, sand: 1375 })
    expect(batchMasses('control', condition)).toEqual({ cement: 500, material: 0, water: 242.5, sand: 1375 })
  })
  it('leaves the water of a test batch open at constant flow, and takes that of the control as it is fixed', () => {
    // C311: 500 g of cement, 242 g of water; the test mortar takes what its flow asks for.
    const condition = plannedCondition('flow', {
      ...{ flow: 'constant-flow', replacementPercent: 20, waterRatio: null, controlWaterG: 242 },
    })
    expect(batchMasses('Q', condition)).toEqual({ cement: 400, material: 100, water: null, sand: 1375 })
    expect(batchMasses('control', condition).water).toBe(242)
  })
  it('says nothing of what the condition does not state', () => {
    const open = plannedCondition('x', { replacementPercent: null, waterRatio: null })
    expect(batchMasses('Q', open)).toEqual({ cement: null, material: null, water: null, sand: 1375 })
    expect(batchMasses('control', open).cement).toBe(500)
    const none = plannedCondition('x', { cementitiousG: null, sandG: null })
    expect(batchMasses('control', none)).toEqual({ cement: null, material: null, water: null, sand: null })
  })
})
