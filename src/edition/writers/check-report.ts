/** The machine-readable check report (schemas/check.json), written lot by lot. */
import type { Diagnostic } from '../../records/diagnostics/diagnostic.ts'
import type { Edition, LotEntry } from '../shape/edition.ts'
import { resultData } from './lot-data.ts'

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
  const lots = edition === null ? [] : [...edition.lots.values()].filter((lot) => inScope(lot, scope))
  yield `{"format":1,"asOf":${JSON.stringify(edition?.asOf ?? null)},"diagnostics":${JSON.stringify(diagnostics.map(diagnosticData))},"lots":[`
  for (const [index, lot] of lots.entries())
    yield `${index === 0 ? '' : ','}\n${JSON.stringify(lotReport(lot, scope))}`
  const sources =
    edition === null
      ? []
      : [...edition.sources.values()].map((source) => ({
          id: source.id,
          history: source.series,
          findings: source.findings,
        }))
  yield `],"sources":${JSON.stringify(sources)},"studies":[]}\n`
}

function inScope(lot: LotEntry, { lots }: ReportScope): boolean {
  return lots === undefined || lots.has(lot.id) || lots.has(lot.source)
}

function diagnosticData({ code, severity, file, line, column, message, mend }: Diagnostic): Diagnostic {
  return { code, severity, file, line, column, message, mend }
}

function lotReport(lot: LotEntry, { criteria }: ReportScope): unknown {
  return {
    id: lot.id,
    source: lot.source,
    revision: lot.revisions.at(-1)?.number ?? null,
    state: lot.state,
    results: lot.results.map(resultData),
    verdicts: lot.verdicts.filter((verdict) => criteria === undefined || criteria.has(verdict.criterion)),
    findings: lot.findings,
  }
}
