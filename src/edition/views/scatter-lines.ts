/** The scatter of a laboratory's own batches in words. */
import { property } from '../../core/measure/properties.ts'
import { plural } from '../../words/numbers.ts'
import { unbroken } from '../../words/sentences.ts'
import { conditionTitle } from '../shape/condition-title.ts'
import type { Edition } from '../shape/edition.ts'
import { type Scatter, type ScatterRow, scatterRows } from './scatter.ts'
import { plainNumber } from '../../words/numbers.ts'

export interface ScatterLine {
  /** Index, condition and age. */
  readonly of: string
  /** What it was found from. */
  readonly from: string
  readonly few: boolean
  readonly specimens: string
  readonly beyond: string
  readonly mean: string
  readonly index: string
}

export function scatterLines(edition: Edition, laboratory: string): ScatterLine[] {
  return scatterRows(edition, laboratory).map((row) => ({
    of: unbroken(`${property(row.property).title}, ${conditionTitle(edition, row.condition)}, ${row.age}`),
    from: batchWords(row),
    few: row.few,
    specimens: scatterText(row.specimens),
    beyond: scatterText(row.beyond),
    mean: scatterText(row.mean),
    index: `${plainNumber(row.index, 1)} %`,
  }))
}

function scatterText(scatter: Scatter | null): string {
  if (scatter === null) return 'not known'
  const { percent, df } = scatter
  return percent === 0 ? `none found (${df})` : `${plainNumber(percent, 1)} % (${df})`
}

function batchWords({ of, batches, groups }: ScatterRow): string {
  return of === 'control batches'
    ? `${plural(batches, 'control batch', 'control batches')}, ${plural(groups, 'cement', 'cements')}`
    : `${batches} indices of ${plural(groups, 'lot', 'lots')} tested more than once`
}
