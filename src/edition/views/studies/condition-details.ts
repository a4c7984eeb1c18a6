/** What a condition of a study says beside its replacement and temperature. */
import type { StudyEntry } from '../../shape/study-entry.ts'

type StudyCondition = NonNullable<StudyEntry['record']['conditions']>[string]

/** "w/cm 0.485, saturated lime water, cement C1"; empty where it says nothing. */
export function conditionDetails(condition: StudyCondition | undefined): string {
  return [
    condition?.['w/cm'] !== undefined && `w/cm ${condition['w/cm']}`,
    condition?.curing?.replaceAll('-', ' '),
    condition?.cement !== undefined && `cement ${condition.cement}`,
  ]
    .filter(Boolean)
    .join(', ')
}
