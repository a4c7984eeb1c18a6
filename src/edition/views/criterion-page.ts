/** One set of criteria on its page: scope, layers, limits, clauses, and the lots judged under it. */
import { isActivityOnly } from '../../core/criteria/activity-only.ts'
import { withActivityOf } from '../../core/criteria/replace-activity.ts'
import {
  type Clause,
  type Criterion,
  everyClause,
  isUnconfirmed,
  type Layer,
  layerTitle,
  setName,
} from '../../core/criteria/criterion.ts'
import { benchDay } from '../../core/resistivity/bench-day.ts'
import { reproductionWords } from '../../words/bench-day.ts'
import { documentsOf, mainSourceWords } from '../../words/clause-origins.ts'
import { demandWords } from '../../words/clause-demands.ts'
import { date } from '../../words/dates.ts'
import { kindWords } from '../../words/material-kinds.ts'
import { plural } from '../../words/numbers.ts'
import { fullSentence, sentence, unbroken } from '../../words/sentences.ts'
import { scopeWords } from '../../words/outcomes.ts'
import { riskSentence, ruleWords } from '../../words/rules.ts'
import { type StandingCount, standingCounts } from '../../words/standing.ts'
import { link, paths } from '../shape/addresses.ts'
import type { Edition, ListedSource } from '../shape/edition.ts'
import { type ClauseView, clauseView } from './clause-view.ts'
import { conditionTitle } from '../shape/condition-title.ts'
import { ruleNotes } from '../shape/rule-notes.ts'
import { standingOf } from '../shape/standing.ts'
import { type LimitTable, limitTable } from './limit-table.ts'
import { type Linked, linked } from './linked.ts'
import { studyEvidence } from './study-evidence.ts'

export interface CriterionPage {
  readonly name: string
  readonly authority: string | null
  /** Under a heading that is the designation. */
  readonly title: string | null
  readonly unconfirmed: boolean
  readonly later: Linked | null
  /** In how many places a supplement relaxes its base; null where in none. */
  readonly relaxed: string | null
  readonly note: string | null
  /** That the set judges activity alone; null for a whole specification. */
  readonly scope: string | null
  readonly materials: string
  /** null for a set without classes. */
  readonly classes: string | null
  readonly rule: string
  /** What the rule can decide for no lot; a sentence for each rule. */
  readonly undecided: readonly string[]
  readonly layers: readonly LayerView[]
  readonly limits: LimitTable
  readonly clauses: readonly ClauseView[]
  readonly removed: readonly {
    readonly id: string
    readonly of: string
    readonly by: string
    readonly was: string
  }[]
  readonly lacks: readonly string[]
  /** Conditions of resistivity that it judges by and whose record does not reproduce the test. */
  readonly unreproducible: readonly UnreproducibleView[]
  readonly sources: readonly SourceList[]
  readonly retests: string | null
  readonly counts: readonly SourceOutcomes[]
  /** The comparison with this set chosen, and the same with its activity clause replaced by another set's. */
  readonly compare: string
  readonly replaced: readonly Linked[]
}
export interface UnreproducibleView {
  readonly condition: Linked
  /** How many of the details are recorded. */
  readonly words: string
}
export interface LayerView {
  readonly label: string
  /** The layer with the number of its clauses; null for a set that has no other. */
  readonly layer: { readonly name: Linked; readonly clauses: string } | null
  readonly confirmed: string
}
/** Where a layer's limits were read. */
export interface SourceList {
  /** null for a set that has no other layer. */
  readonly layer: string | null
  /** One sentence; null where every clause says for itself. */
  readonly most: string | null
  readonly documents: readonly string[]
}
/** How many lots of a source stand in which way today, whichever results they await. */
export interface SourceOutcomes {
  readonly source: string
  readonly href: string
  readonly counts: readonly StandingCount[]
}

type Seen = Pick<
  Edition,
  | 'address'
  | 'criteria'
  | 'sources'
  | 'lotsOf'
  | 'laboratories'
  | 'conditions'
  | 'announcedConditions'
  | 'studies'
  | 'study'
>

export function criterionPage(edition: Seen, criterion: Criterion): CriterionPage {
  const titleOf = (id: string) => conditionTitle(edition, id)
  const seen = {
    conditionTitle: titleOf,
    evidenceOf: (clause: Clause) => studyEvidence(edition, clause),
  }
  return {
    name: setName(criterion),
    authority: criterion.authority ?? null,
    title: criterion.designation === undefined ? null : criterion.title,
    unconfirmed: isUnconfirmed(criterion),
    later: laterSet(edition, criterion),
    relaxed: relaxedWords(criterion),
    note: criterion.note ?? null,
    scope: scopeWords(criterion),
    materials: sentence(criterion.kinds.map(kindWords).join(', ')),
    classes: classWords(criterion),
    rule: [ruleWords(criterion.decisionRule), riskSentence(criterion)].map(fullSentence).join(' '),
    undecided: ruleNotes(edition, criterion, titleOf).map(fullSentence),
    layers: criterion.layers.map((layer) => layerView(edition, criterion, layer)),
    limits: limitTable(criterion, titleOf),
    clauses: criterion.clauses.map((clause) => clauseView(clause, criterion, seen)),
    removed: removedClauses(criterion),
    lacks: criterion.lacks,
    unreproducible: unreproducible(edition, criterion),
    sources: sourceLists(criterion),
    retests: criterion.retests ?? null,
    counts: [...edition.sources.values()].flatMap((source) => sourceOutcomes(edition, criterion, source)),
    compare: comparison(edition, { set: criterion.id }),
    replaced: [...edition.criteria.values()]
      .filter((other) => isActivityOnly(other) && !isActivityOnly(criterion))
      .filter((other) => withActivityOf(criterion, other) !== null)
      .map((other) => ({
        text: `With the activity clause of ${setName(other)}`,
        href: comparison(edition, { set: criterion.id, activity: other.id }),
      })),
  }
}

function comparison(edition: Seen, chosen: Readonly<Record<string, string>>): string {
  return `${link(edition, paths.comparison)}?${new URLSearchParams(chosen)}`
}

function laterSet(edition: Seen, { supersededBy }: Criterion): Linked | null {
  const later = supersededBy === undefined ? undefined : edition.criteria.get(supersededBy)
  return later === undefined ? null : linked(edition, setName(later), paths.criterion(later.id))
}

/** A clause taken out is a demand relaxed as well. */
function relaxedWords({ clauses, removed }: Criterion): string | null {
  const relaxed = [...everyClause(clauses)].filter((clause) =>
    clause.changes?.some(({ change }) => change === 'relax'),
  )
  const count = relaxed.length + removed.length
  return count === 0 ? null : plural(count, 'place', 'places')
}

function classWords({ classes, classTitles }: Criterion): string | null {
  return classes.length === 0 ? null : classes.map((name) => `${name}: ${classTitles[name] ?? ''}`).join('; ')
}

function layerView(edition: Seen, criterion: Criterion, { id, confirmed }: Layer): LayerView {
  const own = id === criterion.id
  const alone = criterion.layers.length === 1
  const clauses = criterion.clauses.filter((clause) => clause.layer === id).length
  return {
    label: alone ? 'Limits' : own ? 'This supplement' : 'Extends',
    layer: alone
      ? null
      : {
          name: linked(edition, layerTitle(criterion, id), own ? null : paths.criterion(id)),
          clauses: plural(clauses, 'clause', 'clauses'),
        },
    confirmed:
      confirmed === undefined
        ? 'not checked against the published standard'
        : `checked by ${confirmed.by}, ${date(confirmed.date)}, against edition ${confirmed.edition}`,
  }
}

function removedClauses(criterion: Criterion): CriterionPage['removed'] {
  const name = (layer: string) => layerTitle(criterion, layer)
  return criterion.removed.map(({ id, layer, by, former }) => ({
    id,
    of: name(layer),
    by: name(by),
    was: demandWords(former),
  }))
}

/** Each condition once, in the order of the clauses. */
function unreproducible(edition: Seen, { clauses }: Criterion): UnreproducibleView[] {
  const ids = [...everyClause(clauses)].flatMap((clause) =>
    clause.form === 'comparison' && ON_RESISTIVITY.has(clause.property) ? (clause.condition ?? []) : [],
  )
  return [...new Set(ids)].flatMap((id) => {
    const condition = edition.conditions.get(id)
    const lines = condition === undefined ? [] : benchDay(condition)
    if (condition === undefined || lines.every(({ recorded }) => recorded)) return []
    const recorded = lines.filter((line) => line.recorded).length
    return [
      {
        condition: linked(edition, unbroken(sentence(condition.title)), paths.condition(id)),
        words: reproductionWords(recorded, lines.length),
      },
    ]
  })
}

const ON_RESISTIVITY: ReadonlySet<string> = new Set(['bulk-resistivity', 'resistivity-index'])

function sourceLists(criterion: Criterion): SourceList[] {
  return criterion.layers.flatMap(({ id }) => {
    const documents = documentsOf(id, criterion)
    const layer = criterion.layers.length > 1 ? layerTitle(criterion, id) : null
    const main = mainSourceWords(id, criterion)
    const most =
      main === null ? null : fullSentence(`limits without a remark of their own were read in ${main}`)
    return documents.length === 0 && most === null ? [] : [{ layer, most, documents }]
  })
}

function sourceOutcomes(edition: Seen, { id }: Criterion, source: ListedSource): SourceOutcomes[] {
  const lots = edition
    .lotsOf(source.id)
    .filter(({ outcomes }) => outcomes.some(({ criterion }) => criterion === id))
  if (lots.length === 0) return []
  return [
    {
      source: source.name,
      href: link(edition, paths.sourceUnder(source.id, id)),
      counts: standingCounts(lots.map((lot) => standingOf(edition, lot, id))),
    },
  ]
}
