import { describe, expect, it } from 'vitest'
import { type HistoryPoint, lotHistoryModel } from '../../src/charts/lot-history.ts'

const valid = (value: number): HistoryPoint => ({ value, status: 'valid' })
const size = { width: 300, height: 96 }

describe('lotHistoryModel', () => {
  it('breaks the line at a point that is not valid and draws that point in its own shape', () => {
    const model = lotHistoryModel({ points: [valid(80), valid(82), { value: 120, status: 'not-valid' }, valid(81), valid(79)], limits: [75], ...size })
    expect(model?.paths).toHaveLength(2)
    expect(model?.marks.map((mark) => mark.shape)).toEqual(['valid', 'valid', 'not-valid', 'valid', 'valid'])
  })
  it('marks an awaited lot without a value at the foot', () => {
    const model = lotHistoryModel({ points: [valid(80), valid(82), { value: null, status: 'pending' }], limits: [75], ...size })
    expect(model?.marks.at(-1)).toMatchObject({ shape: 'pending', last: true, y: 87 })
  })
  it('keeps every point and limit inside the drawing', () => {
    const model = lotHistoryModel({ points: [valid(80), valid(1500), valid(95)], limits: [250], ...size })
    for (const y of [...(model?.marks.map((mark) => mark.y) ?? []), ...(model?.limits ?? [])]) {
      expect(y).toBeGreaterThan(0)
      expect(y).toBeLessThan(96)
    }
    expect(model?.marks).toHaveLength(3)
  })
  it('draws a single lot in the middle, without a line', () => {
    const model = lotHistoryModel({ points: [valid(80)], limits: [], ...size })
    expect(model?.paths).toEqual([])
    expect(model?.marks).toEqual([{ x: 162, y: 48, shape: 'valid', last: true }])
  })
  it('gives nothing where no lot has a value', () => {
    expect(lotHistoryModel({ points: [], limits: [75], ...size })).toBeNull()
    expect(lotHistoryModel({ points: [{ value: null, status: 'pending' }], limits: [75], ...size })).toBeNull()
  })
})
