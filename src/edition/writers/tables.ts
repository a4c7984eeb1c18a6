/** CSV of lots, results and shipments (RFC 4180, UTF-8, decimal point), for whoever wants to recompute. */
import { csvFormatRows } from 'd3'
import { resultReasonWords } from '../../words/result-reasons.ts'
import type { Edition } from '../shape/edition.ts'

/** A cell that a spreadsheet could take for a formula is kept text by a leading apostrophe. */
function cell(value: string | number | null | undefined): string {
  if (value === null || value === undefined) return ''
  return typeof value === 'string' && /^[=+\-@\t\r]/.test(value) ? `'${value}` : String(value)
}

function table(
  head: readonly string[],
  rows: readonly (readonly (string | number | null | undefined)[])[],
): string {
  return `${csvFormatRows([[...head], ...rows.map((row) => row.map(cell))])}\n`
}

export function lotsTable(edition: Edition): string {
  const rows = [...edition.lots.values()].flatMap((lot) =>
    lot.verdicts.map((verdict) => [
      lot.id,
      lot.number,
      lot.source,
      lot.class,
      lot.record.produced.from,
      lot.record.produced.to,
      lot.sampled,
      lot.record.quantity.value,
      lot.state,
      lot.revisions.at(-1)?.number,
      lot.revisions.at(-1)?.date,
      verdict.criterion,
      verdict.edition,
      verdict.class,
      verdict.outcome,
      verdict.decidedBy.join(' '),
    ]),
  )
  return table(
    [
      'lot',
      'number',
      'source',
      'class',
      'produced_from',
      'produced_to',
      'sampled',
      'quantity_t',
      'state',
      'revision',
      'issued',
      'criterion',
      'edition',
      'judged_class',
      'outcome',
      'decided_by',
    ],
    rows,
  )
}

export function resultsTable(edition: Edition): string {
  const rows = [...edition.lots.values()].flatMap((lot) =>
    lot.results.map((result) => [
      lot.id,
      result.role,
      result.property,
      result.condition,
      result.age,
      result.method,
      result.laboratory,
      result.sample,
      result.tested,
      result.censored,
      result.value,
      result.unit,
      result.written,
      result.n,
      result.valid ? 'yes' : 'no',
      result.reasons.map(resultReasonWords).join('; '),
    ]),
  )
  return table(
    [
      'lot',
      'role',
      'property',
      'condition',
      'age',
      'method',
      'laboratory',
      'sample',
      'tested',
      'censored',
      'value',
      'unit',
      'written',
      'n',
      'valid',
      'reasons',
    ],
    rows,
  )
}

export function shipmentsTable(edition: Edition): string {
  const rows = edition.shipments.map((shipment) => [
    shipment.bill,
    shipment.date,
    shipment.lot,
    shipment.massT,
    shipment.massWritten,
    shipment.consignee,
    shipment.project,
    shipment.seal,
  ])
  return table(['bill', 'date', 'lot', 'mass_t', 'mass_written', 'consignee', 'project', 'seal'], rows)
}
