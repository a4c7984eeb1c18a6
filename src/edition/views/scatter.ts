/**
 * What a laboratory's own batches tell of its scatter, for its page: specimens, batches, and what an index is
 * given for its uncertainty.
 */
import { controlReadings } from '../../core/readings/control-readings.ts'
import { MORTAR_MEASUREMENTS } from '../../core/readings/mortar-measurements.ts'
import { type BatchSeries, batchSeries } from '../../core/doubt/batch-series.ts'
import { FEW_DF, indexScatter, pooledKey, pooledSteps } from '../../core/doubt/pooled-repeatability.ts'
import { type NestedBatch, varianceComponents } from '../../core/statistics/variance-components.ts'
import { batchesOf } from './control-series.ts'
import { controlBatch } from '../shape/control-batch.ts'
import type { ControlEntry, Edition, LotEntry } from '../shape/edition.ts'
import { partOfSource } from '../shape/part-of-source.ts'

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

type From = Pick<Edition, 'controls' | 'conditions' | 'sources' | 'ofSource' | 'lotsOf' | 'lot' | 'asOf'>

/**
 * One row for each index, condition and age with two degrees of freedom, control batches before repeated
 * lots.
 */
export function scatterRows(edition: From, laboratory: string): ScatterRow[] {
  const controls = batchesOf(edition.controls, laboratory)
  const nested = specimensByKey(controls, edition)
  const ofControls = batchSeries(controls.map(controlBatch), []).get(laboratory) ?? []
  const rows = [...ofControls, ...together(ofRepeatedLots(edition, laboratory))].flatMap(([key, series]) =>
    scatterRow(series, nested.get(key) ?? []),
  )
  return rows.sort(
    (a, b) =>
      Number(a.of === 'repeated lots') - Number(b.of === 'repeated lots') ||
      (rowName(a) < rowName(b) ? -1 : 1),
  )
}

/** Series of one kind that several sources give, as one. */
function together(series: readonly (readonly [string, BatchSeries])[]): [string, BatchSeries][] {
  return [...Map.groupBy(series, ([key]) => key)].flatMap(([key, alike]) => {
    const [first] = alike
    return first === undefined
      ? []
      : [
          [key, { ...first[1], batches: alike.flatMap(([, { batches }]) => batches) }] as [
            string,
            BatchSeries,
          ],
        ]
  })
}

/** Few lots are tested more than once: each source gives what repeated tests of its lots tell of a laboratory. */
function ofRepeatedLots(edition: From, laboratory: string): [string, BatchSeries][] {
  return [...edition.sources.keys()].flatMap((source) => {
    return repeatedIn(edition, source).flatMap(([id, series]) =>
      id === laboratory ? series.map(([key, one]) => [key, one] as [string, BatchSeries]) : [],
    )
  })
}

const repeatedIn = partOfSource('repeated lots', (edition: From, source) =>
  [...batchSeries([], lotsOf(edition, source))].map(([id, series]) => [id, [...series]] as const),
)

/** One after the other, so that they are never all in memory. */
function* lotsOf({ lotsOf: rowsOf, lot }: From, source: string): Generator<LotEntry> {
  for (const { id } of rowsOf(source)) yield lot(id)
}

function rowName({ property, condition, age }: ScatterRow): string {
  return [
    MORTAR_MEASUREMENTS.findIndex(({ index }) => index === property),
    condition,
    String(age?.hours ?? 0).padStart(6, '0'),
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
  const batches = controls.flatMap(({ id, record }) => {
    const condition = conditions.get(record.condition)
    if (condition === undefined) return []
    return MORTAR_MEASUREMENTS.flatMap((measurement) =>
      controlReadings(measurement, record, condition, asOf)
        .filter(({ valid }) => valid)
        .map(({ reading, specimens }) => ({
          key: pooledKey({ property: measurement.index, condition: record.condition, age: reading.age }),
          group: record.cement?.lot ?? `of ${id}`,
          values: specimens.counted.flatMap(({ value }) => (0 < value ? [Math.log(value)] : [])),
        })),
    )
  })
  return Map.groupBy(batches, ({ key }) => key)
}
