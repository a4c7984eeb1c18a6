/**
 * CSV of lots, results and shipments (RFC 4180, decimal point, UTF-8 with a byte-order mark, without which a
 * spreadsheet garbles "±" and "°C"), for whoever opens them in a spreadsheet; the unrounded values to recompute from
 * stand in data/lots/. Each is
 * given piece by piece, since one text of them all would be too long for large sites.
 */
import { marginToLimit } from '../../core/criteria/margin-to-limit.ts'
import { type ClauseOutcome, everyClauseOutcome } from '../../core/criteria/verdict.ts'
import { yearOf } from '../../core/measure/moment.ts'
import { toSignificant } from '../../core/measure/rounding.ts'
import type { Result } from '../../core/result/result.ts'
import { limitText } from '../../words/limits.ts'
import { shortfallInWords } from '../shape/verdict-words.ts'
import { resultReasonIn } from '../../words/result-reasons.ts'
import { plainSpaces } from '../../words/sentences.ts'
import type { UnitSystem } from '../../words/unit-systems.ts'
import { massDecimals, quantity, resultText } from '../../words/units.ts'
import type { Edition, LotEntry } from '../shape/edition.ts'
import { listedLot } from '../shape/listing.ts'
import { lotOfShipment, standingOfShipment } from '../shape/possible-lots.ts'
import { shipmentsInOrder } from '../shape/shipments-of-sources.ts'
import { partsOfSource } from '../shape/part-of-source.ts'
import { standingData, standingOf } from '../shape/standing.ts'
import { BYTE_ORDER_MARK, type Cell, lines } from './csv-lines.ts'
import { LOTS_SHEET, RESULTS_SHEET, SHIPMENTS_SHEET, type Spreadsheet } from './spreadsheet-columns.ts'

/** Digits of a value, enough for every comparison with a limit of four digits; a computed value has no more to say. */
const DIGITS = 6

/** Lots, a line for each criterion that they are judged under, with state and outcome in words as `standing`. */
export function* lotsTable(edition: Edition): Generator<string> {
  yield head(LOTS_SHEET)
  yield* ofSources(edition, linesOfLots)
}

const linesOfLots = linesOfSource('lines of lots', (edition, lot) => lines(verdictRows(edition, lot)))

type LinesOfSource = (edition: Edition, source: string) => Generator<string>

/** The lines of a source's lots, in pieces of a year: one text of them all would be too long. */
function linesOfSource(name: string, linesOf: (edition: Edition, lot: LotEntry) => string): LinesOfSource {
  return partsOfSource(name, (edition: Edition, source) =>
    [...Map.groupBy(edition.lotsOf(source), ({ sampled }) => yearOf(sampled))].map(
      ([year, rows]) =>
        [year, () => rows.map(({ id }) => linesOf(edition, edition.lot(id))).join('')] as const,
    ),
  )
}

function* ofSources(edition: Edition, own: LinesOfSource): Generator<string> {
  for (const source of edition.sources.keys()) yield* own(edition, source)
}

function verdictRows(edition: Edition, lot: LotEntry): Cell[][] {
  const newest = lot.revisions.at(-1)
  const row = listedLot(lot)
  const { due, overdueSince } = standingData(edition, row)
  return lot.verdicts.map((verdict) => [
    lot.id,
    lot.number,
    lot.source,
    lot.class,
    lot.record.produced.from,
    lot.record.produced.to,
    lot.sampled,
    toSignificant(lot.record.quantity.value, DIGITS),
    lot.state,
    newest?.number,
    newest?.date,
    verdict.criterion,
    verdict.edition,
    verdict.class,
    verdict.outcome,
    verdict.decidedBy.join(' '),
    standingOf(edition, row, verdict.criterion).text,
    due,
    overdueSince,
    printed(lot.record.quantity.value, massDecimals(lot.record.quantity.value), 't', edition.site.units),
    verdict.outcome === 'does-not-meet' && edition.criteria.has(verdict.criterion)
      ? plainSpaces(shortfallInWords(edition, verdict))
      : null,
    verdict.trial ? 'yes' : 'no',
  ])
}

/** Results, a line each, with limit and margin under the governing set where it judges that result: of repeated tests one. */
export function* resultsTable(edition: Edition): Generator<string> {
  yield head(RESULTS_SHEET)
  yield* ofSources(edition, linesOfResults)
}

const linesOfResults = linesOfSource('lines of results', ({ site }, lot) =>
  lines(resultRows(lot, site.units)),
)

function resultRows(lot: LotEntry, units: UnitSystem): Cell[][] {
  const [governing] = lot.verdicts
  const judged = new Map(
    [...everyClauseOutcome(governing?.clauses ?? [])]
      .filter(({ kind, result }) => kind === 'value' && result !== null)
      .map((clause) => [clause.result, clause]),
  )
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
    toSignificant(result.value, DIGITS),
    result.unit,
    result.written,
    result.n,
    result.valid ? 'yes' : 'no',
    result.reasons.map((reason) => resultReasonIn(reason, units)).join('; '),
    shortCell(result.bounds?.low),
    shortCell(result.bounds?.high),
    plainSpaces(resultText(result, units)),
    lot.revisions.at(-1)?.number,
    ...limitCells(governing?.criterion, judgedOn(result, judged.get(result.key))),
  ])
}

/** Repeated tests share a key, and the clause was judged on the value of one of them, or on their mean. */
function judgedOn({ value }: Result, clause: ClauseOutcome | undefined): ClauseOutcome | undefined {
  return clause?.value === value ? clause : undefined
}

/** Set, limit and margin; empty where the governing set compares the result with nothing. */
function limitCells(criterion: string | undefined, clause: ClauseOutcome | undefined): Cell[] {
  const margin = clause === undefined ? null : marginToLimit(clause)
  return clause?.limit == null || margin === null
    ? [null, null, null]
    : [criterion, plainSpaces(limitText(clause.limit)), toSignificant(margin, DIGITS)]
}

function shortCell(value: number | null | undefined): Cell {
  return value === null || value === undefined ? null : toSignificant(value, DIGITS)
}

/** Shipments, a line each, in order of date, with how their lot stands, or the worst of the possible ones. */
export function* shipmentsTable(edition: Edition): Generator<string> {
  const { lots } = edition
  yield head(SHIPMENTS_SHEET)
  yield lines(
    shipmentsInOrder(edition).map(({ shipment, left }) => [
      shipment.bill,
      shipment.date,
      lotOfShipment(shipment),
      toSignificant(shipment.massT, DIGITS),
      shipment.massWritten,
      shipment.consignee,
      shipment.project,
      shipment.seal,
      lots.get(lotOfShipment(shipment) ?? '')?.state,
      standingOfShipment(edition, shipment)?.text,
      printed(shipment.massT, 1, 't', edition.site.units),
      lotOfShipment(shipment) === null ? shipment.lots.join(' ') : null,
      shipment.place,
      left.join('; '),
      shipment.purchaseOrder,
    ]),
  )
}

/** The names of the columns, after the mark that tells a spreadsheet the encoding. */
function head({ columns }: Spreadsheet): string {
  return BYTE_ORDER_MARK + lines([columns.map(({ name }) => name)])
}

/** A figure as the site's pages print it, in the site's units. */
function printed(value: number, decimals: number, unit: string, units: UnitSystem): string {
  return plainSpaces(quantity(value, decimals, unit, units))
}
