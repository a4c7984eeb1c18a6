import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { indexAtMean } from '../../../src/core/history/control-standing.ts'
import { computeEdition } from '../../../src/edition/compute.ts'
import { standingControls, standingWords } from '../../../src/edition/views/control-standing.ts'
import { loadRecords } from '../../../src/records/load.ts'

const edition = computeEdition(loadRecords('content').records, { program: 'test' })
const lots = [...edition.lots.keys()].map(edition.lot)

/** Mean of the 28 d loads of a committed control record, read with a pattern and nothing else. */
function meanLoad(control: string): number {
  const line =
    readFileSync(`content/controls/${control}.yaml`, 'utf8')
      .split('\n')
      .find((text) => text.includes('kN') && text.includes('age: 28 d')) ?? ''
  const loads = [...line.matchAll(/(\d+\.\d+) kN/g)].map(([, load]) => Number(load))
  return loads.reduce((sum, load) => sum + load, 0) / loads.length
}

describe('standingControls', () => {
  it('gives the index that the bench sheets give over the mean of earlier controls', () => {
    const [standing] = standingControls(edition, edition.lot('skarnmere-ash/SA-2026-001')).filter(
      ({ index }) => index.property === 'strength-activity-index' && index.condition === 'c311',
    )
    if (standing?.standing == null) throw new RangeError('the lot needs an earlier control of its cement')
    const own = standing.own.batch
    const alike = standing.earlier
      .filter(({ cement }) => cement === 'PC-D')
      .map(({ batch }) => meanLoad(batch))
    expect(own).toBe('NQ-2026-0114-23')
    expect(standing.standing.batches).toBe(alike.length)
    const before = alike.reduce((sum, load) => sum + load, 0) / alike.length
    expect(indexAtMean(standing.index.value, standing.standing)).toBeCloseTo(
      (standing.index.value * meanLoad(own)) / before,
      9,
    )
    expect(standingWords(standing, 'SI')).toBe(
      'Control NQ-2026-0114-23, 37.2\u00a0MPa, stands 1.7 % below the batch made with cement PC-D before it, 37.8\u00a0MPa; measured against that, the index would be 93.9\u00a0% instead of 95.6\u00a0%',
    )
  })

  it('looks at batches tested on an earlier day alone, at most 23, and ends with the index’s own', () => {
    const all = lots.flatMap((lot) => standingControls(edition, lot))
    expect(all.length).toBeGreaterThan(400)
    for (const { index, earlier, own } of all) {
      expect(own.batch).toBe(index.control)
      expect(earlier.length).toBeLessThanOrEqual(23)
      for (const { tested } of earlier) expect(tested.day < own.result.tested.day).toBe(true)
    }
  })

  it('says so where the control is the first of its cement', () => {
    const first = lots
      .flatMap((lot) => standingControls(edition, lot))
      .find(({ standing }) => standing === null)
    if (first === undefined) throw new RangeError('the demo needs a first batch of a cement')
    expect(standingWords(first, 'SI')).toMatch(/is the first batch made with cement [A-Z]{2}-[A-Z\d]+ here$/)
  })
})
