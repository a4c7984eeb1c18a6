/** The table of results. */
import { dutyOf } from '../../core/measure/duty.ts'
import { knownSince, type Result } from '../../core/result/result.ts'
import { differenceUnitOf } from '../../words/unit-signs.ts'
import { resultText } from '../../words/units.ts'
import type { Edition, LotEntry } from '../shape/edition.ts'
import { codes, LOT, lotTable, OF_TODAY, YEAR_OF_SAMPLING } from './rows-of-lots.ts'
import { boundColumns, type Column } from './table.ts'

interface ResultRow {
  readonly lot: LotEntry
  readonly result: Result
  readonly printed: string
}

const RESULT_COLUMNS: readonly Column<ResultRow>[] = [
  { name: 'lot', type: 'text', required: true, description: LOT, of: ({ lot }) => lot.id },
  {
    name: 'result',
    type: 'text',
    required: true,
    description:
      'Key: property, condition, age, method, laboratory and sample; in a lot and role several rows share it where a test was repeated, as a retest or not',
    of: ({ result }) => result.key,
  },
  {
    name: 'role',
    type: 'text',
    required: true,
    description: 'Whose result it is: producer, or verification for an agency’s',
    of: ({ result }) => result.role,
  },
  {
    name: 'property',
    type: 'text',
    required: true,
    description: 'Property',
    of: ({ result }) => result.property,
  },
  {
    name: 'condition',
    type: 'text',
    description: 'Test condition by id; none for what is not tested on mortar',
    of: ({ result }) => result.condition,
  },
  {
    name: 'age',
    type: 'text',
    description: 'Nominal age as in the condition',
    of: ({ result }) => result.age?.text,
  },
  {
    name: 'age_h',
    type: 'double',
    unit: 'h',
    description: 'The same age',
    of: ({ result }) => result.age?.hours,
  },
  { name: 'method', type: 'text', description: 'Method', of: ({ result }) => result.method },
  {
    name: 'basis',
    type: 'text',
    description: 'Basis: as received, dry or ignited',
    of: ({ result }) => result.basis,
  },
  {
    name: 'laboratory',
    type: 'text',
    required: true,
    description: 'Laboratory by id',
    of: ({ result }) => result.laboratory,
  },
  {
    name: 'sample_id',
    type: 'text',
    required: true,
    description: 'Sample within the lot',
    of: ({ result }) => result.sample,
  },
  {
    name: 'sample_kind',
    type: 'text',
    required: true,
    description: 'How the sample was taken',
    of: ({ result }) => result.sampleKind,
  },
  {
    name: 'duty',
    type: 'text',
    required: true,
    description: 'What the sample serves',
    of: ({ result }) => dutyOf(result),
  },
  {
    name: 'tested',
    type: 'date',
    required: true,
    description: 'Day of the last reading',
    of: ({ result }) => result.tested,
  },
  {
    name: 'tested_written',
    type: 'text',
    required: true,
    description: 'Moment of the last reading as the record writes it',
    of: ({ result }) => result.tested.text,
  },
  {
    name: 'known_since',
    type: 'date',
    required: true,
    description:
      'Since when the test, or that of its control, has been known; a value left out later counts from its own day and does not move this one',
    of: ({ result }) => knownSince(result),
  },
  {
    name: 'value',
    type: 'double',
    unitColumn: 'unit',
    required: true,
    description:
      'Value, unrounded; where it is known only within bounds a figure from the written ones, and the bounds say what it may be',
    of: ({ result }) => result.value,
  },
  {
    name: 'unit',
    type: 'text',
    required: true,
    description: 'Unit of value, bounds and interval: the stored one of the property',
    of: ({ result }) => result.unit,
  },
  {
    name: 'written',
    type: 'text',
    description: 'What the record writes for a reported value, its decimals and unit kept',
    of: ({ result }) => result.written,
  },
  {
    name: 'printed',
    type: 'text',
    required: true,
    description: 'As the site prints it, in the site’s units',
    of: ({ printed }) => printed,
  },
  {
    name: 'censored',
    type: 'text',
    description:
      '"below" where the record writes it as below that figure; value_low or value_high tell of every value that is known only within bounds',
    of: ({ result }) => result.censored,
  },
  ...boundColumns(({ result }: ResultRow) => result.bounds),
  {
    name: 'n',
    type: 'integer',
    required: true,
    description: 'Specimens or determinations behind the value',
    of: ({ result }) => result.n,
  },
  {
    name: 'valid',
    type: 'boolean',
    required: true,
    description:
      'Whether it counts: the test kept to the conditions of its method, and no retest stands in its place',
    of: ({ result }) => result.valid,
  },
  {
    name: 'finished',
    type: 'boolean',
    required: true,
    description: 'Whether the laboratory reported the figure itself, so that it is not recomputed',
    of: ({ result }) => result.finished === true,
  },
  {
    name: 'reasons',
    type: 'text',
    description: 'Codes of why it is not valid or of what was noted, with spaces between',
    of: ({ result }) => codes(result.reasons),
  },
  { name: 'control', type: 'text', description: 'Control batch by id', of: ({ result }) => result.control },
  {
    name: 'control_value',
    type: 'double',
    unitColumn: 'unit',
    description: 'Value of the control that an index is made with',
    of: ({ result }) => result.controlValue,
  },
  {
    name: 'interval_level',
    type: 'double',
    description: 'Confidence of the interval from the scatter of this batch’s specimens alone',
    of: ({ result }) => result.interval?.level,
  },
  {
    name: 'interval_shape',
    type: 'text',
    description: 'bounded, below, above, outside or all',
    of: ({ result }) => result.interval?.shape,
  },
  {
    name: 'interval_low',
    type: 'double',
    unitColumn: 'unit',
    description: 'Lower end of the interval',
    of: ({ result }) => result.interval?.low,
  },
  {
    name: 'interval_high',
    type: 'double',
    unitColumn: 'unit',
    description: 'Upper end of the interval',
    of: ({ result }) => result.interval?.high,
  },
  {
    name: 'standard_uncertainty',
    type: 'double',
    unitColumn: 'difference_unit',
    description: 'Standard uncertainty that the laboratory states with a finished figure',
    of: ({ result }) => result.statedU,
  },
  {
    name: 'difference_unit',
    type: 'text',
    required: true,
    description: 'Unit of standard_uncertainty: that of the value, percentage points for a per cent',
    of: ({ result }) => differenceUnitOf(result.unit),
  },
]

function resultRows(lot: LotEntry, { site }: Edition): ResultRow[] {
  return lot.results.map((result) => ({ lot, result, printed: resultText(result, site.units) }))
}

export const RESULTS = lotTable(
  {
    name: 'results',
    title: 'Results',
    description: `A row for each result of a lot, computed or reported. ${OF_TODAY} ${YEAR_OF_SAMPLING}`,
  },
  RESULT_COLUMNS,
  resultRows,
)
