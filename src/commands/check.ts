/** npm run check: reads, computes, reports; writes nothing. */
import { defined } from '../core/measure/defined.ts'
import { sourceOf } from '../core/measure/lot-id.ts'
import type { Moment } from '../core/measure/moment.ts'
import { forAudience } from '../edition/publishing.ts'
import type { Edition } from '../edition/shape/edition.ts'
import { checkedLots, type CheckedSource, checkedSource } from '../edition/views/check-lots.ts'
import { checkReport, reportedSource, type ReportScope } from '../edition/writers/check-report.ts'
import { issuedState } from '../edition/writers/manifest.ts'
import { type FaultyRecord, faultyRecords } from '../records/checks/faulty-records.ts'
import { inOrder } from '../records/diagnostics/diagnostic-text.ts'
import { EXPLAINED_CODES, isExplained } from '../records/diagnostics/explanations.ts'
import { explanationText } from '../records/diagnostics/explanation-text.ts'
import { nearNames } from '../records/diagnostics/near-names.ts'
import { folded, SCREEN_LINES } from '../words/folded.ts'
import { countWords } from '../words/numbers.ts'
import { answerWarnings } from './answer-warnings.ts'
import { checkedEdition, faultsOf } from './check-edition.ts'
import { explained } from './check-explain.ts'
import { checkSummary, checksRunLine } from './check-summary.ts'
import { heldAgainst } from './compare-sites.ts'
import { manifestAt } from './earlier-sites.ts'
import { command, CommandFailure, dateOption, EXIT, comparing, run } from './program.ts'
import { printDiagnostics, type ReadContent, readContent } from './read-content.ts'

interface Options {
  content: string
  json?: boolean
  all?: boolean
  asOf?: Moment
  lots?: string[]
  criteria?: string[]
  explain?: string
  explainCode?: string
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
    .option('--all', 'print every diagnostic, lot and finding, not only a screen of them')
    .option('--compact', 'print each diagnostic on one line: file:line:column: severity: message [code]')
    .parse()
  const options = program.opts<Options>()
  if (options.explainCode !== undefined) {
    process.stdout.write(explainedCode(options.explainCode))
    return EXIT.well
  }
  const form = options.compact === true ? 'compact' : options.all === true ? 'all' : 'screen'
  const read = readContent(options.content, defined({ asked: options.asOf }))
  if (options.explain !== undefined) {
    printDiagnostics(read, form)
    process.stdout.write(explained(read.records, options.explain))
    return read.errors > 0 ? EXIT.failed : EXIT.well
  }
  const scope: ReportScope = defined({
    lots: options.lots && new Set(options.lots),
    criteria: options.criteria && new Set(options.criteria),
  })
  const reported = reportedSource(scope)
  const checked = checkedSource(faultsOf(read), scope)
  const ofSource = options.json === true ? [reported] : [checked, checksRunLine]
  const edition = checkedEdition(read.records, options, ofSource)
  const warnings = edition === null ? [] : answerWarnings(edition, read.records)
  const content = { ...read, diagnostics: inOrder([...read.diagnostics, ...warnings]) }
  refuseUnknown(content, edition, options)
  if (options.json === true)
    for (const piece of checkReport(edition, content.diagnostics, scope, reported))
      process.stdout.write(piece)
  else {
    printDiagnostics(content, form)
    const most = options.all === true ? Number.POSITIVE_INFINITY : SCREEN_LINES
    if (edition !== null) process.stdout.write(report(content, edition, { scope, checked, most }))
  }
  if (edition !== null && options.against !== undefined) compareWith(options.against, edition, options)
  return content.errors > 0 ? EXIT.failed : EXIT.well
})

/** @throws CommandFailure for a code that no diagnostic has */
function explainedCode(code: string): string {
  if (isExplained(code)) return explanationText(code)
  throw new CommandFailure(
    `There is no diagnostic of the code "${code}".`,
    EXIT.wrongUse,
    nearNames(code, Object.keys(EXPLAINED_CODES)) ||
      'write the code as it stands in brackets behind the diagnostic',
  )
}

/** @throws CommandFailure for a certificate that the site has and the records have not, or have otherwise */
function compareWith(against: string, edition: Edition, { accept = [] }: Options): void {
  const before = manifestAt(against)
  const state = issuedState(forAudience(edition, before.audience))
  const days = { before: before.asOf, after: edition.asOf.text }
  const lines = heldAgainst(before, state, { from: against, accept, days })
  process.stderr.write(lines.map((line) => `${line}\n`).join(''))
}

/** What is asked for must be on record; a record with a fault is, and its diagnostics say why it was not judged. */
function refuseUnknown(
  content: ReadContent,
  edition: Edition | null,
  { lots = [], criteria = [] }: Options,
): void {
  const { records } = content
  const faulty = faultyRecords(content.diagnostics)
  const ofKind = (...kinds: readonly FaultyRecord['kind'][]) =>
    faulty.flatMap(({ kind, id }) => (kinds.includes(kind) ? [id] : []))
  const judged = edition ?? { lots: records.lots, sources: records.sources, criteria: records.criteria }
  const unjudged = [...records.lots.keys()].filter((id) => !judged.sources.has(sourceOf(id)))
  const sets = [...records.sources.values()].flatMap((source) => source.criteria?.map(({ set }) => set) ?? [])
  const known = {
    'lot or source': new Set([
      ...judged.lots.keys(),
      ...judged.sources.keys(),
      ...unjudged,
      ...ofKind('lot', 'source'),
    ]),
    criterion: new Set([
      ...judged.criteria.keys(),
      ...ofKind('criterion'),
      ...records.site.criteria,
      ...sets,
    ]),
  }
  const refuse = (what: keyof typeof known, names: readonly string[]) => {
    for (const name of names)
      if (!known[what].has(name))
        throw new CommandFailure(
          `There is no ${what} "${name}"${edition === null ? '' : ` as of ${edition.asOf}`}.`,
          EXIT.wrongUse,
          nearNames(name, known[what]) || `name a ${what} on record`,
        )
  }
  refuse('lot or source', lots)
  refuse('criterion', criteria)
}

interface Reported {
  readonly scope: ReportScope
  readonly checked: CheckedSource
  readonly most: number
}

/** Each lot, then the summary, as far as anything could be judged. */
function report(content: ReadContent, edition: Edition, { scope, checked, most }: Reported): string {
  const lots = checkedLots(edition, faultsOf(content), scope, checked)
  const listed = lots.map(({ lines: [head = '', ...rest] }) => [
    `  ${head}`,
    ...rest.map((line) => `    ${line}`),
  ])
  const lines = [
    ...(content.errors === 0
      ? []
      : [
          `${countWords(content.errors, 'error')}: what is at fault was not judged, and what follows is without it.`,
          '',
        ]),
    `${countWords(lots.length, 'lot')}, those that need something first, then the newest:`,
    ...folded(listed, ['lot', 'lots'], most),
    '',
    ...checkSummary(edition, scope, most),
  ]
  return `${lines.join('\n')}\n`
}
