/** A condition at an age as a screening study's page names it. */
import type { ConditionScreen } from '../../../core/studies/screening/screening.ts'
import { unbroken } from '../../../words/sentences.ts'
import { conditionName } from '../../../words/studies.ts'
import type { StudyEntry } from '../../shape/study-entry.ts'

export function nameOf(
  { record }: StudyEntry,
  { condition, age }: Pick<ConditionScreen, 'condition' | 'age'>,
): string {
  return unbroken(`${conditionName(record.conditions, condition)}, ${age.text}`)
}
