import { describe, expect, it } from 'vitest'
import { computeEdition } from '../../../src/edition/compute.ts'
import type { LotEntry } from '../../../src/edition/shape/edition.ts'
import { scatterRows } from '../../../src/edition/views/scatter.ts'
import { loadRecords } from '../../../src/records/load.ts'

const edition = computeEdition(loadRecords('content').records, { program: 'test' })

describe('scatterRows', () => {
  // Recomputed from the loads of the committed records NQ-*-23.yaml, 28 d, tested by 10 April 2026, with
  // numpy 2.4.6 (sums of squares of
  // ln(load) within batches and, weighted, of batches within cements; no batch leaves the range of 8.7 %).
  it('has the components of the demo’s control mortar at 28 d that numpy finds in the bench sheets', () => {
    const row = scatterRows(edition, 'north-quay').find(
      ({ property, condition, age }) =>
        property === 'strength-activity-index' && condition === 'c311' && age?.text === '28 d',
    )
    expect(row).toMatchObject({
      of: 'control batches',
      batches: 76,
      groups: 4,
      few: false,
      specimens: { df: 152 },
      beyond: { df: 72 },
      mean: { df: 72 },
    })
    expect(row?.specimens?.percent).toBeCloseTo(2.0046615796948926, 10)
    expect(row?.beyond?.percent).toBeCloseTo(1.6798505428081372, 10)
    // A pooled figure is stored with six digits, which the index takes √2 times.
    expect(row?.mean.percent).toBeCloseTo(2.039094903429891, 5)
    expect(row?.index).toBeCloseTo(2.883715667396408, 4)
  })

  it('puts repeated lots after control batches, with the scatter of the index itself and no components', () => {
    const repeated = new Map(repeatedLots().map((lot) => [lot.id, lot]))
    const rows = scatterRows(
      {
        ...edition,
        lotsOf: (source) => edition.lotsOf(source).filter(({ id }) => repeated.has(id)),
        lot: (id) => repeated.get(id) as LotEntry,
        ofSource: (_source, _name, make) => make(),
      },
      'north-quay',
    )
    const last = rows.at(-1)
    expect(last).toMatchObject({
      of: 'repeated lots',
      batches: 6,
      groups: 3,
      specimens: null,
      beyond: null,
      mean: { df: 3 },
      few: true,
    })
    expect(last?.index).toBe(last?.mean.percent)
    expect(rows.slice(0, -1).every(({ of }) => of === 'control batches')).toBe(true)
  })

  it('has no row for a laboratory without batches', () => expect(scatterRows(edition, 'nowhere')).toEqual([]))
})

/** Three lots of the demo with the index of their 28 d test as if it had been made twice. */
function repeatedLots(): LotEntry[] {
  const once = [...edition.lots.keys()].map(edition.lot).flatMap((lot) =>
    lot.results
      .filter(
        (result) =>
          result.property === 'strength-activity-index' &&
          result.condition === 'c311' &&
          result.age?.text === '28 d' &&
          result.laboratory === 'north-quay' &&
          result.valid,
      )
      .slice(0, 1)
      .map((result) => ({
        ...lot,
        results: [result, { ...result, control: 'another', value: 1.03 * result.value }],
      })),
  )
  return once.slice(0, 3)
}
