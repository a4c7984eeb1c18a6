import { describe, expect, it } from 'vitest'
import { computeEdition } from '../../../src/edition/compute.ts'
import { studyPage } from '../../../src/edition/views/studies/study-page.ts'
import { plainSpaces } from '../../../src/words/sentences.ts'
import { loadStudies, STUDY } from '../../records/studies/study-folder.ts'

function leadOf(rows: readonly string[]) {
  const { records } = loadStudies({
    'S.yaml': `${STUDY.replace('A1:', 'A2: { title: ash, class: reactive, shown-by: heat }\n  A1:')}table: { file: S.csv }\n`,
    'S.csv': `material,batch,age,strength (MPa)\ncontrol,1,28 d,50\n${rows.join('\n')}\n`,
  })
  const page = studyPage(computeEdition(records, { program: 'test' }), 'S')
  return plainSpaces(page.screening?.routes[0]?.lead.join(' ') ?? '')
}

describe('screeningView', () => {
  it('says nothing of a class with one material, wherever it stands', () => {
    for (const quartz of [30, 45]) {
      const lead = leadOf([`Q1,1,28 d,${quartz}`, 'A1,1,28 d,40', 'A2,1,28 d,50'])
      expect(lead).toContain('The inert class has one material, so nothing can be said of the class.')
      expect(lead).not.toMatch(/all materials but one|wholly apart/)
    }
  })
})
