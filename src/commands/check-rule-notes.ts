/** What a set's decision rule leaves open for every lot, told once and not for each lot. */
import type { Criterion } from '../core/criteria/criterion.ts'
import { conditionTitle } from '../edition/shape/condition-title.ts'
import { ruleNotes } from '../edition/shape/rule-notes.ts'
import type { Records } from '../records/load.ts'
import { plainSpaces } from '../words/sentences.ts'

export function ruleNoteLines(
  records: Pick<Records, 'laboratories' | 'conditions' | 'announcedConditions'>,
  criterion: Criterion,
): string[] {
  const notes = ruleNotes(records, criterion, (condition) => conditionTitle(records, condition))
  return notes.map((note) => plainSpaces(`${criterion.id}: ${note}`))
}
