import { describe, expect, it } from 'vitest'
import { area } from '../../../src/core/studies/screening/separation.ts'
import { onlyCase } from '../values.ts'

// Turck and others 2010, S100β in 113 patients, as R's pROC 1.18.0 reads it.
const { inputs, expected, tolerance } = onlyCase('screening-roc')
const placed = (values: unknown) =>
  (values as number[]).map((value, place) => ({ material: String(place), value, above: false }))

describe('R package pROC, aSAH', () => {
  it('area is the printed one, ties as halves', () => {
    const found = area(placed(inputs['negative']), placed(inputs['positive']))
    expect(Math.abs(found - (expected['auc'] as number))).toBeLessThanOrEqual(tolerance['auc_abs'] ?? 0)
    expect(found.toFixed(3)).toBe((expected['published_auc_3dp'] as number).toFixed(3))
    expect(found * 41 * 72).toBeCloseTo(expected['mann_whitney_U'] as number, 6)
  })
})
