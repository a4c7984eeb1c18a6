import { describe, expect, it } from 'vitest'
import { historyCharts } from '../../../src/edition/views/history-charts.ts'
import { certificate, clause, verdict } from './certificate-fixture.ts'

type History = ReturnType<typeof certificate>['history'][number]

function history(values: readonly (number | null)[], more: Partial<History> = {}): History {
  return {
    property: 'strength-activity-index',
    condition: 'warm',
    age: '28 d',
    unit: '%',
    decimals: 1,
    points: values.map((value, place) => ({
      lot: `hill/H-${place}`,
      at: `2026-03-0${place + 1}`,
      value,
      status: value === null ? 'pending' : value < 60 ? 'not-valid' : 'valid',
    })),
    ...more,
  }
}

const limited = verdict([
  clause({
    property: 'strength-activity-index',
    condition: 'warm',
    age: '28 d',
    limit: { operator: 'at-least', values: [75], unit: '%', written: ['75 %'], layer: 'set' },
  }),
])

describe('historyCharts', () => {
  it('says in words what a chart shows, with the limits of any set once', () => {
    const document = certificate({ history: [history([83.26, 85])], verdicts: [limited, limited] })
    const [chart] = historyCharts(document)?.charts ?? []
    expect(chart?.label).toBe(
      'Strength activity index, modified (50 %, 50 °C), 28 d: 2 lots, the last one 85.0\u00a0%, limit 75\u00a0%',
    )
    expect(chart?.caption).toBe('Strength activity index, modified (50\u00a0%, 50\u00a0°C), 28\u00a0d')
    expect(chart?.model.limits).toHaveLength(1)
  })
  it('lists every lot, the newest first, with what is awaited or not valid', () => {
    const view = historyCharts(
      certificate({ history: [history([83.26, 41, null]), history([70, 71], { condition: 'plain' })] }),
    )
    expect(view?.lots).toEqual([
      { name: 'H-2', sampled: '3\u00a0Mar\u00a02026', cells: ['awaited', ''] },
      { name: 'H-1', sampled: '2\u00a0Mar\u00a02026', cells: ['41.0, not valid', '71.0'] },
      { name: 'H-0', sampled: '1\u00a0Mar\u00a02026', cells: ['83.3', '70.0'] },
    ])
    expect(view?.charts[0]?.label).toContain('3 lots, the last one awaited')
    expect(view?.asOf).toBe('8\u00a0Apr\u00a02026')
  })
  it('draws nothing where an index has one value, and is null where no other has more', () => {
    expect(historyCharts(certificate({ history: [history([80, null])] }))).toBeNull()
    expect(historyCharts(certificate())).toBeNull()
  })
})
