import { describe, expect, it } from 'vitest'
import { type HistoryPoint, lotHistoryModel } from '../../src/charts/lot-history.ts'

const valid = (value: number): HistoryPoint => ({ value, status: 'valid' })
const size = { width: 300, height: 96 }

describe('lotHistoryModel', () => {
  it('breaks the line at a point that is not valid and draws that point in its own shape', () => {
    const model = lotHistoryModel({
      points: [valid(80), valid(82), { value: 120, status: 'not-valid' }, valid(81), valid(79)],
      limits: [75],
      ...size,
    })
    expect(model?.line.match(/M/g)).toHaveLength(2)
    expect(model?.dots.match(/M/g)).toHaveLength(4)
    expect(model?.marks.map((mark) => mark.shape)).toEqual(['not-valid'])
  })
  it('marks an awaited lot without a value at the foot', () => {
    const model = lotHistoryModel({
      points: [valid(80), valid(82), { value: null, status: 'pending' }],
      limits: [75],
      ...size,
    })
    expect(model?.last).toMatchObject({ shape: 'pending', y: 87 })
    expect(model?.marks).toEqual([model?.last])
  })
  it('keeps every point and limit inside the drawing', () => {
    const model = lotHistoryModel({ points: [valid(80), valid(1500), valid(95)], limits: [250], ...size })
    for (const y of [...(model?.dots.matchAll(/M[\d.]+,([\d.]+)h0/g) ?? [])]
      .map(([, y]) => Number(y))
      .concat(model?.limits ?? [])) {
      expect(y).toBeGreaterThan(0)
      expect(y).toBeLessThan(96)
    }
    expect(model?.dots.match(/M/g)).toHaveLength(3)
  })
  it('draws a single lot in the middle, without a line', () => {
    const model = lotHistoryModel({ points: [valid(80)], limits: [], ...size })
    expect(model?.line).toBe('')
    expect(model?.dots).toBe('M162,48h0')
    expect(model?.last).toEqual({ x: 162, y: 48, shape: 'valid' })
  })
  it('gives nothing where no lot has a value', () => {
    expect(lotHistoryModel({ points: [], limits: [75], ...size })).toBeNull()
    expect(
      lotHistoryModel({ points: [{ value: null, status: 'pending' }], limits: [75], ...size }),
    ).toBeNull()
  })
})
