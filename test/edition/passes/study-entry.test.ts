import { describe, expect, it } from 'vitest'
import { readMoment } from '../../../src/core/measure/moment.ts'
import { computeEdition } from '../../../src/edition/compute.ts'
import { loadStudies, STUDY } from '../../records/studies/study-folder.ts'

const TABLE = `material,age,batch,tested,strength (MPa)
control,28 d,1,2026-02-01,50
A1,28 d,1,2026-02-01,45
A1,28 d,2,2026-03-01,40
A1,28 d,2,2026-03-02,44
Q1,28 d,1,,35
`

function at(day: string) {
  const { records } = loadStudies({ 'S.yaml': `${STUDY}table: { file: S.csv }\n`, 'S.csv': TABLE })
  return computeEdition(records, { program: 'test', asOf: readMoment(day) })
}

const indices = (day: string) =>
  at(day)
    .study('S')
    .indices.indices.map(({ material, batch, value }) => `${material}/${batch} ${value}`)

describe('studyEntry', () => {
  it('leaves out what was read after the as-of day; a reading without a day is known from the first', () => {
    expect(at('2026-01-31').study('S').readings).toBe(1)
    expect(indices('2026-02-01')).toEqual(['A1/1 90', 'Q1/1 70'])
    expect(at('2026-02-28').study('S').readings).toBe(3)
  })
  it('takes a batch that is read over two days as far as it is known', () => {
    expect(indices('2026-03-01')).toContain('A1/2 80')
    expect(indices('2026-03-02')).toContain('A1/2 84')
  })
  it('is not there before its plan was fixed', () => {
    expect([...at('2025-12-31').studies.keys()]).toEqual([])
    expect([...at('2026-01-01').studies.keys()]).toEqual(['S'])
    expect(() => at('2025-12-31').study('S')).toThrow(RangeError)
  })
})
