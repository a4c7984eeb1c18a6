import { readMoment } from '../../../src/core/measure/moment.ts'
import { describe, expect, it } from 'vitest'
import { trendChartView } from '../../../src/edition/views/trend-chart.ts'

const input = {
  title: 'Density, 28 d',
  unit: 'g/cm3',
  of: 'lot',
  decimals: 2,
  limits: [],
  events: [],
  points: [
    { lot: 'ash/1', at: readMoment('2026-03-05'), value: 2.416, status: 'valid' as const },
    {
      lot: 'ash/2',
      at: readMoment('2026-03-06'),
      value: 9.9,
      status: 'not-valid' as const,
      note: 'range 12 %',
    },
    { lot: 'ash/3', at: readMoment('2026-03-07'), value: 2.381, status: 'valid' as const },
    {
      lot: 'ash/4',
      at: readMoment('2026-03-08'),
      value: null,
      status: 'pending' as const,
      note: 'due 20\u00a0April 2026',
    },
  ],
}

describe('trendChartView', () => {
  it('describes valid results alone, and the last of them', () => {
    const { description, legend } = trendChartView(input)
    expect(description).toBe('2 valid results from 2.38 to 2.42 g/cm³, the last 2.38. ')
    expect(legend.states.map(({ words }) => words)).toEqual([
      'not valid, left out of the line and the mean',
      'outstanding',
    ])
  })

  it('reads out each point with its state and note', () => {
    expect(trendChartView(input).readings.slice(1)).toEqual([
      'ash/2, 6\u00a0Mar\u00a02026: 9.90 g/cm³, not valid, range 12 %',
      'ash/3, 7\u00a0Mar\u00a02026: 2.38 g/cm³',
      'ash/4, 8\u00a0Mar\u00a02026: no result, outstanding, due 20\u00a0April 2026',
    ])
  })

  it('lists the newest hundred points, newest first', () => {
    const many = Array.from({ length: 101 }, (_, index) => ({
      lot: `ash/${index}`,
      at: readMoment('2026-03-05'),
      value: 2,
      status: 'valid' as const,
    }))
    const { rows, summary } = trendChartView({ ...input, points: many }).table
    expect([rows.length, rows[0]?.id, rows.at(-1)?.id]).toEqual([100, 'ash/100', 'ash/1'])
    expect(summary).toBe('Table of the newest 100 of 101 results')
    expect(trendChartView(input).table.rows[0]).toEqual({
      id: 'ash/4',
      date: '8\u00a0Mar\u00a02026',
      value: '',
      state: 'outstanding',
      remark: 'due 20\u00a0April 2026',
    })
  })

  it('names the sets of each limit, and says "limit" where a line has none', () => {
    const limit = { value: 2, label: 'at least 2.00 g/cm³' }
    expect(trendChartView({ ...input, limits: [limit] }).legend.limits).toBe('limit')
    expect(trendChartView({ ...input, limits: [{ ...limit, sets: ['A', 'B'] }] }).legend.limits).toBe(
      'at least 2.00 g/cm³: A; B',
    )
  })

  it('says so where no result is valid yet', () => {
    expect(trendChartView({ ...input, points: input.points.slice(3) }).description).toBe(
      'No valid result yet.',
    )
  })
})
