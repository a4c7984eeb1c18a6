import { describe, expect, it } from 'vitest'
import { computeEdition } from '../../../src/edition/compute.ts'
import { studyPage } from '../../../src/edition/views/studies/study-page.ts'
import { plainSpaces } from '../../../src/words/sentences.ts'
import { loadStudies, STUDY } from '../../records/studies/study-folder.ts'

function routesOf(rows: readonly string[]) {
  const { records } = loadStudies({
    'S.yaml': `${STUDY}laboratories: { L1: {}, L2: {} }\ntable: { file: S.csv }\n`,
    'S.csv': `material,laboratory,batch,age,strength (MPa)\n${rows.join('\n')}\n`,
  })
  return studyPage(computeEdition(records, { program: 'test' }), 'S').screening?.routes ?? []
}

const laboratory = (code: string, ash: number, quartz: number) => [
  `control,${code},1,28 d,50`,
  `A1,${code},1,28 d,${ash}`,
  `Q1,${code},1,28 d,${quartz}`,
]

describe('leftOutWords', () => {
  // Indices 100 and 70 in L1, 80 and 60 in L2. L2 alone: √(80 · 60) = 69.3, so 70 %, at which quartz passes in L1. L1 alone:
  // √7000 = 83.7, so 85 %, at which the ash of L2 fails.
  it('judges the results of a laboratory by what the others choose', () => {
    const [route] = routesOf([...laboratory('L1', 50, 35), ...laboratory('L2', 40, 30)])
    expect(route?.laboratoriesOut.map(plainSpaces)).toEqual([
      'Without laboratory L1 the choice is 30 %, 28 d, as with it, and the threshold 70 %. By its own results 1 of 2 materials are then judged rightly; wrongly: Q1.',
      'Without laboratory L2 the choice is 30 %, 28 d, as with it, and the threshold 85 %. By its own results 1 of 2 materials are then judged rightly; wrongly: A1.',
    ])
  })
  it('says nothing of laboratories where there is but one', () => {
    expect(routesOf(laboratory('L1', 50, 35))[0]?.laboratoriesOut).toEqual([])
  })
})
