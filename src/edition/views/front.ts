/** What the front page shows of each source, and the newest certificates. */
import { isSameAge } from '../../core/measure/age.ts'
import { property } from '../../core/measure/properties.ts'
import { type Moment, compareMoments } from '../../core/measure/moment.ts'
import type { Outcome } from '../../core/criteria/outcome.ts'
import { type AppliedLimit, everyClauseOutcome, type Verdict } from '../../core/criteria/verdict.ts'
import type { MaterialKind } from '../../core/measure/material-kind.ts'
import { defined } from '../../core/measure/defined.ts'
import { setOfVerdict } from '../../words/outcomes.ts'
import { fixedDigits } from '../../words/numbers.ts'
import { unitSign } from '../../words/unit-signs.ts'
import { printedUnit, type UnitSystem } from '../../words/unit-systems.ts'
import type { LotStanding } from '../../words/standing.ts'
import type { Edition, ListedLot, SeriesPoint } from '../shape/edition.ts'
import type { PrintedStrip } from '../shape/printed-certificate.ts'
import { standingOf } from '../shape/standing.ts'
import { printedStrip } from '../shape/strip.ts'
import { type DueLine, dueLines } from './due.ts'
import { isInForce, lastLot } from './last-lot.ts'
import { type ComparedClause, comparedTitle, isCompared, printedFigure } from './printed-figure.ts'
import { overdueCount, type OverdueLine, overdueLines } from './overdue.ts'
import { sourceQuestions } from './source-questions.ts'
import { partOfSource } from '../shape/part-of-source.ts'

/** A source at a glance. */
export interface SourceGlance {
  readonly id: string
  readonly name: string
  readonly kind: MaterialKind
  readonly class?: string
  /** Name of the producer. */
  readonly producer: string
  readonly lotCount: number
  /** Open questions, as the source's page counts them; null where findings are not published. */
  readonly openFindings: number | null
  /** Results of its lots that are overdue. */
  readonly overdue: number
  /** Last lot with a certificate, else the last lot. */
  readonly last: Pick<ListedLot, 'id' | 'number' | 'sampled'> | null
  /** Its state and governing verdict, and the set of that; null without a lot or where no criterion applies. */
  readonly verdict: { readonly standing: LotStanding; readonly set: string; readonly trial: boolean } | null
  readonly governing: GoverningResult | null
}

/**
 * The comparison that stands for the newest lot with one: where a limit is not met that one, else an activity
 * index that is.
 */
export interface GoverningResult {
  /** Property, condition and age. */
  readonly title: string
  readonly printed: string
  readonly strip: PrintedStrip
  readonly limit: AppliedLimit
  readonly outcome: Outcome
  /** Printed number of its lot where that is not the last one. */
  readonly lotNumber: string | null
  /** Results of that comparison's property, condition and age over sampling; null where none are charted. */
  readonly points: readonly SeriesPoint[] | null
  /** "76.1 to 92.3 %": lowest and highest of the points; null without any. */
  readonly range: string | null
}

export interface NewestCertificate {
  readonly id: string
  readonly number: string
  /** Name of the source. */
  readonly source?: string
  readonly issued: { readonly number: number; readonly date: Moment }
  /** State and governing verdict. */
  readonly standing: LotStanding
  /** The verdict rests on limits that nobody has confirmed. */
  readonly trial: boolean
}

export interface FrontView {
  readonly lotCount: number
  readonly sources: readonly SourceGlance[]
  /** The longest missing first, as many as a front page has room for. */
  readonly overdue: readonly OverdueLine[]
  readonly overdueCount: number
  readonly dueCount: number
  /** How many more are overdue. */
  readonly moreOverdue: number
  /** Results that are due, the next first, as many as there is room for; no line where none is. */
  readonly due: readonly DueLine[]
  readonly moreDue: number
  readonly newest: readonly NewestCertificate[]
}

/** Points of the line beside a source. */
const TREND_POINTS = 30
/** Certificates listed. */
const NEWEST = 10
/** Overdue results listed; the sources' pages have them all. */
const OVERDUE = 8
/** Results due listed; the calendar file has them all. */
const DUE = 8

export function frontView(edition: Edition): FrontView {
  const overdue = overdueLines(edition, edition.lots.values())
  const due = dueLines(edition, edition.lots.values())
  return {
    lotCount: edition.lots.size,
    overdueCount: overdue.length,
    dueCount: due.length,
    sources: [...edition.sources.keys()].map((id) => sourceGlance(edition, id)),
    overdue: overdue.slice(0, OVERDUE),
    moreOverdue: Math.max(0, overdue.length - OVERDUE),
    due: due.slice(0, DUE),
    moreDue: Math.max(0, due.length - DUE),
    newest: newestCertificates(edition),
  }
}

const sourceGlance = partOfSource('glance', (edition: Edition, id): SourceGlance => {
  const { name, kind, class: own, producer } = edition.source(id).record
  const lots = edition.lotsOf(id)
  const last = lastLot(lots) ?? null
  return defined({
    id,
    name,
    kind,
    class: own,
    producer: edition.producers.get(producer)?.name ?? producer,
    lotCount: lots.length,
    openFindings: openQuestions(edition, id),
    overdue: overdueCount(lots),
    last,
    verdict: last === null ? null : glanceVerdict(edition, last),
    governing: governingResult(edition, lots, last),
  })
})

function openQuestions(edition: Edition, source: string): number | null {
  const { published, more } = sourceQuestions(edition, edition.source(source), { most: 0 })
  return published ? more : null
}

function glanceVerdict(edition: Edition, lot: ListedLot): SourceGlance['verdict'] {
  const [verdict] = edition.lot(lot.id).verdicts
  const criterion = verdict && edition.criteria.get(verdict.criterion)
  if (verdict === undefined || criterion === undefined) return null
  return {
    standing: standingOf(edition, lot),
    set: setOfVerdict(verdict, criterion),
    trial: verdict.trial,
  }
}

function governingResult(
  edition: Edition,
  lots: readonly ListedLot[],
  last: ListedLot | null,
): GoverningResult | null {
  for (const lot of lots.filter(isInForce).reverse()) {
    const [verdict] = edition.lot(lot.id).verdicts
    const clause = verdict === undefined ? null : governingComparison(verdict)
    if (clause === null) continue
    return {
      title: comparedTitle(edition, clause),
      strip: printedStrip(clause.limit, clause.bounds === undefined ? clause.value : null) ?? {},
      printed: printedFigure(clause, edition.site.units),
      limit: clause.limit,
      outcome: clause.outcome,
      lotNumber: lot === last ? null : lot.number,
      ...drawnOf(pointsOf(edition, lot.source, clause), clause, edition.site.units),
    }
  }
  return null
}

function drawnOf(
  points: readonly SeriesPoint[] | null,
  clause: ComparedClause,
  units: UnitSystem,
): { points: readonly SeriesPoint[] | null; range: string | null } {
  const values = (points ?? []).flatMap(({ value }) => value ?? [])
  if (values.length === 0) return { points, range: null }
  const { decimals } = property(clause.property)
  const unit = printedUnit(clause.unit ?? '', decimals, units)
  const ends = [values.reduce((a, b) => Math.min(a, b)), values.reduce((a, b) => Math.max(a, b))]
  const [low, high] = ends.map((end) => fixedDigits(unit.of(end), unit.decimals))
  return { points, range: `${low} to ${high} ${unitSign(unit.unit)}` }
}

function governingComparison(verdict: Verdict): ComparedClause | null {
  const compared = [...everyClauseOutcome(verdict.clauses)]
    .filter(({ clauses }) => clauses === undefined)
    .filter(isCompared)
    .filter(({ kind }) => kind === 'value')
  const deciding =
    verdict.outcome === 'meets' || verdict.outcome === 'pending'
      ? undefined
      : compared.find((clause) => clause.outcome === verdict.outcome)
  const indices = compared.filter(
    (clause) => clause.property === 'strength-activity-index' || clause.property === 'resistivity-index',
  )
  const met = indices.find((clause) => clause.outcome === 'meets')
  return deciding ?? met ?? indices[0] ?? compared[0] ?? null
}

function pointsOf(edition: Edition, source: string, clause: ComparedClause): readonly SeriesPoint[] | null {
  const series = edition
    .source(source)
    .series.find(
      (candidate) =>
        candidate.property === clause.property &&
        candidate.condition === clause.condition &&
        isSameAge(candidate.age, clause.age),
    )
  return series === undefined ? null : series.points.slice(-TREND_POINTS)
}

type IssuedLot = ListedLot & { readonly issued: NonNullable<ListedLot['issued']> }

/** Certificates by date of their newest revision, the latest first. */
function newestCertificates(edition: Edition): NewestCertificate[] {
  const { lots, sources } = edition
  return [...lots.values()]
    .filter(isIssued)
    .sort(newestFirst)
    .slice(0, NEWEST)
    .map((lot) =>
      defined({
        id: lot.id,
        number: lot.number,
        source: sources.get(lot.source)?.name,
        issued: lot.issued,
        standing: standingOf(edition, lot),
        trial: onTrial(edition, lot.source).includes(lot.id),
      }),
    )
}

/** Those of a source's newest certificates whose governing verdict is a trial judgement. */
const onTrial = partOfSource('newest on trial', (edition: Edition, source): readonly string[] =>
  edition
    .lotsOf(source)
    .filter(isIssued)
    .sort(newestFirst)
    .slice(0, NEWEST)
    .filter(({ id }) => edition.lot(id).verdicts[0]?.trial === true)
    .map(({ id }) => id),
)

function isIssued(lot: ListedLot): lot is IssuedLot {
  return lot.issued !== null
}

function newestFirst(a: IssuedLot, b: IssuedLot): number {
  return (
    compareMoments(b.issued.date, a.issued.date) ||
    compareMoments(b.sampled, a.sampled) ||
    (a.id < b.id ? 1 : -1)
  )
}
