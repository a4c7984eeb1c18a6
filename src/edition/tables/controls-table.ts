/** The table of control batches with their results. */
import type { Result } from '../../core/result/result.ts'
import { resultText } from '../../words/units.ts'
import type { Edition, ControlEntry } from '../shape/edition.ts'
import { boundColumns, type Column, type FilledColumn, filled, headsOf, type TableHead } from './table.ts'

interface ControlRow {
  readonly control: ControlEntry
  /** Undefined for a batch that has none yet. */
  readonly result: Result | undefined
  readonly printed: string | null
}

const COLUMNS: readonly Column<ControlRow>[] = [
  {
    name: 'control',
    type: 'text',
    required: true,
    description: 'Control batch by id',
    of: ({ control }) => control.id,
  },
  {
    name: 'condition',
    type: 'text',
    required: true,
    description: 'Test condition by id',
    of: ({ control }) => control.record.condition,
  },
  {
    name: 'cement_lot',
    type: 'text',
    description: 'Lot of the cement',
    of: ({ control }) => control.record.cement?.lot,
  },
  {
    name: 'cement_type',
    type: 'text',
    description: 'Type of the cement',
    of: ({ control }) => control.record.cement?.type,
  },
  {
    name: 'cast_on',
    type: 'date',
    required: true,
    description: 'Day of casting',
    of: ({ control }) => control.record.cast,
  },
  {
    name: 'cast_written',
    type: 'text',
    required: true,
    description: 'Moment of casting as the record writes it',
    of: ({ control }) => control.record.cast.text,
  },
  {
    name: 'property',
    type: 'text',
    description: 'Property; none of a batch without a result',
    of: ({ result }) => result?.property,
  },
  {
    name: 'age',
    type: 'text',
    description: 'Nominal age as in the condition',
    of: ({ result }) => result?.age?.text,
  },
  {
    name: 'age_h',
    type: 'double',
    unit: 'h',
    description: 'The same age',
    of: ({ result }) => result?.age?.hours,
  },
  {
    name: 'tested',
    type: 'date',
    description: 'Day of the last reading',
    of: ({ result }) => result?.tested,
  },
  {
    name: 'value',
    type: 'double',
    unitColumn: 'unit',
    description:
      'Mean of the specimens, unrounded; where it is known only within bounds a figure from the written ones',
    of: ({ result }) => result?.value,
  },
  ...boundColumns(({ result }: ControlRow) => result?.bounds),
  {
    name: 'unit',
    type: 'text',
    description: 'Unit of value and bounds: the stored one of the property',
    of: ({ result }) => result?.unit,
  },
  {
    name: 'written',
    type: 'text',
    description: 'What the record writes for a reported value, its decimals and unit kept',
    of: ({ result }) => result?.written,
  },
  {
    name: 'printed',
    type: 'text',
    description: 'As the site prints it, in the site’s units',
    of: ({ printed }) => printed,
  },
  { name: 'n', type: 'integer', description: 'Specimens behind the value', of: ({ result }) => result?.n },
  {
    name: 'valid',
    type: 'boolean',
    description: 'Whether it counts: the test kept to the conditions of its method',
    of: ({ result }) => result?.valid,
  },
]

export const CONTROLS: TableHead = {
  name: 'controls',
  title: 'Control batches',
  description:
    'A row for each result of a control batch, or one for a batch that has none yet. The year is that of casting.',
  keys: ['laboratory', 'year'],
  columns: headsOf(COLUMNS),
}

/** @param controls in their order in the edition */
export function controlColumns({ site }: Edition, controls: readonly ControlEntry[]): FilledColumn[] {
  return filled(
    COLUMNS,
    controls.flatMap((control): ControlRow[] =>
      control.results.length === 0
        ? [{ control, result: undefined, printed: null }]
        : control.results.map((result) => ({ control, result, printed: resultText(result, site.units) })),
    ),
  )
}
