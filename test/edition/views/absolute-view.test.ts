import { describe, expect, it } from 'vitest'
import { computeEdition } from '../../../src/edition/compute.ts'
import { studyPage } from '../../../src/edition/views/studies/study-page.ts'
import { plainSpaces } from '../../../src/words/sentences.ts'
import { loadStudies, STUDY } from '../../records/studies/study-folder.ts'

function tablesOf(rows: readonly string[], heading: string) {
  const { records } = loadStudies({
    'S.yaml': `${STUDY.replace('A1:', 'A2: { title: ash, class: reactive, shown-by: heat }\n  A1:')}table: { file: S.csv }\n`,
    'S.csv': `material,batch,age,${heading}\n${rows.join('\n')}\n`,
  })
  return studyPage(computeEdition(records, { program: 'test' }), 'S').screening?.absolute ?? []
}

describe('absoluteTables', () => {
  // Control 50 and 40, each once though three materials use the first; A1 40 and 44, so 42; A2 30: mean over materials 36.
  it('counts each control batch and each material once', () => {
    const rows = [
      'control,1,28 d,50',
      'control,2,28 d,40',
      'Q1,1,28 d,30',
      'A1,1,28 d,40',
      'A1,2,28 d,44',
      'A2,1,28 d,30',
    ]
    const [table] = tablesOf(rows, 'strength (MPa)')
    expect(table?.rows.map(({ cells }) => cells.map(plainSpaces))).toEqual([
      ['30 %, 28 d', '45.0 MPa', '30.0 MPa', '–', '36.0 MPa'],
    ])
  })
  it('says that a mean lies above what was read where one of its batches does', () => {
    const [table] = tablesOf(['control,1,28 d,50', 'Q1,1,28 d,45', 'A1,1,28 d,> 900'], 'resistivity (ohm m)')
    expect(table?.rows[0]?.cells.map(plainSpaces).at(-1)).toMatch(/^> 900\.0 /)
  })
  it('is none where indices are reported finished', () => {
    expect(tablesOf(['Q1,1,28 d,80', 'A1,1,28 d,95'], 'strength-activity-index (%)')).toEqual([])
  })
})
