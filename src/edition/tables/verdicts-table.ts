/** The table of verdicts. */
import type { Verdict } from '../../core/criteria/verdict.ts'
import type { Edition, LotEntry } from '../shape/edition.ts'
import { listedLot } from '../shape/listing.ts'
import { standingOf } from '../shape/standing.ts'
import { CRITERION, GOVERNS, LOT, lotTable, OF_TODAY, YEAR_OF_SAMPLING } from './rows-of-lots.ts'
import type { Column } from './table.ts'

interface VerdictRow {
  readonly lot: LotEntry
  readonly verdict: Verdict
  readonly governs: boolean
  readonly standing: string
}

const VERDICT_COLUMNS: readonly Column<VerdictRow>[] = [
  { name: 'lot', type: 'text', required: true, description: LOT, of: ({ lot }) => lot.id },
  CRITERION,
  {
    name: 'edition',
    type: 'text',
    required: true,
    description: 'Edition of the set',
    of: ({ verdict }) => verdict.edition,
  },
  GOVERNS,
  {
    name: 'class',
    type: 'text',
    description: 'Class that the lot is judged as',
    of: ({ verdict }) => verdict.class,
  },
  {
    name: 'accepted_as',
    type: 'text',
    description: 'Allowed class that the claimed one is accepted as',
    of: ({ verdict }) => verdict.acceptedAs,
  },
  {
    name: 'outcome',
    type: 'text',
    required: true,
    description: 'Outcome',
    of: ({ verdict }) => verdict.outcome,
  },
  {
    name: 'trial',
    type: 'boolean',
    required: true,
    description: 'Whether the outcome rests on limits that nobody has confirmed',
    of: ({ verdict }) => verdict.trial,
  },
  {
    name: 'decided_by',
    type: 'text',
    description: 'Clauses that decided, with spaces between',
    of: ({ verdict }) => verdict.decidedBy.join(' ') || null,
  },
  {
    name: 'standing',
    type: 'text',
    required: true,
    description: 'State of the certificate and outcome in words',
    of: ({ standing }) => standing,
  },
]

function verdictRows(lot: LotEntry, edition: Edition): VerdictRow[] {
  const row = listedLot(lot)
  return lot.verdicts.map((verdict, place) => ({
    lot,
    verdict,
    governs: place === 0,
    standing: standingOf(edition, row, verdict.criterion).text,
  }))
}

export const VERDICTS = lotTable(
  {
    name: 'verdicts',
    title: 'Verdicts',
    description: `A row for each lot and set of criteria that it is judged under. ${OF_TODAY} ${YEAR_OF_SAMPLING}`,
  },
  VERDICT_COLUMNS,
  verdictRows,
)
