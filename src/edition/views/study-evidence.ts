/** The study that set a clause's limit, beside the clause. */
import type { Clause } from '../../core/criteria/criterion.ts'
import { limitFromStudy } from '../../records/studies/limit-from-study.ts'
import { fullSentence, unbroken } from '../../words/sentences.ts'
import { conditionName } from '../../words/studies.ts'
import {
  conditionDiffersWords,
  EVIDENCE_NOTE,
  limitEvidenceWords,
  NOTHING_READ,
} from '../../words/study-evidence.ts'
import { paths } from '../shape/addresses.ts'
import type { Edition } from '../shape/edition.ts'
import type { StudyEntry } from '../shape/study-entry.ts'
import { type Linked, linked } from './linked.ts'

export interface StudyEvidence {
  readonly study: Linked
  /** Condition and age in the study; null where the clause names none. */
  readonly where: string | null
  readonly sentences: readonly string[]
}

type Seen = Pick<Edition, 'address' | 'conditions' | 'studies' | 'study'>

/** @returns null for a clause that no study of the edition set */
export function studyEvidence(edition: Seen, clause: Clause): StudyEvidence | null {
  const listed = edition.studies.get(clause.setBy?.study ?? '')
  if (listed === undefined) return null
  const study = linked(edition, `Study ${listed.id}`, paths.study(listed.id))
  return { study, ...shown(edition, clause, edition.study(listed.id)) }
}

function shown(
  { conditions }: Seen,
  clause: Clause,
  { record, found }: StudyEntry,
): Pick<StudyEvidence, 'where' | 'sentences'> {
  const limit =
    clause.form === 'comparison' && found.kind === 'screening'
      ? limitFromStudy(clause, { record, routes: found.routes }, conditions.get(clause.condition ?? ''))
      : null
  if (limit === null) return { where: null, sentences: [] }
  const { condition, age, limits, differences } = limit
  const said = limits.length === 0 ? [NOTHING_READ] : [...limits.map(limitEvidenceWords), EVIDENCE_NOTE]
  const apart = differences.map(({ what, clause: here, study }) => conditionDiffersWords(what, here, study))
  return {
    where: unbroken(`${conditionName(record.conditions, condition)}, ${age.text}`),
    sentences: [...said, ...apart].map(fullSentence),
  }
}
