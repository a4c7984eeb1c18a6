/** All studies, a line each. */
import { date } from '../../../words/dates.ts'
import { countWords } from '../../../words/numbers.ts'
import { NO_READING_YET } from '../../../words/programme.ts'
import { sentence } from '../../../words/sentences.ts'
import { STUDY_KINDS } from '../../../words/studies.ts'
import type { Edition } from '../../shape/edition.ts'

export interface StudyLine {
  readonly id: string
  readonly title: string
  readonly kind: string
  readonly facts: string
}

export function studyList(edition: Edition): StudyLine[] {
  return [...edition.studies.keys()].map((id) => {
    const { title, record, readings } = edition.study(id)
    return {
      id,
      title,
      kind: sentence(STUDY_KINDS[record.kind]),
      facts: `plan fixed ${date(record.plan.fixed)}, ${countWords(Object.keys(record.materials).length, 'material')}, ${readings === 0 ? NO_READING_YET : countWords(readings, 'reading')}`,
    }
  })
}
