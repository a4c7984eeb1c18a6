/** What the front page shows of each source, and the newest certificates. */
import type { ClauseOutcome, Verdict } from '../../core/criteria/outcome.ts'
import type { Edition, LotEntry, Series, SourceEntry } from '../shape/edition.ts'

export interface SourceSummary {
  readonly source: SourceEntry
  /** Last lot with a certificate, else the last lot. */
  readonly last: LotEntry | null
  readonly verdict: Verdict | null
  /**
   * The comparison that stands for the newest lot with one: where a limit is not met that one, else an
   * activity index that is.
   */
  readonly governing: ClauseOutcome | null
  /** The lot of `governing`. */
  readonly governingLot: LotEntry | null
  /** Results of that comparison's property, condition and age over sampling. */
  readonly series: Series | null
  readonly openFindings: number
}

const TREND_POINTS = 30

export function sourceSummaries(edition: Edition): SourceSummary[] {
  return [...edition.sources.values()].map((source) => {
    const last =
      source.lots.findLast((lot) => lot.state !== 'draft' && lot.state !== 'withdrawn') ??
      source.lots.at(-1) ??
      null
    const verdict = last?.verdicts[0] ?? null
    const governingLot =
      source.lots.findLast(
        (lot) => lot.state !== 'draft' && lot.state !== 'withdrawn' && governingOf(lot) !== null,
      ) ?? null
    const governing = governingLot === null ? null : governingOf(governingLot)
    return {
      source,
      last,
      verdict,
      governing,
      governingLot,
      series: governing === null ? null : seriesOf(source, governing),
      openFindings: source.findings.length + source.lots.reduce((sum, lot) => sum + lot.findings.length, 0),
    }
  })
}

/** Certificates by date of their newest revision, the latest first. */
export function newestCertificates(edition: Edition, count: number): LotEntry[] {
  const issued = [...edition.lots.values()].filter((lot) => lot.revisions.length > 0)
  const key = (lot: LotEntry) => `${lot.revisions.at(-1)?.date ?? ''}|${lot.sampled}|${lot.id}`
  return issued.sort((a, b) => (key(a) < key(b) ? 1 : -1)).slice(0, count)
}

function governingOf(lot: LotEntry): ClauseOutcome | null {
  return lot.verdicts[0] === undefined ? null : governingComparison(lot.verdicts[0])
}

function governingComparison(verdict: Verdict): ClauseOutcome | null {
  const compared = comparisons(verdict.clauses).filter(
    (clause) =>
      clause.kind === 'value' &&
      clause.value !== null &&
      clause.limit !== null &&
      clause.limit.operator !== 'report',
  )
  const index = (clause: ClauseOutcome) =>
    clause.property === 'strength-activity-index' || clause.property === 'resistivity-index'
  const deciding =
    verdict.outcome === 'meets' || verdict.outcome === 'pending'
      ? undefined
      : compared.find((clause) => clause.outcome === verdict.outcome)
  return (
    deciding ??
    compared.find((clause) => index(clause) && clause.outcome === 'meets') ??
    compared.find(index) ??
    compared[0] ??
    null
  )
}

function comparisons(clauses: readonly ClauseOutcome[]): ClauseOutcome[] {
  return clauses.flatMap((clause) => (clause.clauses === undefined ? [clause] : comparisons(clause.clauses)))
}

function seriesOf(source: SourceEntry, clause: ClauseOutcome): Series | null {
  const series = source.series.find(
    (candidate) =>
      candidate.property === clause.property &&
      candidate.condition === clause.condition &&
      candidate.age === clause.age,
  )
  return series === undefined ? null : { ...series, points: series.points.slice(-TREND_POINTS) }
}
