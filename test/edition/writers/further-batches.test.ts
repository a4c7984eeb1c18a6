import { describe, expect, it } from 'vitest'
import { computeEdition } from '../../../src/edition/compute.ts'
import { type StudyRow, studyData } from '../../../src/edition/writers/study-data.ts'
import { loadRecords } from '../../../src/records/load.ts'

const study = computeEdition(loadRecords('content').records, { program: 'test' }).study('S-01')
const rows = studyData(study)['results'] as readonly StudyRow[]

describe('the chance that further batches fail, of a class with a material partly above the ceiling', () => {
  // Recomputed from the CSV with numpy and scipy 1.17.1: Student's t with 26 degrees of freedom and a pooled scatter of
  // 0.0502022; the mean of A3, one batch read and two above the ceiling, has the standard error of its likelihood's
  // curvature, 0.0352816.
  it.each([
    [1100, 0.3749697735],
    [1200, 0.375020867],
    [1300, 0.377407018],
    [1400, 0.427764679],
  ])('at a threshold of %d %%', (threshold, chance) => {
    const row = rows.find(
      (one) =>
        one.property === 'resistivity-index' &&
        one.statistic === 'reactive-failing-further-batches-at' &&
        one.threshold === threshold,
    )
    expect(row?.value).toBeCloseTo(chance, 8)
  })
})
