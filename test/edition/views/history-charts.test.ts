import { describe, expect, it } from 'vitest'
import { historyCharts } from '../../../src/edition/views/history-charts.ts'
import { readAge } from '../../../src/core/measure/age.ts'
import type { Verdict } from '../../../src/core/criteria/verdict.ts'
import type { HistorySeries } from '../../../src/edition/shape/lot-history.ts'

type History = HistorySeries

function history(values: readonly (number | null)[], more: Partial<History> = {}): History {
  return {
    property: 'strength-activity-index',
    condition: 'warm',
    age: '28 d',
    unit: '%',
    decimals: 1,
    points: values.map((value, place) => ({
      place,
      named: { lot: `hill/H-${place}`, at: `2026-03-0${place + 1}` },
      value,
      status: value === null ? 'pending' : value < 60 ? 'not-valid' : 'valid',
    })),
    ...more,
  }
}

const edition = {
  site: { units: 'SI' },
  announcedConditions: new Map(),
  conditions: new Map([
    ['warm', { title: '50 %, 50 °C', standing: 'modified' }],
    ['plain', { title: '20 %, 23 °C', standing: 'standard' }],
  ]),
} as unknown as Parameters<typeof historyCharts>[0]

const limited = {
  clauses: [
    {
      kind: 'value',
      property: 'strength-activity-index',
      condition: 'warm',
      age: readAge('672 h'),
      limit: { operator: 'at-least', values: [75], unit: '%', written: ['75 %'], layer: 'set' },
    },
  ],
} as unknown as Verdict

const charts = (history: readonly History[], verdicts: readonly Verdict[] = []) =>
  historyCharts(edition, { history: () => history, verdicts })

describe('historyCharts', () => {
  it('says in words what a chart shows, with the limits of any set once, however their age is written', () => {
    const [chart] = charts([history([83.26, 85])], [limited, limited])?.charts ?? []
    expect(chart?.label).toBe(
      'Strength activity index, modified (50 %, 50 °C), 28 d: 2 lots, the last one 85.0\u00a0%, limit 75\u00a0%',
    )
    expect(chart?.caption).toBe('Strength activity index, modified (50\u00a0%, 50\u00a0°C), 28\u00a0d')
    expect(chart?.model.limits).toHaveLength(1)
  })
  it('lists every lot, the newest first, with what is awaited or not valid', () => {
    const view = charts([history([83.26, 41, null]), history([70, 71], { condition: 'plain' })])
    expect(view?.lots).toEqual([
      { name: 'H-2', sampled: '3\u00a0Mar\u00a02026', cells: ['awaited', ''] },
      { name: 'H-1', sampled: '2\u00a0Mar\u00a02026', cells: ['41.0, not valid', '71.0'] },
      { name: 'H-0', sampled: '1\u00a0Mar\u00a02026', cells: ['83.3', '70.0'] },
    ])
    expect(view?.charts[0]?.label).toContain('3 lots, the last one awaited')
  })
  it('gives the value of a lot that is not to be named, and neither its name nor its day', () => {
    const { points, ...series } = history([83.26, 85])
    const bare = { ...series, points: points.map((point) => ({ ...point, named: null })) }
    expect(charts([bare])?.lots).toEqual([
      { name: 'a lot not yet issued', sampled: '', cells: ['85.0'] },
      { name: 'a lot not yet issued', sampled: '', cells: ['83.3'] },
    ])
  })
  it('draws nothing where an index has one value, and is null where no other has more', () => {
    expect(charts([history([80, null])])).toBeNull()
    expect(charts([])).toBeNull()
  })
})
