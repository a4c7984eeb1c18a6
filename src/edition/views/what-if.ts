/**
 * What if a source's governing specification asked for activity in another way: the same lots under that
 * specification with its activity clause replaced. It is no judgement under any contract.
 */
import { isActivityOnly } from '../../core/criteria/activity-only.ts'
import { type Criterion, setName } from '../../core/criteria/criterion.ts'
import type { Outcome } from '../../core/criteria/outcome.ts'
import { withActivityOf } from '../../core/criteria/replace-activity.ts'
import type { Verdict } from '../../core/criteria/verdict.ts'
import type { Evidence } from '../../core/evidence/evidence.ts'
import { lotEvidence } from '../../core/evidence/lot-evidence.ts'
import { buildHistory } from '../../core/history/history.ts'
import { changesBetween, compareLot } from '../../core/judging/compare-sets.ts'
import { judge } from '../../core/judging/verdict.ts'
import { shortDate } from '../../words/dates.ts'
import { plural } from '../../words/numbers.ts'
import { type LotStanding, oneSidedWords, withdrawnNotCounted } from '../../words/standing.ts'
import { shortfallWords } from '../../words/shortfall.ts'
import { link, paths } from '../shape/addresses.ts'
import { conditionTitle } from '../shape/condition-title.ts'
import type { Edition, ListedLot } from '../shape/edition.ts'
import { evidenceLot } from '../shape/evidence-lot.ts'
import { standingUnder } from '../shape/standing.ts'
import { type Linked, linked } from './linked.ts'

export interface WhatIfView {
  readonly source: Linked
  /** The specification that governs; null for a source without one. */
  readonly governing: Linked | null
  /** Where the reader chooses other sets and lots. */
  readonly compare: string
  /** One for each set whose activity clause can stand in for the governing one's. */
  readonly replaced: readonly ReplacedActivity[]
}

export interface ReplacedActivity {
  /** The set that the clause comes from. */
  readonly by: Linked
  readonly alike: string
  readonly changes: readonly { readonly from: Outcome; readonly to: Outcome; readonly count: number }[]
  /** Lots with a verdict under only one of the two; null where none is. */
  readonly oneSided: string | null
  /** How many lots are withdrawn; null where none is. */
  readonly notCounted: string | null
  /** Lots that come out otherwise, the newest first. */
  readonly rows: readonly ReplacedRow[]
}

export interface ReplacedRow {
  readonly lot: Linked
  readonly sampled: string
  readonly now: JudgedCell
  readonly then: JudgedCell
}

export interface JudgedCell {
  readonly standing: LotStanding
  /** Clauses with value and limit; null where every clause is met. */
  readonly decidedBy: string | null
}

/** Sources that have such a page: those with a set that can take the place. */
export function whatIfSources(edition: Edition): string[] {
  return [...edition.sources.keys()].filter((id) => composedSets(edition, id).length > 0)
}

/** A line for a source's page that leads here; null where nothing can be replaced. */
export function whatIfLink(edition: Edition, source: string): (Linked & { readonly note: string }) | null {
  if (composedSets(edition, source).length === 0) return null
  return {
    ...linked(edition, 'What if the activity clause were another', paths.whatIf(source)),
    note: NO_JUDGEMENT,
  }
}

/** Stands wherever such an answer does. */
export const NO_JUDGEMENT = 'This is no judgement under any contract.'

/** @throws RangeError for a source that is not in the edition */
export function whatIfView(edition: Edition, id: string): WhatIfView {
  const governing = governingSet(edition, id)
  const lots = governing === null ? [] : judgedLots(edition, id, governing)
  return {
    source: linked(edition, edition.source(id).record.name, paths.source(id)),
    governing: governing && linked(edition, setName(governing), paths.criterion(governing.id)),
    compare: `${link(edition, paths.comparison)}?${new URLSearchParams({ set: governing?.id ?? '', source: id })}`,
    replaced: composedSets(edition, id).map((sets) => replacedActivity(edition, lots, sets)),
  }
}

interface Composed {
  readonly governing: Criterion
  readonly by: Criterion
  readonly composed: Criterion
}

function governingSet({ criteria, sources }: Edition, id: string): Criterion | null {
  return criteria.get(sources.get(id)?.criteria[0] ?? '') ?? null
}

/** The governing set with its activity clause replaced by that of each set that judges activity alone. */
function composedSets(edition: Edition, id: string): Composed[] {
  const governing = governingSet(edition, id)
  const kind = edition.sources.get(id)?.kind
  if (governing === null) return []
  return [...edition.criteria.values()].filter(isActivityOnly).flatMap((by) => {
    const composed = withActivityOf(governing, by)
    return composed !== null && composed.kinds.some((own) => own === kind)
      ? [{ governing, by, composed }]
      : []
  })
}

interface JudgedLot {
  readonly row: ListedLot
  readonly evidence: Evidence
  /** Under the governing set as it is. */
  readonly asItIs: Verdict
}

function judgedLots(edition: Edition, id: string, governing: Criterion): JudgedLot[] {
  const { background, restarts } = edition.source(id)
  const rows = edition.lotsOf(id)
  const lots = rows.map((row) => evidenceLot(edition.lot(row.id)))
  const history = buildHistory(lots, restarts)
  return rows.flatMap((row, place) => {
    const lot = lots[place]
    if (lot === undefined) return []
    const evidence = lotEvidence(background, history, lot, lot, edition.asOf)
    return [{ row, evidence, asItIs: judge(governing, evidence) }]
  })
}

function replacedActivity(
  edition: Edition,
  lots: readonly JudgedLot[],
  { governing, by, composed }: Composed,
): ReplacedActivity {
  const compared = lots.map(({ row, evidence, asItIs }) => ({
    row,
    ...compareLot(row.id, [asItIs, judge(composed, evidence)]),
  }))
  const counted = compared.filter(({ row }) => row.state !== 'withdrawn')
  const { alike, changes, oneSided } = changesBetween(counted, 0, 1)
  return {
    by: linked(edition, setName(by), paths.criterion(by.id)),
    alike: plural(alike, 'lot', 'lots'),
    changes,
    oneSided: oneSidedWords(oneSided),
    notCounted: withdrawnNotCounted(compared.length - counted.length),
    rows: compared
      .filter((lot) => lot.changes)
      .toReversed()
      .flatMap(({ row, verdicts: [now, then] }) =>
        now && then
          ? [
              replacedRow(edition, row, [
                cell(edition, row, governing, now),
                cell(edition, row, composed, then),
              ]),
            ]
          : [],
      ),
  }
}

function replacedRow(
  edition: Edition,
  row: ListedLot,
  [now, then]: readonly [JudgedCell, JudgedCell],
): ReplacedRow {
  return {
    lot: linked(edition, row.number, paths.certificate(row.id)),
    sampled: shortDate(row.sampled),
    now,
    then,
  }
}

function cell(edition: Edition, row: ListedLot, criterion: Criterion, verdict: Verdict): JudgedCell {
  return {
    standing: standingUnder(edition, row, verdict),
    decidedBy:
      verdict.outcome === 'meets'
        ? null
        : shortfallWords(verdict, criterion, (id) => conditionTitle(edition, id)),
  }
}
