/** Test conditions in words: those that mortar can be tested at, and those that are named only. */
import type { DescribedCondition } from '../../records/records.ts'
import type { Condition } from '../../records/schema/loaded-records.ts'
import { fullSentence, sentence, unbroken } from '../../words/sentences.ts'
import { conditionParticulars, type Particular, preconditions } from '../shape/condition-particulars.ts'
import type { Edition } from '../shape/edition.ts'

export interface DescribedView {
  readonly id: string
  readonly title: string
  /** Whether a standard describes it, with the note of the record. */
  readonly standing: string
  readonly particulars: readonly Particular[]
  /** What a test must fulfil to be valid. */
  readonly demands: readonly string[]
}
/** A condition whose details are to be entered from its standard. */
export interface AnnouncedView {
  readonly id: string
  readonly title: string
  readonly standing: string
  readonly note: string | null
}
export interface ConditionsPage {
  readonly described: readonly DescribedView[]
  readonly announced: readonly AnnouncedView[]
}

const STANDING: Readonly<Record<Condition['standing'], string>> = {
  standard: 'Described by a standard.',
  modified: 'Modified: defined by this register.',
  'details-to-be-entered': 'Details to be entered from the standard',
}

export function conditionsPage({
  conditions,
  announcedConditions,
}: Pick<Edition, 'conditions' | 'announcedConditions'>): ConditionsPage {
  return {
    described: [...conditions].map(([id, condition]) => describedView(id, condition)),
    announced: [...announcedConditions].map(([id, condition]) => announcedView(id, condition)),
  }
}

function describedView(id: string, condition: DescribedCondition): DescribedView {
  const { title, standing, note } = condition
  return {
    id,
    title: unbroken(sentence(title)),
    standing: note === undefined ? STANDING[standing] : `${STANDING[standing]} ${unbroken(note)}`,
    particulars: conditionParticulars(condition).map(({ label, text }) => ({ label, text: unbroken(text) })),
    demands: preconditions(condition).map((text) => unbroken(fullSentence(text))),
  }
}

function announcedView(id: string, { title, standing, designation, note }: Condition): AnnouncedView {
  const named = designation === undefined ? '' : ` (${designation})`
  return {
    id,
    title: unbroken(sentence(title)),
    standing: `${STANDING[standing]}${named}; no mortar can be recorded at it until they are.`,
    note: note === undefined ? null : unbroken(note),
  }
}
