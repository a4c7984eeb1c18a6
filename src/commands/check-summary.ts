/** The summary of npm run check: how many lots of each source stand in which way, then the findings. */
import type { Finding } from '../core/checks/finding.ts'
import { byReadingOrder } from '../core/checks/reading-order.ts'
import type { Edition, ListedSource } from '../edition/shape/edition.ts'
import { findingNames } from '../edition/shape/finding-names.ts'
import { shipmentCount } from '../edition/shape/shipments-of-sources.ts'
import { standingOf } from '../edition/shape/standing.ts'
import { foundOf } from '../edition/shape/found-of-source.ts'
import { inScope, type ReportScope } from '../edition/writers/check-report.ts'
import { planDigest } from '../records/studies/plan-digest.ts'
import { checksRunWords } from '../words/checks-run.ts'
import { wordedFinding } from '../words/findings.ts'
import { folded } from '../words/folded.ts'
import { plural } from '../words/numbers.ts'
import { NO_READING_YET } from '../words/programme.ts'
import { plainSpaces } from '../words/sentences.ts'
import { standingCounts } from '../words/standing.ts'
import { ruleNoteLines } from './check-rule-notes.ts'
import { trialLines } from './trial-notes.ts'

/** How its source's checks went, in one line. */
export function checksRunLine(edition: Edition, source: string): string {
  return edition.ofSource(source, 'checks in words', () => {
    const { record, checks } = edition.source(source)
    return `${record.name}: ${checksRunWords(checks)}`
  })
}

/** A line for each source and criterion, then the findings. */
export function checkSummary(edition: Edition, scope: ReportScope, most: number): string[] {
  return [
    `As of ${edition.asOf}: ${plural(edition.lots.size, 'lot', 'lots')}, ${plural(shipmentCount(edition), 'shipment', 'shipments')}, ${plural(edition.controls.size, 'control batch', 'control batches')}${edition.studies.size === 0 ? '' : `, ${plural(edition.studies.size, 'study', 'studies')}`}`,
    ...plannedLines(edition),
    ...ruleLines(edition, scope),
    '',
    ...[...edition.sources.values()].flatMap((source) => outcomeLines(edition, source, scope)),
    '',
    ...findingLines(edition, scope, most),
  ]
}

/** Studies without a reading. */
function plannedLines(edition: Edition): string[] {
  return [...edition.studies.keys()]
    .filter((id) => edition.study(id).readings === 0)
    .map((id) => {
      const { record } = edition.study(id)
      const digest = record.plan.digest === undefined ? `; digest of its plan: ${planDigest(record)}` : ''
      return `Study ${id}, ${NO_READING_YET}${digest}`
    })
}

/** Of sets in use alone. */
function ruleLines(edition: Edition, scope: ReportScope): string[] {
  const used = new Set([...edition.sources.values()].flatMap(({ criteria }) => criteria))
  return [...edition.criteria.values()]
    .filter(({ id }) => used.has(id) && (scope.criteria?.has(id) ?? true))
    .flatMap((criterion) => [...trialLines(criterion), ...ruleNoteLines(edition, criterion)])
}

/** How many of a source's lots stand in which way, a line for each criterion. */
function outcomeLines(edition: Edition, { id, criteria }: ListedSource, scope: ReportScope): string[] {
  const lots = edition.lotsOf(id).filter((lot) => inScope(lot, scope))
  return criteria
    .filter((criterion) => scope.criteria?.has(criterion) ?? true)
    .flatMap((criterion) => {
      const judged = lots.filter(({ outcomes }) =>
        outcomes.some((verdict) => verdict.criterion === criterion),
      )
      const counts = standingCounts(judged.map((lot) => standingOf(edition, lot, criterion)))
      if (counts.length === 0) return []
      return [
        `${id}, ${criterion}: ${counts.map(({ standing, count }) => `${count} ${standing.brief}`).join(', ')}`,
      ]
    })
}

function findingLines(edition: Edition, scope: ReportScope, most: number): string[] {
  const { lots } = scope
  const rows = [...edition.lots.values()].filter((lot) => inScope(lot, scope))
  const asked = new Set(rows.map(({ id }) => id))
  const owners = new Set(rows.map(({ source }) => source))
  const ofLots = [...owners].flatMap((source) =>
    foundOf(edition, source).ofLots.flatMap(([lot, findings]) => (asked.has(lot) ? findings : [])),
  )
  const sources = [...edition.sources.keys()].filter(
    (id) => lots === undefined || lots.has(id) || owners.has(id),
  )
  const [named, others] = [true, false].map((whole) =>
    sources
      .filter((id) => (lots === undefined || lots.has(id)) === whole)
      .flatMap((id) => foundOf(edition, id).ofSource),
  ) as [Finding[], Finding[]]
  return [
    ...sources.map((id) => checksRunLine(edition, id)),
    '',
    ...listed(edition, [...named, ...ofLots], ['No findings', 'finding', 'findings'], most),
    ...(others.length === 0 ? [] : ['', ...listed(edition, others, OF_SOURCE, most)]),
  ]
}

/** Where lots were asked for by name: what is found of their source is not theirs alone. */
const OF_SOURCE = ['', 'finding on the source as a whole', 'findings on the source as a whole'] as const

/** The findings in reading order, where they are folded the gravest are seen. */
function listed(
  edition: Edition,
  found: readonly Finding[],
  [none, one, several]: readonly [none: string, one: string, several: string],
  most: number,
): string[] {
  if (found.length === 0) return [none]
  const names = findingNames(edition)
  const findings = found.toSorted(byReadingOrder).map((finding) => wordedFinding(finding, names))
  return [
    `${plural(findings.length, one, several)}:`,
    ...folded(
      findings.map((finding) => [
        `  ${finding.severity}: ${finding.sentence} [${finding.id}]`,
        ...finding.evidence.map((text) => `    ${text}`),
      ]),
      ['finding', 'findings'],
      most,
    ).map(plainSpaces),
  ]
}
