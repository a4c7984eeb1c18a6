/** The batches of a study as CSV: each index with the means that it was made from. */
import { toSignificant } from '../../core/measure/rounding.ts'
import type { BatchMean } from '../../core/studies/batch-indices.ts'
import type { Edition } from '../shape/edition.ts'
import { BYTE_ORDER_MARK, lines } from './csv-lines.ts'

/** Digits of a value: more than any mean of readings tells. */
const DIGITS = 6

const COLUMNS = [
  'material',
  'class',
  'condition',
  'laboratory',
  'batch',
  'age',
  'property',
  'index_percent',
  'above',
  'test_mean',
  'test_n',
  'control_batch',
  'control_mean',
  'control_n',
  'unit',
]

/** @param id of a study of the edition */
export function studyTable(edition: Edition, id: string): Iterable<string> {
  const { record, indices } = edition.study(id)
  // Whoever passes the file on passes on that its data are invented, where the site says so.
  const first =
    edition.site.notice === undefined ? COLUMNS : COLUMNS.with(0, `material (${edition.site.notice})`)
  return [
    BYTE_ORDER_MARK + lines([first]),
    lines(
      indices.indices.map((index) => [
        index.material,
        record.materials[index.material]?.class,
        index.condition,
        index.laboratory,
        index.batch,
        index.age,
        index.property,
        toSignificant(index.value, DIGITS),
        index.above ? 'above' : '',
        roundedMean(index.test),
        index.test?.n,
        index.control?.batch,
        roundedMean(index.control),
        index.control?.n,
        index.property === 'resistivity-index' ? 'ohm m' : 'MPa',
      ]),
    ),
  ]
}

function roundedMean(mean: BatchMean | null): number | null {
  return mean === null ? null : toSignificant(mean.value, DIGITS)
}
