/** A study's readings to what they say. */
import { roundRobin } from '../../core/studies/interlaboratory/round-robin.ts'
import { levelsOf } from '../../core/studies/ruggedness/design.ts'
import { ruggednessStudy } from '../../core/studies/ruggedness/ruggedness-study.ts'
import { screening } from '../../core/studies/screening/screening.ts'
import type { Moment } from '../../core/measure/moment.ts'
import { once } from '../../core/measure/once.ts'
import type { StudyRecord } from '../../records/records.ts'
import type { Study } from '../../records/schema/loaded-records.ts'
import { knownIndices } from '../../records/studies/known-indices.ts'
import { screeningAsked, STUDY_LEVEL } from '../../records/studies/screening-asked.ts'
import type { StudyEntry, StudyFound } from '../shape/study-entry.ts'
import { referenceResults } from './reference-results.ts'
import { seededUniform } from './seeded-uniform.ts'

/** Draws of the materials that say how firm the order of conditions is. */
const RESAMPLES = 2000

/**
 * A study as known on a day.
 * @param id of the study
 * @param study with its readings; those made after the day are left out
 */
export function studyEntry(id: string, study: StudyRecord, asOf: Moment): StudyEntry {
  const { record } = study
  const known = knownIndices(study, asOf)
  // Thousands of draws, which who only counts readings or asks for the plan does without.
  const found = once(() => foundIn(record, known.indices.indices))
  return {
    id,
    title: record.title,
    kind: record.kind,
    record,
    ...known,
    reference: referenceResults(study, asOf),
    get found() {
      return found()
    },
  }
}

function foundIn(record: Study, indices: StudyEntry['indices']['indices']): StudyFound {
  switch (record.kind) {
    case 'screening':
      return {
        kind: 'screening',
        routes: screening(
          indices,
          screeningAsked(record, { resamples: RESAMPLES, chance: seededUniform(RESAMPLES) }),
        ),
      }
    case 'interlaboratory':
      return {
        kind: 'interlaboratory',
        materials: roundRobin(indices, Object.keys(record.materials), STUDY_LEVEL),
      }
    case 'ruggedness': {
      const runs = Object.entries(record.runs ?? {}).map(([code, signs]) => ({
        code,
        levels: levelsOf(signs),
      }))
      const dummies = (record.factors ?? []).flatMap(({ dummy }, place) => (dummy === true ? [place] : []))
      return { kind: 'ruggedness', effects: ruggednessStudy(indices, { runs, dummies }, STUDY_LEVEL) }
    }
  }
}
