/** npm run check: reads, computes, reports; writes nothing. */
import { hasSite } from '../records/load.ts'
import { checkReport, type ReportScope } from '../edition/check-report.ts'
import { computeEdition } from '../edition/compute.ts'
import type { Edition } from '../edition/edition.ts'
import type { Outcome } from '../core/verdict.ts'
import { command, dateOption, EXIT, PROGRAM, run } from './program.ts'
import { printDiagnostics, readContent } from './read-content.ts'

interface Options { content: string; json?: boolean; asOf?: string; lots?: string[]; criteria?: string[] }

await run(() => {
  const program = command('check', 'Read all records, compute and judge every lot, and report.')
    .option('--json', 'one JSON document on standard output (schemas/check.json)')
    .option('--as-of <date>', 'read the records on this date', dateOption)
    .option('--lots <ids...>', 'only these lots (SOURCE/LOT) or sources')
    .option('--criteria <ids...>', 'only these criteria')
    .parse()
  const options = program.opts<Options>()
  const content = readContent(options.content)
  const edition = hasSite(content.records) ? computeEdition(content.records, { program: PROGRAM, ...(options.asOf === undefined ? {} : { asOf: options.asOf }) }) : null
  const scope: ReportScope = {
    ...(options.lots === undefined ? {} : { lots: new Set(options.lots) }), ...(options.criteria === undefined ? {} : { criteria: new Set(options.criteria) }),
  }
  if (options.json === true) for (const piece of checkReport(edition, content.diagnostics, scope)) process.stdout.write(piece)
  else {
    printDiagnostics(content)
    if (edition !== null) process.stdout.write(summary(edition, scope))
  }
  return content.errors > 0 ? EXIT.failed : EXIT.well
})

/** A line for each source and criterion, then the findings. */
function summary(edition: Edition, scope: ReportScope): string {
  const lines = [`As of ${edition.asOf}: ${edition.lots.size} lots, ${edition.shipments.length} shipments, ${edition.controls.size} control batches`, '']
  for (const source of edition.sources.values()) {
    for (const criterion of source.criteria.filter((id) => scope.criteria?.has(id) ?? true)) {
      const counts = new Map<Outcome, number>()
      for (const lot of source.lots.filter((candidate) => scope.lots === undefined || scope.lots.has(candidate.id) || scope.lots.has(source.id))) {
        const outcome = lot.verdicts.find((verdict) => verdict.criterion === criterion)?.outcome
        if (outcome !== undefined) counts.set(outcome, (counts.get(outcome) ?? 0) + 1)
      }
      if (counts.size > 0) lines.push(`${source.id}, ${criterion}: ${[...counts].map(([outcome, count]) => `${count} ${outcome}`).join(', ')}`)
    }
  }
  const findings = [...edition.lots.values()].flatMap((lot) => lot.findings)
  lines.push('', findings.length === 0 ? 'No findings' : `${findings.length} findings:`)
  for (const finding of findings) lines.push(`  ${finding.severity}: ${finding.sentence} [${finding.check}]`, ...finding.evidence.map((text) => `    ${text}`))
  return `${lines.join('\n')}\n`
}
