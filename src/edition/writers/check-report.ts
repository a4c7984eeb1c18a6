/** The machine-readable check report (schemas/check.json), written lot by lot. */
import type { ChecksRun } from '../../core/checks/checked.ts'
import { defined } from '../../core/measure/defined.ts'
import type { Finding } from '../../core/checks/finding.ts'
import type { Diagnostic } from '../../records/diagnostics/diagnostic.ts'
import type { Edition, ListedLot, LotEntry } from '../shape/edition.ts'
import { listedLot } from '../shape/listing.ts'
import { findingNames } from '../shape/finding-names.ts'
import { oncePerSource, type PerSource } from '../shape/once-per-source.ts'
import { standingData } from '../shape/standing.ts'
import type { FindingNames } from '../../words/finding-names.ts'
import { wordedFinding } from '../../words/findings.ts'
import { plainSpaces } from '../../words/sentences.ts'
import { foundOf } from '../shape/found-of-source.ts'
import { agencyData } from './agency-data.ts'
import { laboratoryStatistics, sourceStatistics } from './history-data.ts'
import { resultData } from './lot-data.ts'
import { PackedLines } from './packed-lines.ts'
import { studyData } from './study-data.ts'
import { lotVerdictData } from './verdict-data.ts'

export interface ReportScope {
  /** Lots or sources by id; all without it. */
  readonly lots?: ReadonlySet<string>
  readonly criteria?: ReadonlySet<string>
}

/** What a source and its lots are reported with, but for findings, whose words name lots of other sources. */
interface SourceTexts {
  /** Ids of the lots in scope, in order of sampling. */
  readonly ids: readonly string[]
  /** A JSON object for each of them. */
  readonly lots: PackedLines
  /** Members before the findings and behind them, as JSON objects. */
  readonly source: PackedLines
}

/** Made from one source at a time: its lots are needed for it, and for nothing after it. */
export type ReportedSource = PerSource<SourceTexts>

export function reportedSource(scope: ReportScope): ReportedSource {
  return oncePerSource((edition, source) => {
    const ids = edition.lotsOf(source).flatMap((row) => (inScope(row, scope) ? [row.id] : []))
    const texts: SourceTexts = { ids, lots: new PackedLines(), source: new PackedLines() }
    for (const lot of ids) texts.lots.add(JSON.stringify(lotReport(edition, edition.lot(lot), scope)))
    const { id, series, history, agency, checks } = edition.source(source)
    texts.source.add(JSON.stringify({ id, history: series, statistics: sourceStatistics(history()) }))
    texts.source.add(JSON.stringify({ agency: agencyData(agency()), checks: checksData(checks) }))
    foundOf(edition, source)
    return texts
  })
}

/**
 * @param edition null where the records could not be read at all
 * @returns pieces of one JSON document, in order
 */
export function* checkReport(
  edition: Edition | null,
  diagnostics: readonly Diagnostic[],
  scope: ReportScope = {},
  reported: ReportedSource = reportedSource(scope),
): Generator<string> {
  yield `{"format":1,"asOf":${JSON.stringify(edition?.asOf ?? null)},"diagnostics":${JSON.stringify(diagnostics.map(diagnosticData))},"lots":[`
  if (edition !== null) yield* listed(lotReports(edition, reported), '\n')
  yield '],"sources":['
  if (edition !== null) yield* listed(sourceReports(edition, reported), '')
  yield '],"laboratories":['
  if (edition !== null) yield* listed(asJson(laboratoryReports(edition)), '')
  yield '],"studies":['
  if (edition !== null) yield* listed(asJson(studyReports(edition)), '\n')
  yield ']}\n'
}

/** The members of a JSON array, each after `before`. */
function* listed(members: Iterable<string>, before: string): Generator<string> {
  let separator = ''
  for (const member of members) {
    yield `${separator}${before}${member}`
    separator = ','
  }
}

function* asJson(members: Iterable<unknown>): Generator<string> {
  for (const member of members) yield JSON.stringify(member)
}

function* lotReports(edition: Edition, reported: ReportedSource): Generator<string> {
  const names = findingNames(edition)
  for (const source of edition.sources.keys()) {
    const found = new Map(foundOf(edition, source).ofLots)
    const { ids, lots } = reported(edition, source)
    const left = ids.values()
    for (const report of lots.lines()) {
      const findings = (found.get(left.next().value ?? '') ?? []).map((finding) =>
        findingData(finding, names),
      )
      yield together(report, JSON.stringify({ findings }))
    }
  }
}

function* sourceReports(edition: Edition, reported: ReportedSource): Generator<string> {
  const names = findingNames(edition)
  for (const source of edition.sources.keys()) {
    const findings = foundOf(edition, source).ofSource.map((finding) => findingData(finding, names))
    const [before = '{}', behind = '{}'] = reported(edition, source).source.lines()
    yield together(before, JSON.stringify({ findings }), behind)
  }
}

/** One JSON object with the members of several, each of which has some. */
function together(...objects: readonly string[]): string {
  return `{${objects.map((object) => object.slice(1, -1)).join(',')}}`
}

function* laboratoryReports(edition: Edition): Generator<unknown> {
  const names = findingNames(edition)
  for (const id of edition.laboratories.keys()) {
    const findings = edition.laboratoryFindings(id).map((finding) => findingData(finding, names))
    yield { ...laboratoryStatistics(edition.laboratoryHistory(id)), findings }
  }
}

function* studyReports(edition: Edition): Generator<unknown> {
  for (const id of edition.studies.keys()) yield studyData(edition.study(id))
}

/** Whether a lot is asked for, itself or by its source. */
export function inScope(lot: Pick<ListedLot, 'id' | 'source'>, { lots }: ReportScope): boolean {
  return lots === undefined || lots.has(lot.id) || lots.has(lot.source)
}

function diagnosticData(diagnostic: Diagnostic): Diagnostic {
  const { code, severity, file, line, column, message, mend } = diagnostic
  const related = diagnostic.related?.map((place) => ({
    ...{ file: place.file, line: place.line, column: place.column, message: place.message },
  }))
  return { code, severity, file, line, column, message, mend, ...defined({ related }) }
}

function lotReport(edition: Edition, lot: LotEntry, { criteria }: ReportScope): Record<string, unknown> {
  return {
    id: lot.id,
    source: lot.source,
    revision: lot.revisions.at(-1)?.number ?? null,
    ...standingData(edition, listedLot(lot)),
    results: lot.results.map(resultData),
    verdicts: lot.verdicts
      .filter((verdict) => criteria === undefined || criteria.has(verdict.criterion))
      .map((verdict) => lotVerdictData(edition, lot, verdict)),
  }
}

function checksData({ run, lots, tests, looks, expectedByChance }: ChecksRun): Record<string, unknown> {
  return { run, lots, tests, expectedByChance, looks }
}

/** A finding in words, with its reason as data beside them. */
function findingData(finding: Finding, names: FindingNames): Record<string, unknown> {
  const { sentence, evidence, ...worded } = wordedFinding(finding, names)
  return {
    ...worded,
    sentence: plainSpaces(sentence),
    evidence: evidence.map(plainSpaces),
    reasonCodes: [finding.reason],
  }
}
