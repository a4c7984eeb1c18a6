/** The table of lots. */
import type { Verdict } from '../../core/criteria/verdict.ts'
import { readMoment } from '../../core/measure/moment.ts'
import type { Edition, ListedSource, LotEntry } from '../shape/edition.ts'
import { listedLot } from '../shape/listing.ts'
import { type StandingData, standingData } from '../shape/standing.ts'
import { LOT, lotTable, OF_TODAY, YEAR_OF_SAMPLING } from './rows-of-lots.ts'
import type { Column } from './table.ts'

interface LotRow {
  readonly lot: LotEntry
  readonly source: ListedSource | undefined
  readonly governing: Verdict | undefined
  readonly standing: StandingData
}

const LOT_COLUMNS: readonly Column<LotRow>[] = [
  { name: 'lot', type: 'text', required: true, description: LOT, of: ({ lot }) => lot.id },
  {
    name: 'number',
    type: 'text',
    required: true,
    description: 'Printed lot number',
    of: ({ lot }) => lot.number,
  },
  { name: 'producer', type: 'text', description: 'Producer by id', of: ({ source }) => source?.producer },
  { name: 'kind', type: 'text', description: 'Kind of material', of: ({ source }) => source?.kind },
  { name: 'class', type: 'text', description: 'Class that the lot claims', of: ({ lot }) => lot.class },
  {
    name: 'produced_from',
    type: 'date',
    required: true,
    description: 'First day of production',
    of: ({ lot }) => lot.record.produced.from,
  },
  {
    name: 'produced_to',
    type: 'date',
    description: 'Last day of production',
    of: ({ lot }) => lot.record.produced.to,
  },
  {
    name: 'sampled',
    type: 'date',
    required: true,
    description: 'Day of sampling, by which lots are in order',
    of: ({ lot }) => lot.sampled,
  },
  {
    name: 'sampled_written',
    type: 'text',
    required: true,
    description: 'Moment of sampling as the record writes it',
    of: ({ lot }) => lot.sampled.text,
  },
  {
    name: 'quantity_t',
    type: 'double',
    unit: 't',
    required: true,
    description: 'Quantity of the lot',
    of: ({ lot }) => lot.record.quantity.value,
  },
  {
    name: 'quantity_written',
    type: 'text',
    description: 'Quantity as the record writes it',
    of: ({ lot }) => lot.record.quantity.written,
  },
  {
    name: 'state',
    type: 'text',
    required: true,
    description: 'State of the certificate: draft, provisional, complete or withdrawn',
    of: ({ lot }) => lot.state,
  },
  {
    name: 'revision',
    type: 'integer',
    description: 'Number of the newest revision; none of a draft',
    of: ({ lot }) => lot.revisions.at(-1)?.number,
  },
  {
    name: 'issued',
    type: 'date',
    description: 'Date of the newest revision',
    of: ({ lot }) => lot.revisions.at(-1)?.date,
  },
  {
    name: 'withdrawn',
    type: 'date',
    description: 'Date of the withdrawal in force',
    of: ({ lot }) => lot.withdrawn,
  },
  {
    name: 'replaced_by',
    type: 'text',
    description: 'Lot that replaces a withdrawn one',
    of: ({ lot }) => lot.revisions.at(-1)?.replacedBy,
  },
  {
    name: 'criterion',
    type: 'text',
    description: 'Set of criteria that governs',
    of: ({ governing }) => governing?.criterion,
  },
  {
    name: 'outcome',
    type: 'text',
    description: 'Outcome under the governing set',
    of: ({ governing }) => governing?.outcome,
  },
  {
    name: 'trial',
    type: 'boolean',
    description: 'Whether the outcome rests on limits that nobody has confirmed',
    of: ({ governing }) => governing?.trial,
  },
  {
    name: 'standing',
    type: 'text',
    required: true,
    description: 'State and outcome in words',
    of: ({ standing }) => standing.standing,
  },
  {
    name: 'due',
    type: 'date',
    description: 'When the next result is due',
    of: ({ standing }) => standing.due && readMoment(standing.due),
  },
  {
    name: 'overdue_since',
    type: 'date',
    description: 'Since when the longest missing result is overdue',
    of: ({ standing }) => standing.overdueSince && readMoment(standing.overdueSince),
  },
]

function lotRow(lot: LotEntry, edition: Edition): LotRow[] {
  const [governing] = lot.verdicts
  const standing = standingData(edition, listedLot(lot))
  return [{ lot, source: edition.sources.get(lot.source), governing, standing }]
}

export const LOTS = lotTable(
  {
    name: 'lots',
    title: 'Lots',
    description: `A row for each lot, as judged under the set that governs it. ${OF_TODAY} ${YEAR_OF_SAMPLING}`,
  },
  LOT_COLUMNS,
  lotRow,
)
