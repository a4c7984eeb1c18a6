/** What a new revision changes against the one before it. */
import type { OutcomeChange, RecordChange } from '../../core/checks/lot-findings.ts'
import { canonicalJson } from '../../records/issued/digest.ts'
import type { IssuedDocument } from '../shape/document.ts'
import { outcomeChanges, recordDifferences } from './compare-issued.ts'
import { recordOf } from './document-content.ts'

export interface Changes {
  /** Absent where the state stays. */
  readonly state?: { readonly from: IssuedDocument['state']; readonly to: IssuedDocument['state'] }
  readonly outcomes: readonly OutcomeChange[]
  /** Sets that became, or no longer are, ones whose verdicts are trial judgements. */
  readonly trials: readonly TrialChange[]
  readonly record: readonly RecordChange[]
  /** Lines of the results that print another value, whatever changed it: a lot before this one may have been withdrawn. */
  readonly values: readonly ValueChange[]
  /** Names, units, conditions, limits or sentences print otherwise, though record and outcomes are the same. */
  readonly printedOtherwise: boolean
}

export interface ValueChange {
  readonly title: string
  /** As printed. */
  readonly from: string
  readonly to: string
}

export interface TrialChange {
  readonly criterion: string
  /** Whether the later document is a trial judgement. */
  readonly trial: boolean
}

/** @param before,after documents with what they withhold in the same places */
export function changesBetween(before: IssuedDocument, after: IssuedDocument): Changes {
  const { verdict, others } = after.data
  const outcomes = outcomeChanges(before, [...(verdict === undefined ? [] : [verdict]), ...others])
  return {
    ...(before.state === after.state ? {} : { state: { from: before.state, to: after.state } }),
    outcomes,
    trials: trialChanges(before, after),
    record: recordDifferences(recordOf(before), recordOf(after)),
    values: valueChanges(before, after),
    printedOtherwise: printedText(before) !== printedText(after),
  }
}

/** Lines are the same by their place where all stand as before, else by their titles. */
function valueChanges(before: IssuedDocument, after: IssuedDocument): ValueChange[] {
  const [earlier, later] = [linesOf(before), linesOf(after)]
  const stand =
    earlier.length === later.length && later.every(({ limit }, place) => limit === earlier[place]?.limit)
  const byTitle = new Map(earlier.map((line) => [line.title, line]))
  return later.flatMap(({ title, value }, place) => {
    const old = stand ? earlier[place] : byTitle.get(title)
    return old === undefined || old.value === value ? [] : [{ title, from: old.value, to: value }]
  })
}

function linesOf({ lot, printed }: IssuedDocument) {
  return [...lot.printed.tables, ...printed.tables].flatMap(({ lines }) => lines)
}

function trialChanges(before: IssuedDocument, after: IssuedDocument): TrialChange[] {
  const earlier = new Map(before.shared.criteria.map(({ id, trial }) => [id, trial]))
  return after.shared.criteria.flatMap(({ id, trial }) =>
    earlier.has(id) && earlier.get(id) !== trial ? [{ criterion: id, trial }] : [],
  )
}

/** Whether a revision would say anything that the one before it does not. */
export function isUnchanged({ state, outcomes, record, printedOtherwise }: Changes): boolean {
  return state === undefined && outcomes.length === 0 && record.length === 0 && !printedOtherwise
}

/** Everything printed but who issued which revision when and why, and the program's own words. */
function printedText({ shared, lot, printed }: IssuedDocument): string {
  const { words: _words, ...sharedTexts } = shared.printed
  const { name: _name, head: _head, signature: _signature, ...texts } = printed
  return canonicalJson([sharedTexts, lot.printed, texts])
}
