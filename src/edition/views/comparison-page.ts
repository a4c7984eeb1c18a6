/** The same lots under several sets: which change outcome, and which clause decides. */
import { isActivityOnly } from '../../core/criteria/activity-only.ts'
import { setName } from '../../core/criteria/criterion.ts'
import { withActivityOf } from '../../core/criteria/replace-activity.ts'
import type { Outcome } from '../../core/criteria/outcome.ts'
import type { Verdict } from '../../core/criteria/verdict.ts'
import { changesBetween, compareLot } from '../../core/judging/compare-sets.ts'
import { shortDate } from '../../words/dates.ts'
import { listedSetName, scopeWords } from '../../words/outcomes.ts'
import { plural } from '../../words/numbers.ts'
import { unbroken } from '../../words/sentences.ts'
import { type LotStanding, oneSidedWords, withdrawnNotCounted } from '../../words/standing.ts'
import { link, paths } from '../shape/addresses.ts'
import type { Edition, ListedLot, ListedSource, LotEntry } from '../shape/edition.ts'
import { standingOf } from '../shape/standing.ts'
import { type NamedInVerdicts, shortfallInWords } from '../shape/verdict-words.ts'
import { type Linked, linked } from './linked.ts'
import { partOfSource } from '../shape/part-of-source.ts'

export interface ComparisonPage {
  readonly asOf: string
  /** Sets and sources that a reader can choose. */
  readonly sets: readonly Choice[]
  /** Sets whose activity clause can stand in for another set's. */
  readonly activities: readonly Pick<Choice, 'id' | 'name'>[]
  readonly sources: readonly Choice[]
  readonly compared: readonly ComparedSource[]
}
export interface Choice {
  readonly id: string
  readonly name: string
  readonly checked: boolean
}
/** A source that is judged under more than one set. */
export interface ComparedSource {
  readonly name: string
  /** Name of the set that the others are held against. */
  readonly first: string
  /** Without the withdrawn lots, whose outcomes count for nothing. */
  readonly against: readonly AgainstSet[]
  /** How many lots are withdrawn; null where none is. */
  readonly notCounted: string | null
  /** null where no lot changes its outcome. */
  readonly changed: ChangedLots | null
}
export interface AgainstSet {
  readonly set: Linked
  readonly alike: string
  /** How much of the material the set judges, where that is not the whole. */
  readonly scope: string | null
  readonly changes: readonly { readonly count: number; readonly from: Outcome; readonly to: Outcome }[]
  /** Lots with a verdict under only one of the two; null where none is. */
  readonly oneSided: string | null
}
export interface ChangedLots {
  readonly summary: string
  readonly sets: readonly string[]
  readonly rows: readonly ChangedLot[]
  /** How many are listed, where there are more. */
  readonly newest: number | null
}
export interface ChangedLot {
  readonly lot: Linked
  readonly sampled: string
  readonly cells: readonly {
    readonly set: string
    /** null where the set does not judge the lot. */
    readonly verdict: { readonly standing: LotStanding; readonly decidedBy: string | null } | null
  }[]
}

/** Changed lots listed here for one source; every lot stands on the page of the source under the set. */
const LISTED = 40
/** Sets ticked at first. */
const TICKED = 2

type Seen = Pick<Edition, 'address' | 'asOf' | 'site' | 'sources' | 'lotsOf' | 'lot' | 'ofSource'> &
  NamedInVerdicts

export function comparisonPage(edition: Seen): ComparisonPage {
  const ticked = edition.site.criteria.slice(0, TICKED)
  const sources = [...edition.sources.values()]
  return {
    asOf: shortDate(edition.asOf),
    sets: [...edition.criteria.values()].map((criterion) => ({
      id: criterion.id,
      name: listedSetName(criterion),
      checked: ticked.includes(criterion.id),
    })),
    activities: [...edition.criteria.values()]
      .filter(isActivityOnly)
      .filter((set) => withActivityOf(set, set) !== null)
      .map((set) => ({ id: set.id, name: setName(set) })),
    sources: sources.map(({ id, name }) => ({ id, name, checked: true })),
    compared: sources.flatMap(({ id }) => comparedOf(edition, id) ?? []),
  }
}

interface Compared {
  readonly entry: ListedLot
  readonly verdicts: readonly (Verdict | null)[]
  readonly changes: boolean
}

/** Nothing of a source that is judged under one set. */
const comparedOf = partOfSource('compared', (edition: Seen, id): ComparedSource | null => {
  const source = edition.sources.get(id)
  return source === undefined || source.criteria.length < 2 ? null : comparedSource(edition, source)
})

function comparedSource(edition: Seen, source: ListedSource): ComparedSource {
  const names = source.criteria.map((id) => nameOf(edition, id))
  const lots = edition
    .lotsOf(source.id)
    .map((entry) => ({ entry, ...compareLot(entry.id, verdictsOf(edition.lot(entry.id), source.criteria)) }))
  const counted = lots.filter(({ entry }) => entry.state !== 'withdrawn')
  return {
    name: source.name,
    first: names[0] ?? '',
    notCounted: withdrawnNotCounted(lots.length - counted.length),
    against: source.criteria.slice(1).map((id, index) => {
      const { alike, changes, oneSided } = changesBetween(counted, 0, index + 1)
      return {
        set: linked(edition, nameOf(edition, id), paths.sourceUnder(source.id, id)),
        alike: plural(alike, 'lot', 'lots'),
        scope: scopeOf(edition, id),
        changes,
        oneSided: oneSidedWords(oneSided),
      }
    }),
    changed: changedLots(
      edition,
      lots.filter((lot) => lot.changes),
      names,
    ),
  }
}

function verdictsOf({ verdicts }: LotEntry, sets: readonly string[]): (Verdict | null)[] {
  return sets.map((id) => verdicts.find(({ criterion }) => criterion === id) ?? null)
}

/** The newest first. */
function changedLots(edition: Seen, lots: readonly Compared[], names: readonly string[]): ChangedLots | null {
  if (lots.length === 0) return null
  return {
    summary: plural(lots.length, 'lot changes outcome', 'lots change outcome'),
    sets: names.map(unbroken),
    rows: lots
      .toReversed()
      .slice(0, LISTED)
      .map(({ entry, verdicts }) => ({
        lot: { text: entry.number, href: link(edition, paths.certificate(entry.id)) },
        sampled: shortDate(entry.sampled),
        cells: verdicts.map((verdict, index) => ({
          set: names[index] ?? '',
          verdict: verdictCell(edition, entry, verdict),
        })),
      })),
    newest: lots.length > LISTED ? LISTED : null,
  }
}

/** A verdict that is met needs no clause that decided. */
function verdictCell(
  edition: Seen,
  lot: ListedLot,
  verdict: Verdict | null,
): ChangedLot['cells'][number]['verdict'] {
  if (verdict === null) return null
  const { criterion, outcome } = verdict
  return {
    standing: standingOf(edition, lot, criterion),
    decidedBy: outcome === 'meets' ? null : shortfallInWords(edition, verdict),
  }
}

function scopeOf({ criteria }: Seen, id: string): string | null {
  const criterion = criteria.get(id)
  return criterion === undefined ? null : scopeWords(criterion)
}

function nameOf({ criteria }: Seen, id: string): string {
  const criterion = criteria.get(id)
  return criterion === undefined ? id : listedSetName(criterion)
}
