/** What the columns of the tables for spreadsheets hold, in their order; as in the tables for query engines where alike. */
import { CLAUSES } from '../tables/clauses-table.ts'
import { LOTS } from '../tables/lots-table.ts'
import { RESULTS } from '../tables/results-table.ts'
import { LOT } from '../tables/rows-of-lots.ts'
import { SHIPMENTS } from '../tables/shipments-table.ts'
import type { ColumnHead, TableHead } from '../tables/table.ts'
import { VERDICTS } from '../tables/verdicts-table.ts'

export interface Spreadsheet {
  readonly name: string
  readonly title: string
  /** What a row is. */
  readonly description: string
  readonly columns: readonly ColumnHead[]
}

const MOMENT = 'as the record writes it, with a time of day where it states one'

const LOT_CELL: ColumnHead = { name: 'lot', type: 'text', required: true, description: LOT }

export const LOTS_SHEET: Spreadsheet = {
  name: 'lots-csv',
  title: 'Lots, for a spreadsheet',
  description:
    'A row for each lot and each set that it is judged under, the governing set first, as today’s records give it.',
  columns: [
    LOT_CELL,
    alike(LOTS, 'number'),
    { name: 'source', type: 'text', required: true, description: 'Source by id' },
    alike(LOTS, 'class'),
    { name: 'produced_from', type: 'text', required: true, description: `Begin of production ${MOMENT}` },
    { name: 'produced_to', type: 'text', description: `End of production ${MOMENT}` },
    { name: 'sampled', type: 'text', required: true, description: `End of sampling ${MOMENT}` },
    alike(LOTS, 'quantity_t'),
    alike(LOTS, 'state'),
    alike(LOTS, 'revision'),
    alike(LOTS, 'issued'),
    alike(VERDICTS, 'criterion'),
    alike(VERDICTS, 'edition'),
    { ...alike(VERDICTS, 'class'), name: 'judged_class' },
    alike(VERDICTS, 'outcome'),
    alike(VERDICTS, 'decided_by'),
    {
      name: 'standing',
      type: 'text',
      required: true,
      description: 'State and outcome under the set in words',
    },
    alike(LOTS, 'due'),
    alike(LOTS, 'overdue_since'),
    { name: 'quantity_printed', type: 'text', required: true, description: 'Quantity as the site prints it' },
    {
      name: 'shortfall',
      type: 'text',
      description: 'Where the set is not met: by which clauses, and by how much',
    },
    alike(VERDICTS, 'trial'),
  ],
}

export const RESULTS_SHEET: Spreadsheet = {
  name: 'results-csv',
  title: 'Results, for a spreadsheet',
  description:
    'A row for each result of a lot, with limit and margin where the governing set judges it; of repeated tests that is one of them, and none where their mean is judged. Numbers have six digits.',
  columns: [
    LOT_CELL,
    alike(RESULTS, 'role'),
    alike(RESULTS, 'property'),
    alike(RESULTS, 'condition'),
    alike(RESULTS, 'age'),
    alike(RESULTS, 'method'),
    alike(RESULTS, 'laboratory'),
    { ...alike(RESULTS, 'sample_id'), name: 'sample' },
    { name: 'tested', type: 'text', required: true, description: `Last reading ${MOMENT}` },
    alike(RESULTS, 'censored'),
    {
      ...alike(RESULTS, 'value'),
      description: 'Value; where it is known only within bounds a figure from the written ones',
    },
    { ...alike(RESULTS, 'unit'), description: 'Unit of value, low and high: the stored one of the property' },
    alike(RESULTS, 'written'),
    alike(RESULTS, 'n'),
    alike(RESULTS, 'valid'),
    {
      name: 'reasons',
      type: 'text',
      description: 'Why it is not valid, or what was noted, in words with "; " between',
    },
    { ...alike(RESULTS, 'value_low'), name: 'low' },
    { ...alike(RESULTS, 'value_high'), name: 'high' },
    alike(RESULTS, 'printed'),
    { name: 'revision', type: 'integer', description: 'Newest revision of the lot’s certificate' },
    {
      name: 'criterion',
      type: 'text',
      description: 'The governing set, where it holds the result against a limit',
    },
    { ...alike(CLAUSES, 'limit_written'), name: 'limit' },
    {
      name: 'margin',
      type: 'double',
      unitColumn: 'unit',
      description: `${alike(CLAUSES, 'margin').description}; of per cents in percentage points`,
    },
  ],
}

export const SHIPMENTS_SHEET: Spreadsheet = {
  name: 'shipments-csv',
  title: 'Shipments, for a spreadsheet',
  description: 'A row for each bill of lading, in order of date.',
  columns: [
    alike(SHIPMENTS, 'bill'),
    { ...alike(SHIPMENTS, 'shipped'), name: 'date' },
    alike(SHIPMENTS, 'lot'),
    alike(SHIPMENTS, 'mass_t'),
    alike(SHIPMENTS, 'mass_written'),
    alike(SHIPMENTS, 'consignee'),
    alike(SHIPMENTS, 'project'),
    alike(SHIPMENTS, 'seal'),
    { name: 'lot_state', type: 'text', description: 'State of the certificate of its lot today' },
    alike(SHIPMENTS, 'lot_standing'),
    { name: 'mass_printed', type: 'text', required: true, description: 'Mass as the site prints it' },
    alike(SHIPMENTS, 'possible_lots'),
    alike(SHIPMENTS, 'loaded_from'),
    {
      name: 'when_it_left',
      type: 'text',
      description: 'What is to be said of the day on which it left, with "; " between',
    },
    { name: 'purchase_order', type: 'text', description: 'Purchase order, where the site publishes it' },
  ],
}

/** A column that holds the same as one of a table for query engines. @throws RangeError for one that it has not */
function alike({ name: table, columns }: TableHead, name: string): ColumnHead {
  const found = columns.find((column) => column.name === name)
  if (found === undefined) throw new RangeError(`alike needs a column of ${table}, got ${name}`)
  return found
}
