/** The table of clauses. */
import { marginToLimit } from '../../core/criteria/margin-to-limit.ts'
import { type ClauseOutcome, everyClauseOutcome, type Verdict } from '../../core/criteria/verdict.ts'
import { limitText } from '../../words/limits.ts'
import { differenceUnitOf } from '../../words/unit-signs.ts'
import type { LotEntry } from '../shape/edition.ts'
import { codes, CRITERION, GOVERNS, LOT, lotTable, OF_TODAY, YEAR_OF_SAMPLING } from './rows-of-lots.ts'
import { boundColumns, type Column } from './table.ts'

interface ClauseRow {
  readonly lot: LotEntry
  readonly verdict: Verdict
  readonly clause: ClauseOutcome
  readonly governs: boolean
}

const CLAUSE_COLUMNS: readonly Column<ClauseRow>[] = [
  { name: 'lot', type: 'text', required: true, description: LOT, of: ({ lot }) => lot.id },
  CRITERION,
  GOVERNS,
  {
    name: 'clause',
    type: 'text',
    required: true,
    description: 'Clause by id',
    of: ({ clause }) => clause.id,
  },
  {
    name: 'kind',
    type: 'text',
    required: true,
    description: 'Kind of clause; a group comes before its members',
    of: ({ clause }) => clause.kind,
  },
  {
    name: 'outcome',
    type: 'text',
    required: true,
    description: 'Outcome of the clause',
    of: ({ clause }) => clause.outcome,
  },
  {
    name: 'decides',
    type: 'boolean',
    required: true,
    description: 'Whether the clause decided the verdict',
    of: ({ clause }) => clause.decides,
  },
  {
    name: 'information',
    type: 'boolean',
    required: true,
    description: 'Whether the clause is for information only',
    of: ({ clause }) => clause.information,
  },
  { name: 'property', type: 'text', description: 'Property judged', of: ({ clause }) => clause.property },
  {
    name: 'condition',
    type: 'text',
    description: 'Test condition by id',
    of: ({ clause }) => clause.condition,
  },
  {
    name: 'age',
    type: 'text',
    description: 'Nominal age as in the condition',
    of: ({ clause }) => clause.age?.text,
  },
  {
    name: 'age_h',
    type: 'double',
    unit: 'h',
    description: 'The same age',
    of: ({ clause }) => clause.age?.hours,
  },
  {
    name: 'result',
    type: 'text',
    description: 'Key of the result judged, as in the table of results, where repeated tests share it',
    of: ({ clause }) => clause.result,
  },
  {
    name: 'value',
    type: 'double',
    unitColumn: 'unit',
    description:
      'Value judged, unrounded; of a moving average or a standard deviation (kind statistic) that of the lot itself, while the figure over lots stands in data/lots/',
    of: ({ clause }) => clause.value,
  },
  ...boundColumns(({ clause }: ClauseRow) => clause.bounds),
  {
    name: 'compared',
    type: 'double',
    unitColumn: 'unit',
    description: 'Value as compared, after the rounding that the decision rule asks for',
    of: ({ clause }) => clause.compared,
  },
  { name: 'unit', type: 'text', description: 'Unit of value and compared', of: ({ clause }) => clause.unit },
  {
    name: 'limit_written',
    type: 'text',
    description: 'Limit with its own digits',
    of: ({ clause }) => clause.limit && limitText(clause.limit),
  },
  {
    name: 'limit_low',
    type: 'double',
    unitColumn: 'limit_unit',
    description: 'Least that is admitted',
    of: ({ clause }) => limitEnds(clause).low,
  },
  {
    name: 'limit_high',
    type: 'double',
    unitColumn: 'limit_unit',
    description: 'Most that is admitted',
    of: ({ clause }) => limitEnds(clause).high,
  },
  {
    name: 'limit_unit',
    type: 'text',
    description: 'Unit of the limit',
    of: ({ clause }) => clause.limit?.unit,
  },
  {
    name: 'limit_layer',
    type: 'text',
    description: 'Set or supplement that set the limit',
    of: ({ clause }) => clause.limit?.layer,
  },
  {
    name: 'margin',
    type: 'double',
    unitColumn: 'difference_unit',
    description:
      'From the limit to the value as compared, below zero beyond it; of a value known only within bounds the least that is sure, and none where they leave the outcome open',
    of: ({ clause }) => marginToLimit(clause),
  },
  {
    name: 'standard_uncertainty',
    type: 'double',
    unitColumn: 'difference_unit',
    description: 'Standard uncertainty between batches',
    of: ({ clause }) => clause.uncertainty?.u,
  },
  {
    name: 'difference_unit',
    type: 'text',
    description:
      'Unit of margin and standard_uncertainty: that of the value, percentage points for a per cent',
    of: ({ clause }) => clause.unit && differenceUnitOf(clause.unit),
  },
  { name: 'due', type: 'date', description: 'When a pending result is due', of: ({ clause }) => clause.due },
  {
    name: 'reasons',
    type: 'text',
    description: 'Codes of the reasons, with spaces between',
    of: ({ clause }) => codes(clause.reasons),
  },
]

function clauseRows(lot: LotEntry): ClauseRow[] {
  return lot.verdicts.flatMap((verdict, place) =>
    [...everyClauseOutcome(verdict.clauses)].map((clause) => ({
      lot,
      verdict,
      clause,
      governs: place === 0,
    })),
  )
}

/** A magnitude is held to its limit on either side. */
function limitEnds({ limit }: ClauseOutcome): { readonly low: number | null; readonly high: number | null } {
  const [first = null, second = null] = limit?.values ?? []
  switch (limit?.operator) {
    case 'at-least':
    case 'above':
      return { low: first, high: null }
    case 'at-most':
    case 'below':
      return { low: null, high: first }
    case 'between':
      return { low: first, high: second }
    case 'magnitude-at-most':
      return { low: first === null ? null : -first, high: first }
    default:
      return { low: null, high: null }
  }
}

export const CLAUSES = lotTable(
  {
    name: 'clauses',
    title: 'Clauses',
    description: `A row for each clause of each verdict, members after their group. ${OF_TODAY} ${YEAR_OF_SAMPLING}`,
  },
  CLAUSE_COLUMNS,
  clauseRows,
)
