/** Test conditions in words: those that mortar can be tested at, and those that are named only. */
import type { DescribedCondition } from '../../records/records.ts'
import type { Condition } from '../../records/schema/loaded-records.ts'
import { fullSentence, sentence, unbroken } from '../../words/sentences.ts'
import { conditionParticulars, type Particular, preconditions } from '../shape/condition-particulars.ts'
import type { UnitSystem } from '../../words/unit-systems.ts'
import type { Edition } from '../shape/edition.ts'
import { type BenchDayView, benchDayView } from './bench-day.ts'

export interface DescribedView {
  readonly id: string
  readonly title: string
  /** Whether a standard describes it, with the note of the record. */
  readonly standing: string
  readonly particulars: readonly Particular[]
  /** What a test must fulfil to be valid. */
  readonly demands: readonly string[]
  /** Null without a resistivity test. */
  readonly benchDay: BenchDayView | null
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
  site,
}: Pick<Edition, 'conditions' | 'announcedConditions' | 'site'>): ConditionsPage {
  return {
    described: [...conditions].map(([id, condition]) => describedView(id, condition, site.units)),
    announced: [...announcedConditions].map(([id, condition]) => announcedView(id, condition)),
  }
}

function describedView(id: string, condition: DescribedCondition, units: UnitSystem): DescribedView {
  const { title, standing, note } = condition
  return {
    id,
    title: unbroken(sentence(title)),
    standing: note === undefined ? STANDING[standing] : `${STANDING[standing]} ${unbroken(note)}`,
    particulars: conditionParticulars(condition).map(({ label, text }) => ({ label, text: unbroken(text) })),
    demands: preconditions(condition).map((text) => unbroken(fullSentence(text))),
    benchDay: benchDayView(condition, units),
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
