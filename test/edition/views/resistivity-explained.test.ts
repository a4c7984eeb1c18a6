import { describe, expect, it } from 'vitest'
import { computeEdition } from '../../../src/edition/compute.ts'
import { explainedIndices } from '../../../src/edition/views/resistivity-explained.ts'
import { loadRecords } from '../../../src/records/load.ts'

const edition = computeEdition(loadRecords('content').records, { program: 'test' })
const lots = [...edition.lots.keys()].map(edition.lot)
const all = lots.flatMap((lot) => explainedIndices(edition, lot).map((entry) => ({ lot, ...entry })))

describe('explainedIndices', () => {
  it('explains every valid resistivity index of the demonstration, or says what is lacking', () => {
    const wanted = lots.flatMap((lot) =>
      lot.results.filter(
        (result) => result.property === 'resistivity-index' && result.role === 'producer' && result.valid,
      ),
    )
    expect(all.length).toBe(wanted.length)
    expect(all.filter(({ explained }) => 'explanation' in explained).length).toBeGreaterThan(200)
    expect(
      all
        .filter(({ explained }) => 'lacks' in explained)
        .every(({ explained }) => 'lacks' in explained && explained.lacks.endsWith('on record')),
    ).toBe(true)
  })

  it('takes the index apart into two factors of which each end multiplies to it', () => {
    for (const { index, explained } of all) {
      if (!('explanation' in explained)) continue
      const { poreSolution, poreStructure, ratio } = explained.explanation
      expect(Math.abs((100 * ratio) / index.value - 1)).toBeLessThan(1e-12)
      expect(Math.abs((poreSolution.low * poreStructure.high) / ratio - 1)).toBeLessThan(1e-9)
    }
  })
})
