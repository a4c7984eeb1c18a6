import { describe, expect, it } from 'vitest'
import type { Result } from '../../../src/core/result/result.ts'
import {
  buildHistory,
  bySampling,
  type HistoryLot,
  historyKey,
  precedingResults,
  representative,
} from '../../../src/core/history/history.ts'

function result(value: number, more: Partial<Result> = {}): Result {
  return {
    key: 'density||||north|C',
    property: 'density',
    laboratory: 'north',
    sample: 'C',
    sampleKind: 'composite',
    role: 'producer',
    value,
    unit: 'g/cm3',
    decimals: 2,
    n: 1,
    tested: '2026-01-05',
    valid: true,
    reasons: [],
    working: () => [],
    ...more,
  }
}

function lot(
  id: string,
  sampled: string,
  results: readonly Result[],
  more: Partial<HistoryLot> = {},
): HistoryLot {
  return { id, sampled, class: 'N', results, tonnes: 100, from: sampled, ...more }
}

const KEY = historyKey('N', 'density')

describe('precedingResults', () => {
  const lots = [1, 2, 3, 4].map((day) => lot(`S/L${day}`, `2026-01-0${day}`, [result(2 + day / 10)]))

  it('gives the most recent results before the lot, oldest first, without the lot itself', () => {
    expect(
      precedingResults(buildHistory(lots, []), KEY, 'S/L4', '2026-02-01', 2).map((entry) => entry.value),
    ).toEqual([2.2, 2.3])
  })
  it('gives nothing for the first lot', () => {
    expect(precedingResults(buildHistory(lots, []), KEY, 'S/L1', '2026-02-01', 10)).toEqual([])
  })
  it('leaves out what was obtained after the as-of date', () => {
    const late = lots.map((entry, index) =>
      index === 2 ? { ...entry, results: [result(9, { tested: '2026-03-01' })] } : entry,
    )
    expect(
      precedingResults(buildHistory(late, []), KEY, 'S/L4', '2026-02-01', 2).map((entry) => entry.value),
    ).toEqual([2.1, 2.2])
  })
  it('leaves out results that are not valid and lots withdrawn by the as-of date, and keeps lots withdrawn later', () => {
    const spoiled = [
      { ...lots[0], results: [result(5, { valid: false })] },
      { ...lots[1], withdrawn: '2026-01-20' },
      { ...lots[2], withdrawn: '2026-03-01' },
      lots[3],
    ] as HistoryLot[]
    expect(
      precedingResults(buildHistory(spoiled, []), KEY, 'S/L4', '2026-02-01', 10).map((entry) => entry.lot),
    ).toEqual(['S/L3'])
  })
  it('begins anew at an event that restarts the series', () => {
    expect(
      precedingResults(buildHistory(lots, ['2026-01-03']), KEY, 'S/L4', '2026-02-01', 10).map(
        (entry) => entry.lot,
      ),
    ).toEqual(['S/L3'])
    expect(
      precedingResults(buildHistory(lots, ['2026-01-03']), KEY, 'S/L2', '2026-02-01', 10).map(
        (entry) => entry.lot,
      ),
    ).toEqual(['S/L1'])
  })
  it('keeps classes apart', () => {
    const mixed = lots.map((entry, index) => (index < 2 ? { ...entry, class: 'F' } : entry))
    expect(
      precedingResults(buildHistory(mixed, []), KEY, 'S/L4', '2026-02-01', 10).map((entry) => entry.lot),
    ).toEqual(['S/L3'])
  })
})

describe('representative', () => {
  it('takes a valid result before one that is not, a composite before a grab, then the latest', () => {
    const grab = result(1, { sampleKind: 'grab' })
    const early = result(2)
    const late = result(3, { tested: '2026-01-09' })
    expect(representative([grab, early, late, result(4, { valid: false, tested: '2026-02-01' })])).toBe(late)
    expect(representative([])).toBeUndefined()
  })
})

describe('bySampling', () => {
  it('orders by sampling time, then by id in code units', () => {
    const ids = [
      ['b', '2026-01-02'],
      ['a', '2026-01-02'],
      ['B', '2026-01-02'],
      ['c', '2026-01-01'],
    ].map(([id = '', sampled = '']) => ({ id, sampled }))
    expect(ids.sort(bySampling).map((entry) => entry.id)).toEqual(['c', 'B', 'a', 'b'])
  })
})
