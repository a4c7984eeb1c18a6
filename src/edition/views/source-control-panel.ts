/** The strength or resistivity of the control mortar behind a source's governing index: a point for each batch. */
import { CEMENT_NOT_RECORDED } from '../../words/laboratory-records.ts'
import { compareMoments } from '../../core/measure/moment.ts'
import { isSameAge } from '../../core/measure/age.ts'
import { property, storedUnit } from '../../core/measure/properties.ts'
import { RATIO_OF } from '../../core/measure/ratio-indices.ts'
import { panelModel, type PanelPoint } from '../../charts/panel.ts'
import { chartedState, resultReading } from '../../words/chart-readings.ts'
import { shortDate } from '../../words/dates.ts'
import { number } from '../../words/numbers.ts'
import { unbroken } from '../../words/sentences.ts'
import { printedUnit } from '../../words/unit-systems.ts'
import { resultText } from '../../words/units.ts'
import type { ControlEntry, Edition, Series } from '../shape/edition.ts'
import { asked } from '../shape/trace.ts'
import { type ChartTable, newestTable, numberHead, textHead } from './chart-table.ts'
import { laboratoriesOf, type SourceLot } from './source-lots.ts'
import { type PanelContext, type PanelView, tickLabels } from './source-panels.ts'

/** null where no batch of the source's laboratories has a value in the period. */
export function controlPanel(context: PanelContext, series: Series, height: number): PanelView | null {
  const { edition, axis } = context
  const key = RATIO_OF[series.property]
  if (key === undefined) return null
  const batches = batchesOf(context, series).flatMap((batch) => chartedBatch(context, series, batch))
  const printed = printedUnit(storedUnit(key), property(key).decimals, edition.site.units)
  const points = batches.map((batch) => batchPoint(context, batch, printed.of))
  const newest = points.findLast(({ status, pale }) => status === 'valid' && pale !== true)?.value ?? null
  const last = newest === null ? null : `${number(newest, printed.decimals, edition.site.units)} last`
  const model = panelModel({ points, limits: [], last, height, joined: false })
  if (model === null) return null
  return {
    id: 'chart-control',
    title: unbroken(`Control: ${property(key).title.toLowerCase()}, ${series.age?.text ?? ''}`),
    note:
      axis.kind === 'date'
        ? 'Batches up to the newest lot’s, pale where no lot of this source rests on them.'
        : 'A point is a batch, at the first lot that rests on it.',
    description: `${points.length} control batches`,
    model,
    tickLabels: tickLabels(model, printed.unit),
    table: batchTable(context, batches),
  }
}

interface ChartedBatch {
  readonly id: string
  readonly record: ControlEntry['record']
  readonly result: ControlEntry['results'][number]
  readonly x: number
  /** A lot of the source rests on it. */
  readonly used: boolean
  readonly figure: string
}

/**
 * Batches of laboratories, those left out that were cast after others: what is cast after the newest lot of a source is no
 * concern of its charts, which stay as they are.
 */
export const batchesUpTo = asked(
  'batches-up-to',
  ({ controls }: Pick<Edition, 'controls'>, of): readonly ControlEntry[] => {
    const [laboratories = [], batches = []] = of.split(' ').map((names) => names.split(','))
    const last = Math.max(
      ...batches.map((id) => controls.get(id)?.record.cast.day ?? Number.NEGATIVE_INFINITY),
    )
    return [...controls.values()].filter(
      ({ record }) => record.cast.day <= last && laboratories.includes(record.laboratory),
    )
  },
)

/** What `batchesUpTo` is asked for lots: their laboratories, and the batches of the newest lot that rests on any. */
export function batchesAsked(lots: readonly Pick<SourceLot, 'origins'>[]): string {
  const controlsOf = ({ origins }: Pick<SourceLot, 'origins'>) => [
    ...new Set([...origins.values()].flatMap(({ control }) => control ?? [])),
  ]
  const newest = lots.findLast((lot) => 0 < controlsOf(lot).length)
  return `${laboratoriesOf(lots).join()} ${newest === undefined ? '' : controlsOf(newest).join()}`
}

/** Batches of the source's laboratories under the condition of the series; by date, those within the axis. */
function batchesOf({ edition, lots, axis }: PanelContext, { condition }: Series): ControlEntry[] {
  const around = batchesUpTo(edition, batchesAsked(lots))
  const known = new Set(around.map(({ id }) => id))
  const later = [...firstOn(lots).keys()].filter((id) => !known.has(id))
  return [...around, ...later.flatMap((id) => edition.controls.get(id) ?? [])]
    .filter(
      ({ record }) =>
        record.condition === condition &&
        (axis.kind !== 'date' || axis.span(record.cast.day, record.cast.day) !== null),
    )
    .sort((a, b) => compareMoments(a.record.cast, b.record.cast))
}

const used = new WeakMap<PanelContext['lots'], ReadonlyMap<string, SourceLot>>()

/** The first lot of the source that rests on a batch, by batch; found once for its lots. */
function firstOn(lots: PanelContext['lots']): ReadonlyMap<string, SourceLot> {
  const known = used.get(lots)
  if (known !== undefined) return known
  const found = new Map<string, SourceLot>()
  for (const lot of lots)
    for (const { control } of lot.origins.values())
      if (control !== undefined && !found.has(control)) found.set(control, lot)
  used.set(lots, found)
  return found
}

/** Nothing for a batch without the result, or without a place on the axis. */
function chartedBatch(
  { axis, lots, edition }: PanelContext,
  { property: key, age }: Series,
  { id, record, results }: ControlEntry,
): ChartedBatch[] {
  const result = results.find(
    (candidate) => candidate.property === RATIO_OF[key] && isSameAge(candidate.age, age),
  )
  const lot = firstOn(lots).get(id)
  const x =
    axis.kind === 'date'
      ? axis.span(record.cast.day, record.cast.day)?.[0]
      : lot === undefined
        ? undefined
        : axis.of(lot)
  if (result === undefined || x === undefined) return []
  const figure = resultText(result, edition.site.units)
  return [{ id, record, result, x, used: lot !== undefined, figure }]
}

function batchPoint(
  { laboratories }: PanelContext,
  { id, record, result, x, used: isUsed, figure }: ChartedBatch,
  inUnit: (value: number) => number,
): PanelPoint {
  const status = result.valid ? 'valid' : 'not-valid'
  return {
    x,
    value: inUnit(result.value),
    status,
    outside: false,
    breaks: false,
    shape: Math.max(0, laboratories.indexOf(record.laboratory)),
    ...(isUsed ? {} : { pale: true }),
    words: resultReading({
      of: id,
      at: record.cast,
      value: figure,
      status,
      outside: false,
      remarks: [
        `cement ${record.cement?.lot ?? CEMENT_NOT_RECORDED}`,
        ...(isUsed ? [] : ['no lot of this source rests on it']),
      ],
    }),
  }
}

function batchTable({ edition }: PanelContext, batches: readonly ChartedBatch[]): ChartTable {
  return newestTable(batches, {
    heads: [
      textHead('Batch'),
      textHead('Cast'),
      numberHead('Value'),
      textHead('State'),
      textHead('Cement'),
      textHead('Laboratory'),
    ],
    row: ({ id, record, result, figure }) => ({
      lot: null,
      cells: [
        id,
        shortDate(record.cast),
        figure,
        chartedState(result.valid ? 'valid' : 'not-valid'),
        record.cement?.lot ?? '',
        edition.laboratories.get(record.laboratory)?.name ?? record.laboratory,
      ],
    }),
  })
}
