/** npm run check: reads, computes, reports; writes nothing. */
import type { Moment } from '../core/measure/moment.ts'
import { defined } from '../core/measure/defined.ts'
import { checksRunWords } from '../words/checks-run.ts'
import { wordedFinding } from '../words/findings.ts'
import { clauseSentence } from '../words/clause-sentences.ts'
import { type Criterion, everyClause, setName } from '../core/criteria/criterion.ts'
import { CHANGE_WORDS } from '../words/clause-changes.ts'
import { mainSourceWords } from '../words/clause-origins.ts'
import { plural, countWords } from '../words/numbers.ts'
import { demandWords } from '../words/clause-demands.ts'
import { riskSentence, ruleWords } from '../words/rules.ts'
import { plainSpaces } from '../words/sentences.ts'
import { CODES, isCode } from '../records/diagnostics/codes.ts'
import { explanationText } from '../records/diagnostics/explanation-text.ts'
import { inOrder } from '../records/diagnostics/diagnostic-text.ts'
import { nearNames } from '../records/diagnostics/near-names.ts'
import { hasSite, type Records } from '../records/load.ts'
import { checkReport, type ReportScope } from '../edition/writers/check-report.ts'
import { computeEdition } from '../edition/compute.ts'
import { standingCounts } from '../words/standing.ts'
import { findingNames } from '../edition/shape/finding-names.ts'
import { ruleNotes } from '../edition/shape/rule-notes.ts'
import { standingOf } from '../edition/shape/standing.ts'
import { conditionTitle } from '../edition/shape/condition-title.ts'
import type { Edition, ListedSource } from '../edition/shape/edition.ts'
import { issuedState } from '../edition/writers/manifest.ts'
import { forAudience } from '../edition/publishing.ts'
import { planDigest } from '../records/studies/plan-digest.ts'
import { NO_READING_YET } from '../words/programme.ts'
import { answerWarnings } from './answer-warnings.ts'
import { heldAgainst } from './compare-sites.ts'
import { manifestAt } from './earlier-sites.ts'
import { command, CommandFailure, dateOption, EXIT, comparing, PROGRAM, run, today } from './program.ts'
import { printDiagnostics, readContent } from './read-content.ts'

interface Options {
  content: string
  json?: boolean
  asOf?: Moment
  lots?: string[]
  criteria?: string[]
  explain?: string
  explainCode?: string
  all?: boolean
  compact?: boolean
  against?: string
  accept?: string[]
}

await run(() => {
  const program = comparing(command('check', 'Read all records, compute and judge every lot, and report.'))
    .option('--json', 'one JSON document on standard output (schemas/check.json)')
    .option('--as-of <date>', 'read the records as of this date', dateOption)
    .option('--lots <ids...>', 'only these lots (SOURCE/LOT) or sources')
    .option('--criteria <ids...>', 'only these criteria')
    .option(
      '--explain <criterion>',
      'print what each clause requires, one sentence each, for proof-reading (CRITERION or CRITERION/CLAUSE)',
    )
    .option('--explain-code <code>', 'print what a diagnostic means, with an example and its fix')
    .option('--all', 'print every diagnostic, not only a screen of them')
    .option('--compact', 'print each diagnostic on one line: file:line:column: severity: message [code]')
    .parse()
  const options = program.opts<Options>()
  if (options.explainCode !== undefined) {
    process.stdout.write(explainedCode(options.explainCode))
    return EXIT.well
  }
  const form = options.compact === true ? 'compact' : options.all === true ? 'all' : 'screen'
  const read = readContent(options.content)
  if (options.explain !== undefined) {
    printDiagnostics(read, form)
    process.stdout.write(explained(read.records, options.explain))
    return read.errors > 0 ? EXIT.failed : EXIT.well
  }
  const edition = hasSite(read.records)
    ? computeEdition(read.records, defined({ program: PROGRAM, asOf: options.asOf, today: today() }))
    : null
  const warnings = edition === null ? [] : answerWarnings(edition, read.records)
  const content = { ...read, diagnostics: inOrder([...read.diagnostics, ...warnings]) }
  const scope: ReportScope = defined({
    lots: options.lots && new Set(options.lots),
    criteria: options.criteria && new Set(options.criteria),
  })
  // A lot with a fault is not among what was judged, and its diagnostics say why.
  if (edition !== null && content.errors === 0) refuseUnknown(edition, options)
  if (options.json === true)
    for (const piece of checkReport(edition, content.diagnostics, scope)) process.stdout.write(piece)
  else {
    printDiagnostics(content, form)
    if (edition !== null) process.stdout.write(summary(edition, scope))
  }
  if (edition !== null && options.against !== undefined) compareWith(options.against, edition, options)
  return content.errors > 0 ? EXIT.failed : EXIT.well
})

/** @throws CommandFailure for a code that no diagnostic has */
function explainedCode(code: string): string {
  if (isCode(code)) return explanationText(code)
  throw new CommandFailure(
    `There is no diagnostic of the code "${code}".`,
    EXIT.wrongUse,
    nearNames(code, Object.keys(CODES)) || 'write the code as it stands in brackets behind the diagnostic',
  )
}

/** @throws CommandFailure for a certificate that the site has and the records have not, or have otherwise */
function compareWith(against: string, edition: Edition, { accept = [] }: Options): void {
  const before = manifestAt(against)
  const state = issuedState(forAudience(edition, before.audience))
  const lines = heldAgainst(before, state, { from: against, accept })
  process.stderr.write(lines.map((line) => `${line}\n`).join(''))
}

/** @throws CommandFailure for a lot, source or set that is not among what was judged */
function refuseUnknown(edition: Edition, { lots = [], criteria = [] }: Options): void {
  const refuse = (what: string, name: string, known: Iterable<string>) => {
    throw new CommandFailure(
      `There is no ${what} "${name}" as of ${edition.asOf}.`,
      EXIT.wrongUse,
      nearNames(name, [...known]) || `name a ${what} on record`,
    )
  }
  for (const name of lots)
    if (!edition.lots.has(name) && !edition.sources.has(name))
      refuse('lot or source', name, [...edition.lots.keys(), ...edition.sources.keys()])
  for (const name of criteria)
    if (!edition.criteria.has(name)) refuse('criterion', name, edition.criteria.keys())
}

/**
 * The sentences of a set, or of one clause of it with its members. @throws CommandFailure for a set or clause
 * that is not on record
 */
function explained(records: Records, asked: string): string {
  const [id = '', clauseId] = asked.split('/')
  const criterion = records.criteria.get(id)
  if (criterion === undefined)
    throw new CommandFailure(
      `There is no criterion "${id}", or its record has a fault.`,
      EXIT.wrongUse,
      `name one of ${[...records.criteria.keys()].join(', ')}`,
    )
  const clauses =
    clauseId === undefined
      ? criterion.clauses
      : [...everyClause(criterion.clauses)].filter((clause) => clause.id === clauseId)
  if (clauses.length === 0)
    throw new CommandFailure(
      `The specification ${id} has no clause "${clauseId}".`,
      EXIT.wrongUse,
      `name one of ${[...everyClause(criterion.clauses)].map((clause) => clause.id).join(', ')}`,
    )
  const head = [
    setName(criterion),
    ...(criterion.layers.length < 2
      ? []
      : [`Layers: ${criterion.layers.map((layer) => layer.id).join(', then ')}`]),
    `Decision rule: ${ruleWords(criterion.decisionRule)}; ${riskSentence(criterion)}`,
    ...noteLines(records, criterion),
    ...readIn(criterion),
  ]
  const lines = clauses.map((clause) => {
    const changes = (clause.changes ?? [])
      .map(
        (change) =>
          `\n    ${CHANGE_WORDS[change.change].toLowerCase()} by ${change.layer}; before: ${demandWords(change.former)}`,
      )
      .join('')
    const layer = clause.layer === criterion.id ? '' : ` (${clause.layer})`
    const asked = clauseSentence(clause, criterion, (condition) => conditionTitle(records, condition))
    return `  ${clause.id}${layer}: ${asked}${changes}`
  })
  const removed =
    clauseId === undefined
      ? criterion.removed.map(
          (clause) => `  ${clause.id}: removed by ${clause.by}; it required: ${demandWords(clause.former)}`,
        )
      : []
  const lacks =
    clauseId === undefined && criterion.lacks.length > 0
      ? ['', 'Left out of this set:', ...criterion.lacks.map((text) => `  ${text}`)]
      : []
  return `${[...head, '', ...lines, ...removed, ...lacks].join('\n')}\n`
}

/** Where the limits were read that say nothing of their own, a line for each layer. */
function readIn(criterion: Criterion): string[] {
  return criterion.layers.flatMap(({ id }) => {
    const main = mainSourceWords(id, criterion)
    return main === null ? [] : [`${id}: limits without a remark of their own were read in ${main}`]
  })
}

/** A line for each source and criterion, then the findings. */
function summary(edition: Edition, scope: ReportScope): string {
  const lines = [
    `As of ${edition.asOf}: ${plural(edition.lots.size, 'lot', 'lots')}, ${plural(edition.shipments.length, 'shipment', 'shipments')}, ${plural(edition.controls.size, 'control batch', 'control batches')}${edition.studies.size === 0 ? '' : `, ${plural(edition.studies.size, 'study', 'studies')}`}`,
    ...plannedLines(edition),
    ...ruleLines(edition, scope),
    '',
    ...[...edition.sources.values()].flatMap((source) => outcomeLines(edition, source, scope)),
    '',
    ...findingLines(edition),
  ]
  return `${lines.join('\n')}\n`
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

/** Of sets in use, what their decision rule leaves open for every lot: once, and not for each lot. */
function ruleLines(edition: Edition, scope: ReportScope): string[] {
  const used = new Set([...edition.sources.values()].flatMap(({ criteria }) => criteria))
  return [...edition.criteria.values()]
    .filter(({ id }) => used.has(id) && (scope.criteria?.has(id) ?? true))
    .flatMap((criterion) => noteLines(edition, criterion))
}

function noteLines(
  records: Pick<Records, 'laboratories' | 'conditions' | 'announcedConditions'>,
  criterion: Criterion,
): string[] {
  const notes = ruleNotes(records, criterion, (condition) => conditionTitle(records, condition))
  return notes.map((note) => plainSpaces(`${criterion.id}: ${note}`))
}

/** How many of a source's lots stand in which way, a line for each criterion. */
function outcomeLines(edition: Edition, { id, criteria }: ListedSource, scope: ReportScope): string[] {
  const lots = edition
    .lotsOf(id)
    .filter((lot) => scope.lots === undefined || scope.lots.has(lot.id) || scope.lots.has(id))
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

function findingLines(edition: Edition): string[] {
  const ofLots = [...edition.lots.values()].flatMap((lot) =>
    lot.findingCount === 0 ? [] : edition.lot(lot.id).findings,
  )
  const sources = [...edition.sources.keys()].map((id) => edition.source(id))
  const names = findingNames(edition)
  const findings = [...sources.flatMap((source) => source.findings), ...ofLots].map((finding) =>
    wordedFinding(finding, names),
  )
  return [
    ...sources.map((source) => `${source.record.name}: ${checksRunWords(source.checks)}`),
    '',
    findings.length === 0 ? 'No findings' : `${countWords(findings.length, 'finding')}:`,
    ...findings
      .flatMap((finding) => [
        `  ${finding.severity}: ${finding.sentence} [${finding.id}]`,
        ...finding.evidence.map((text) => `    ${text}`),
      ])
      .map(plainSpaces),
  ]
}
