/**
 * CSV of lots, results and shipments (RFC 4180, UTF-8, decimal point), for whoever wants to recompute. Each is
 * given lot by lot, since one text of them all would be too long for large sites.
 */
import type { Age } from '../../core/measure/age.ts'
import type { Moment } from '../../core/measure/moment.ts'
import { csvFormatRows } from 'd3'
import { resultReasonWords } from '../../words/result-reasons.ts'
import type { Edition, LotEntry } from '../shape/edition.ts'

type Cell = string | number | Moment | Age | null | undefined

const LOT_COLUMNS = [
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
]

/** Lots, a line for each criterion that they are judged under. */
export function* lotsTable(edition: Edition): Generator<string> {
  yield lines([LOT_COLUMNS])
  for (const id of edition.lots.keys()) yield lines(verdictRows(edition.lot(id)))
}

function verdictRows(lot: LotEntry): Cell[][] {
  const newest = lot.revisions.at(-1)
  return lot.verdicts.map((verdict) => [
    lot.id,
    lot.number,
    lot.source,
    lot.class,
    lot.record.produced.from,
    lot.record.produced.to,
    lot.sampled,
    lot.record.quantity.value,
    lot.state,
    newest?.number,
    newest?.date,
    verdict.criterion,
    verdict.edition,
    verdict.class,
    verdict.outcome,
    verdict.decidedBy.join(' '),
  ])
}

const RESULT_COLUMNS = [
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
]

/** Results, a line each. */
export function* resultsTable(edition: Edition): Generator<string> {
  yield lines([RESULT_COLUMNS])
  for (const id of edition.lots.keys()) yield lines(resultRows(edition.lot(id)))
}

function resultRows(lot: LotEntry): Cell[][] {
  return lot.results.map((result) => [
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
  ])
}

/** Shipments, a line each, in order of date. */
export function* shipmentsTable({ shipments }: Edition): Generator<string> {
  yield lines([['bill', 'date', 'lot', 'mass_t', 'mass_written', 'consignee', 'project', 'seal']])
  yield lines(
    shipments.map((shipment) => [
      shipment.bill,
      shipment.date,
      shipment.lot,
      shipment.massT,
      shipment.massWritten,
      shipment.consignee,
      shipment.project,
      shipment.seal,
    ]),
  )
}

function lines(rows: readonly (readonly Cell[])[]): string {
  return rows.length === 0 ? '' : `${csvFormatRows(rows.map((row) => row.map(cell)))}\n`
}

/** A cell that a spreadsheet could take for a formula is kept text by a leading apostrophe. */
function cell(value: Cell): string {
  if (value === null || value === undefined) return ''
  return typeof value === 'string' && /^[=+\-@\t\r]/.test(value) ? `'${value}` : String(value)
}
