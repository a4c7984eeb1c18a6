/**
 * What a laboratory's own batches tell of its scatter, for its page: specimens, batches, and what an index is
 * given for its uncertainty.
 */
import { countedOhmMetre } from '../../core/resistivity/bulk-resistivity.ts'
import { countedStrengthsMPa } from '../../core/strength/compressive-strength.ts'
import { controlReadings } from '../../core/readings/control-readings.ts'
import { FEW_DF, indexScatter, pooledKey, pooledSteps } from '../../core/doubt/pooled-repeatability.ts'
import { type NestedBatch, varianceComponents } from '../../core/statistics/variance-components.ts'
import { batchesOf } from './control-series.ts'
import type { ControlEntry, Edition } from '../shape/edition.ts'
import { type BatchSeries, batchSeries } from '../passes/laboratory-scatter.ts'

/** Coefficient of variation, per cent, with its degrees of freedom. */
export interface Scatter {
  readonly percent: number
  readonly df: number
}

export interface ScatterRow extends Omit<BatchSeries, 'batches'> {
  readonly batches: number
  /** Cement lots, or material lots. */
  readonly groups: number
  /** Of specimens within a batch; null where no batch has two. */
  readonly specimens: Scatter | null
  /**
   * Of batches beyond that of their specimens, nought where the means spread no more than specimens explain.
   */
  readonly beyond: Scatter | null
  /** Of a batch's mean within its group. */
  readonly mean: Scatter
  /** What follows for an index, per cent. */
  readonly index: number
  readonly few: boolean
}

/**
 * One row for each index, condition and age with two degrees of freedom, control batches before repeated
 * lots.
 */
export function scatterRows(
  edition: Pick<Edition, 'controls' | 'conditions' | 'lots' | 'asOf'>,
  laboratory: string,
): ScatterRow[] {
  const controls = batchesOf(edition.controls, laboratory)
  const nested = specimensByKey(controls, edition)
  const own = batchSeries(controls, edition.lots.values()).get(laboratory) ?? new Map<string, BatchSeries>()
  const rows = [...own].flatMap(([key, series]) => scatterRow(series, nested.get(key) ?? []))
  return rows.sort(
    (a, b) =>
      Number(a.of === 'repeated lots') - Number(b.of === 'repeated lots') ||
      (rowName(a) < rowName(b) ? -1 : 1),
  )
}

function rowName({ property, condition, age }: ScatterRow): string {
  return [
    property === 'strength-activity-index' ? 0 : 1,
    condition,
    String(Number.parseFloat(age)).padStart(4, '0'),
  ].join('|')
}

function scatterRow({ batches, ...series }: BatchSeries, nested: readonly NestedBatch[]): ScatterRow[] {
  const step = pooledSteps(batches).at(-1)
  if (step === undefined) return []
  const [, percent, df] = step
  const components = series.of === 'control batches' ? varianceComponents(nested) : null
  return [
    {
      ...series,
      batches: batches.length,
      groups: new Set(batches.map(({ group }) => group)).size,
      mean: { percent, df },
      few: df < FEW_DF,
      index: series.of === 'control batches' ? indexScatter(percent) : percent,
      specimens:
        components === null
          ? null
          : { percent: 100 * Math.sqrt(components.within.meanSquare), df: components.within.df },
      beyond:
        components === null
          ? null
          : { percent: 100 * Math.sqrt(Math.max(0, components.betweenVariance)), df: components.between.df },
    },
  ]
}

/**
 * Logarithms of the specimens of each valid reading, so that a deviation is a coefficient of variation; keys
 * as of `batchSeries`.
 */
function specimensByKey(
  controls: readonly ControlEntry[],
  { conditions, asOf }: Pick<Edition, 'conditions' | 'asOf'>,
): Map<string, NestedBatch[]> {
  const batches = controls.flatMap(({ record }) => {
    const condition = conditions.get(record.condition)
    if (condition === undefined) return []
    const batch = (property: BatchSeries['property'], age: string, values: readonly number[]) => ({
      key: pooledKey({ property, condition: record.condition, age }),
      group: record.cement.lot,
      values: values.filter((value) => 0 < value).map(Math.log),
    })
    const { strengths, resistivities } = controlReadings(record, condition, asOf)
    return [
      ...strengths
        .filter(({ valid }) => valid)
        .map((read) => batch('strength-activity-index', read.reading.age, countedStrengthsMPa(read.batch))),
      ...resistivities
        .filter(({ valid }) => valid)
        .map((read) => batch('resistivity-index', read.reading.age, countedOhmMetre(read.batch))),
    ]
  })
  return Map.groupBy(batches, ({ key }) => key)
}
