/** The machine-readable check report (schemas/check.json), written lot by lot. */
import type { ChecksRun } from '../../core/checks/checked.ts'
import { defined } from '../../core/measure/defined.ts'
import type { Finding } from '../../core/checks/finding.ts'
import type { Diagnostic } from '../../records/diagnostics/diagnostic.ts'
import type { Edition, ListedLot, LotEntry } from '../shape/edition.ts'
import { listedLot } from '../shape/listing.ts'
import { findingNames } from '../shape/finding-names.ts'
import { standingData } from '../shape/standing.ts'
import type { FindingNames } from '../../words/finding-names.ts'
import { wordedFinding } from '../../words/findings.ts'
import { plainSpaces } from '../../words/sentences.ts'
import { agencyData } from './agency-data.ts'
import { laboratoryStatistics, sourceStatistics } from './history-data.ts'
import { resultData } from './lot-data.ts'
import { studyData } from './study-data.ts'
import { lotVerdictData } from './verdict-data.ts'

export interface ReportScope {
  /** Lots or sources by id; all without it. */
  readonly lots?: ReadonlySet<string>
  readonly criteria?: ReadonlySet<string>
}

/**
 * @param edition null where the records could not be read at all
 * @returns pieces of one JSON document, in order
 */
export function* checkReport(
  edition: Edition | null,
  diagnostics: readonly Diagnostic[],
  scope: ReportScope = {},
): Generator<string> {
  yield `{"format":1,"asOf":${JSON.stringify(edition?.asOf ?? null)},"diagnostics":${JSON.stringify(diagnostics.map(diagnosticData))},"lots":[`
  if (edition !== null) yield* listed(lotReports(edition, scope), '\n')
  yield '],"sources":['
  if (edition !== null) yield* listed(sourceReports(edition), '')
  yield '],"laboratories":['
  if (edition !== null) yield* listed(laboratoryReports(edition), '')
  yield '],"studies":['
  if (edition !== null) yield* listed(studyReports(edition), '\n')
  yield ']}\n'
}

/** The members of a JSON array, each after `before`. */
function* listed(members: Iterable<unknown>, before: string): Generator<string> {
  let separator = ''
  for (const member of members) {
    yield `${separator}${before}${JSON.stringify(member)}`
    separator = ','
  }
}

function* lotReports(edition: Edition, scope: ReportScope): Generator<unknown> {
  const names = findingNames(edition)
  for (const row of edition.lots.values()) {
    if (!inScope(row, scope)) continue
    const lot = edition.lot(row.id)
    const findings = lot.findings.map((finding) => findingData(finding, names))
    yield { ...lotReport(edition, lot, scope), findings }
  }
}

function* sourceReports(edition: Edition): Generator<unknown> {
  const names = findingNames(edition)
  for (const id of edition.sources.keys()) {
    const { series, history, findings, agency, checks } = edition.source(id)
    yield {
      id,
      history: series,
      statistics: sourceStatistics(history()),
      findings: findings.map((finding) => findingData(finding, names)),
      agency: agencyData(agency()),
      checks: checksData(checks),
    }
  }
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
